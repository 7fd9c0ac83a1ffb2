#include "core/reinforcement/mesh_sheets.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "core/reinforcement/detailing_rules.h"

namespace yardcast {

namespace {

constexpr double kEps = 1e-6;
/// Nobody cuts or lays less than this, mm2.
constexpr double kLeastNotchMm2 = 25.0;
constexpr int kMostPieces = 400;

/// Low and high ends of the pieces along one axis: whole sheets, the last one shortened. A last piece of less than two
/// laps takes some of the one before.
std::vector<std::pair<double, double>> piecesAlong(double low, double span, double sheetMm, double lapMm)
{
    const int count = lappedSpan(span, sheetMm, lapMm).pieces;
    std::vector<std::pair<double, double>> pieces;
    const double step = sheetMm - std::min(lapMm, sheetMm / 2);
    for (int i = 0; i < count; ++i) pieces.emplace_back(low + i * step, low + i * step + sheetMm);
    pieces.back().second = low + span;
    if (count > 1) {
        const double longest = std::min(2 * lapMm, sheetMm);
        const double moved = std::max(longest - (pieces.back().second - pieces.back().first), 0.0);
        pieces.back().first -= moved;
        pieces[pieces.size() - 2].second -= moved;
    }
    return pieces;
}

Region box(Point low, Point high) { return {Polygon{{low, {high.x, low.y}, high, {low.x, high.y}}, {}}}; }

MeshPiece pieceOf(const Polygon& polygon)
{
    MeshPiece piece;
    piece.shape = {polygon};
    piece.at = boundsOf(piece.shape).value_or(Box{});
    for (const Polygon& cutAway : subtract(box(piece.at.low, piece.at.high), piece.shape)) {
        if (std::abs(signedArea(cutAway.outer)) >= kLeastNotchMm2) piece.notches.push_back(cutAway.outer);
    }
    return piece;
}

/// Pieces with the same text are cut alike: sizes and cuts to whole mm, from the low corner.
std::string likeness(const MeshPiece& piece)
{
    std::string text;
    const auto add = [&](Point p) {
        text += std::to_string(std::llround(p.x - piece.at.low.x)) + ',' +
                std::to_string(std::llround(p.y - piece.at.low.y)) + ' ';
    };
    add(piece.at.high);
    for (const Ring& notch : piece.notches) {
        text += '/';
        for (const Point p : notch) add(p);
    }
    return text;
}

struct FreeRectangle {
    int sheet;
    Point low;
    Size size;
};

/// Places pieces on sheets: each into the free rectangle it fills best, what is left cut in two straight through.
class SheetCutting {
public:
    explicit SheetCutting(Size sheet) : sheet_(sheet) {}

    void place(MeshPiece& piece)
    {
        const Size size{piece.at.width(), piece.at.height()};
        Choice best = choose(size);
        if (best.index < 0) {
            free_.push_back({sheets_++, {0.0, 0.0}, sheet_});
            best = choose(size);
        }
        if (best.index < 0) return;  // cannot be: no piece is larger than a sheet
        const FreeRectangle from = free_[static_cast<std::size_t>(best.index)];
        free_.erase(free_.begin() + best.index);
        piece.sheet = from.sheet;
        piece.onSheet = from.low;
        piece.turnedOnSheet = best.turned;
        const Size taken = best.turned ? Size{size.depth, size.width} : size;
        const double right = from.size.width - taken.width;
        const double above = from.size.depth - taken.depth;
        // Cut so that the larger of the two offcuts is as large as can be.
        const bool acrossFirst = right * from.size.depth >= above * from.size.width;
        keep({from.sheet, from.low + Point{taken.width, 0.0}, {right, acrossFirst ? from.size.depth : taken.depth}});
        keep({from.sheet, from.low + Point{0.0, taken.depth}, {acrossFirst ? taken.width : from.size.width, above}});
    }

    int sheets() const { return sheets_; }

private:
    struct Choice {
        int index = -1;
        bool turned = false;
        double left = HUGE_VAL;
    };

    Choice choose(Size size) const
    {
        Choice best;
        for (std::size_t i = 0; i < free_.size(); ++i) {
            for (const bool turned : {false, true}) {
                const double right = free_[i].size.width - (turned ? size.depth : size.width);
                const double above = free_[i].size.depth - (turned ? size.width : size.depth);
                if (right < -kEps || above < -kEps) continue;
                const double left = std::min(right, above);
                if (left < best.left - kEps) best = {static_cast<int>(i), turned, left};
            }
        }
        return best;
    }

    void keep(const FreeRectangle& rectangle)
    {
        if (rectangle.size.width > kEps && rectangle.size.depth > kEps) free_.push_back(rectangle);
    }

    Size sheet_;
    int sheets_ = 0;
    std::vector<FreeRectangle> free_;
};

void cutFromSheets(MeshLayout& layout)
{
    std::vector<std::size_t> order(layout.pieces.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto area = [&](std::size_t i) { return layout.pieces[i].at.width() * layout.pieces[i].at.height(); };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return area(a) > area(b); });
    SheetCutting cutting(layout.sheet);
    for (const std::size_t i : order) cutting.place(layout.pieces[i]);
    layout.sheets = cutting.sheets();
}

}  // namespace

LappedSpan lappedSpan(double spanMm, double sheetMm, double lapMm)
{
    if (!(spanMm > sheetMm + kEps)) return {1, spanMm};
    const double lap = std::min(lapMm, sheetMm / 2);
    const double pieces = std::ceil((spanMm - lap) / (sheetMm - lap) - 1e-9);
    return {static_cast<int>(std::min(pieces, 1e6)), spanMm + (pieces - 1) * lap};
}

MeshLayout layMesh(const Mesh& mesh, const Region& outline)
{
    MeshLayout layout;
    layout.barMm = mesh.barMm;
    layout.pitchMm = mesh.pitchMm;
    layout.material = mesh.material;
    layout.sheet = kMeshSheet;
    layout.lapMm = meshLapMm(mesh.barMm, mesh.pitchMm);
    if (!(mesh.barMm > 0.0 && mesh.pitchMm > mesh.barMm && mesh.coverMm >= 0.0)) return layout;
    const Region net = offset(outline, -mesh.coverMm, OffsetJoin::mitre);
    const auto bounds = boundsOf(net);
    if (!bounds) return layout;
    const auto laid = [&](Size sheet) {
        const LappedSpan x = lappedSpan(bounds->width(), sheet.width, layout.lapMm);
        const LappedSpan y = lappedSpan(bounds->height(), sheet.depth, layout.lapMm);
        return std::pair{x.laidMm * y.laidMm, static_cast<double>(x.pieces) * y.pieces};
    };
    const Size turned{layout.sheet.depth, layout.sheet.width};
    const bool turn = laid(turned).first < laid(layout.sheet).first - kEps;
    const Size way = turn ? turned : layout.sheet;
    if (laid(way).second > kMostPieces) return layout;

    for (const auto& [lowY, highY] : piecesAlong(bounds->low.y, bounds->height(), way.depth, layout.lapMm)) {
        for (const auto& [lowX, highX] : piecesAlong(bounds->low.x, bounds->width(), way.width, layout.lapMm)) {
            for (const Polygon& polygon : intersect(net, box({lowX, lowY}, {highX, highY}))) {
                MeshPiece piece = pieceOf(polygon);
                // A strip narrower than the pitch holds no wire that crosses it.
                if (std::min(piece.at.width(), piece.at.height()) < mesh.pitchMm) continue;
                layout.pieces.push_back(std::move(piece));
            }
        }
    }
    std::map<std::string, int> marks;
    for (MeshPiece& piece : layout.pieces)
        piece.mark = marks.emplace(likeness(piece), static_cast<int>(marks.size()) + 1).first->second;
    cutFromSheets(layout);
    return layout;
}

}  // namespace yardcast
