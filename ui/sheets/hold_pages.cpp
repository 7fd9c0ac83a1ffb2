#include "ui/sheets/hold_pages.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include <QPainter>

#include "ui/sheets/list_pages.h"
#include "ui/sheets/own_drawing.h"
#include "ui/sheets/scales.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

/// Places this near to each other are the same.
constexpr double kSameMm = 1.0;

enum class Side { front, right, back, left, slanted };

Side opposite(Side side)
{
    switch (side) {
    case Side::front: return Side::back;
    case Side::right: return Side::left;
    case Side::back: return Side::front;
    case Side::left: return Side::right;
    case Side::slanted: break;
    }
    return Side::slanted;
}

QString sideName(Side side, bool counter)
{
    switch (side) {
    case Side::front: return counter ? Sheets::tr("its front edge") : Sheets::tr("its foot");
    case Side::right: return counter ? Sheets::tr("its right edge") : Sheets::tr("its right side");
    case Side::back: return counter ? Sheets::tr("its back edge") : Sheets::tr("its top edge");
    case Side::left: return counter ? Sheets::tr("its left edge") : Sheets::tr("its left side");
    case Side::slanted: break;
    }
    return Sheets::tr("the opposite edge");
}

std::optional<std::pair<Point, Point>> edgeOf(const Casting& casting, int edge)
{
    if (casting.outline.empty() || edge < 0) return std::nullopt;
    const Ring& ring = casting.outline.front().outer;
    const auto index = static_cast<std::size_t>(edge);
    if (index >= ring.size()) return std::nullopt;
    return std::pair(ring[index], ring[(index + 1) % ring.size()]);
}

/// Only an edge on the box about the casting has a name that nobody takes for another.
Side sideOf(const Casting& casting, int edge)
{
    const auto ends = edgeOf(casting, edge);
    if (!ends) return Side::slanted;
    const Box& box = casting.boundsMm;
    const auto both = [&](double Point::* way, double at) {
        return std::abs(ends->first.*way - at) < kSameMm && std::abs(ends->second.*way - at) < kSameMm;
    };
    if (both(&Point::y, box.low.y)) return Side::front;
    if (both(&Point::y, box.high.y)) return Side::back;
    if (both(&Point::x, box.low.x)) return Side::left;
    if (both(&Point::x, box.high.x)) return Side::right;
    return Side::slanted;
}

QString wholeMm(double mm)
{
    return shortNumberText(std::round(mm));
}

QString fromCorner(Point at, const Casting& casting)
{
    return Sheets::tr("%1, %2").arg(wholeMm(at.x - casting.boundsMm.low.x), wholeMm(at.y - casting.boundsMm.low.y));
}

bool isBatten(const HeldAt& held) { return held.under.starts_with("batten "); }
bool isHand(const HeldAt& held) { return held.under.starts_with("hand "); }

/// A hand at its middle; a batten at the distance of its middle line from the end that it lies along.
SheetRow rowOf(const HeldAt& held, const Casting& casting)
{
    const Box& box = casting.boundsMm;
    SheetRow row;
    const Point from = held.centre - box.low;
    row.cells = {QString(), heldText(held.under), wholeMm(from.x), wholeMm(from.y), heldForceText(held.forceN)};
    const std::optional<Box> lies = isBatten(held) ? boundsOf(held.region) : std::nullopt;
    if (!lies) return row;
    constexpr double kNarrowMm = 120.0;
    if (lies->width() < kNarrowMm) {
        row.cells[2] = wholeMm(lies->centre().x - box.low.x);
        row.cells[3] = Sheets::tr("right across");
    } else if (lies->height() < kNarrowMm) {
        row.cells[2] = Sheets::tr("all along");
        row.cells[3] = wholeMm(lies->centre().y - box.low.y);
    }
    return row;
}

/// What tells one way of holding from another; forces do not.
bool heldAlike(const CaseResult& a, const CaseResult& b)
{
    return a.edge == b.edge && a.held.size() == b.held.size() &&
           std::equal(a.held.begin(), a.held.end(), b.held.begin(), [](const HeldAt& one, const HeldAt& other) {
               return one.under == other.under && distance(one.centre, other.centre) < kSameMm;
           });
}

bool isShown(const CaseResult& result)
{
    constexpr std::array kInOrder{StrengthCase::suction, StrengthCase::tilt, StrengthCase::carriedFlat,
                                  StrengthCase::carriedOnEdge, StrengthCase::setDown};
    return result.holds && std::find(kInOrder.begin(), kInOrder.end(), result.which) != kInOrder.end() &&
           std::any_of(result.held.begin(), result.held.end(),
                       [](const HeldAt& held) { return isHand(held) || isBatten(held); });
}

/// Cases that are held in the same places, with the greater force at each.
struct Hold {
    QStringList names;
    CaseResult result;
};

std::vector<Hold> holdsOf(const CastingStrength& strength)
{
    std::vector<Hold> holds;
    for (const CaseResult& result : strength.cases) {
        if (!isShown(result)) continue;
        const auto same = std::find_if(holds.begin(), holds.end(),
                                       [&](const Hold& hold) { return heldAlike(hold.result, result); });
        if (same == holds.end()) {
            holds.push_back({{strengthCaseName(result.which)}, result});
            continue;
        }
        same->names << strengthCaseName(result.which).toLower();
        for (std::size_t i = 0; i < result.held.size(); ++i) {
            double& force = same->result.held[i].forceN;
            force = std::max(force, result.held[i].forceN);
        }
    }
    return holds;
}

SheetTable holdTable(const std::vector<Hold>& holds, const Casting& casting)
{
    SheetTable table;
    table.columns = {{Sheets::tr("What is done"), 62.0, false},
                     {Sheets::tr("Where"), 26.0, false},
                     {Sheets::tr("From the left end mm"), 32.0, true},
                     {Sheets::tr("From the front edge mm"), 34.0, true},
                     {Sheets::tr("It bears"), 26.0, true}};
    for (const Hold& hold : holds) {
        bool isFirst = true;
        for (const HeldAt& held : hold.result.held) {
            if (!isHand(held) && !isBatten(held)) continue;
            SheetRow row = rowOf(held, casting);
            if (isFirst) {
                row.cells[0] = hold.names.join(Sheets::tr(", "));
                row.note = edgeSentence(hold.result, casting);
                isFirst = false;
            }
            table.rows.push_back(std::move(row));
        }
    }
    return table;
}

QStringList holdSentences(const CastingStrength& strength)
{
    QStringList said{
        Sheets::tr("Measured as it stands, seen from above, from its left end and from its front edge to the middle of "
                   "the hand or batten; the black dot is its front left corner. While it lies face down, left and "
                   "right change places."),
        Sheets::tr("It bears: with the factors of lifting and carrying and the suction of the mould, so more than a "
                   "still scale would show.")};
    if (strength.gripsProposed) {
        said << Sheets::tr("The plan sets no grips: those for lifting and carrying flat are proposed, where the slab "
                           "suffers least.");
    }
    said << Sheets::tr("Nobody stands below it; feet and fingers stay clear of where it comes down.");
    return said;
}

struct Drawn {
    QString title;
    QString words;
    ScaledDrawing drawing;
};

/// All on one sheet at one scale, in the grid that makes them largest.
void paintDrawn(QPainter& painter, const QRectF& area, const std::vector<Drawn>& drawn)
{
    constexpr double kWordsMm = 9.0;
    int columns = 1;
    int scale = std::numeric_limits<int>::max();
    QSizeF cell;
    for (const int across : {1, 2}) {
        const int down = (static_cast<int>(drawn.size()) + across - 1) / across;
        const QSizeF size(area.width() / across, area.height() / down);
        int least = 1;
        for (const Drawn& one : drawn) {
            least = std::max(least, fitInBox(one.drawing, size - QSizeF(4.0, kListTitleMm + kWordsMm)));
        }
        if (least >= scale) continue;
        columns = across;
        scale = least;
        cell = size;
    }
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        const auto column = static_cast<double>(i % static_cast<std::size_t>(columns));
        const auto row = static_cast<double>(i / static_cast<std::size_t>(columns));
        const QRectF box(QPointF(area.left() + column * cell.width(), area.top() + row * cell.height()), cell);
        paintListTitle(painter, QRectF(box.left(), box.top(), box.width(), kListTitleMm),
                       drawn[i].title);
        paintSentences(painter, QRectF(box.left() + 2.0, box.top() + kListTitleMm, box.width() - 4.0, kWordsMm),
                       {(Sheets::tr("Drawn %1.").arg(scaleText(scale)) + QLatin1Char(' ') + drawn[i].words).trimmed()});
        paintInBox(painter, drawn[i].drawing, box.adjusted(2.0, kListTitleMm + kWordsMm, -2.0, 0.0), scale);
    }
}

}  // namespace

QString edgeText(const Casting& casting, int edge)
{
    const auto ends = edgeOf(casting, edge);
    if (!ends) return {};
    const Side side = sideOf(casting, edge);
    if (side != Side::slanted) return sideName(side, casting.kind == PartKind::counter);
    return Sheets::tr("the edge from %1 to %2 (mm from the left end, from the front edge)")
        .arg(fromCorner(ends->first, casting), fromCorner(ends->second, casting));
}

QString notBeforeText(double hours)
{
    constexpr double kHoursADay = 24.0;
    const double days = hours / kHoursADay;
    if (days >= 5.0 && std::abs(days - std::round(days)) < 0.05)
        return Sheets::tr("not before %1 days").arg(shortNumberText(std::round(days)));
    return Sheets::tr("not before %1\u00a0h").arg(shortNumberText(hours, 1));
}

QString massAndAgeText(const Casting& casting, const CastingStrength& strength)
{
    const auto handled = std::find_if(strength.cases.begin(), strength.cases.end(),
                                      [](const CaseResult& result) { return isShown(result); });
    const QString weighs =
        Sheets::tr("%1 weighs %2.").arg(QString::fromStdString(casting.id), massText(casting.massKg));
    if (handled == strength.cases.end()) return weighs;
    return weighs + QLatin1Char(' ') + Sheets::tr("Lift it %1 after the pour.").arg(notBeforeText(handled->ageH));
}

QString edgeSentence(const CaseResult& result, const Casting& casting)
{
    const QString edge = edgeText(casting, result.edge);
    if (edge.isEmpty()) return {};
    if (result.which != StrengthCase::tilt) {
        return result.which == StrengthCase::carriedOnEdge
                   ? Sheets::tr("It is upright, with %1 lowest; hands reach under that edge.").arg(edge)
                   : Sheets::tr("It stands on %1.").arg(edge);
    }
    return Sheets::tr("It turns about %1; hands go under %2.")
        .arg(edge, sideName(opposite(sideOf(casting, result.edge)), casting.kind == PartKind::counter));
}

std::vector<SheetPage> holdPages(const SheetPage& like, const CastingStrength& strength, const Part& part,
                                 const CastingPtr& casting)
{
    const std::vector<Hold> holds = holdsOf(strength);
    if (holds.empty()) return {};
    ListBlock all;
    all.title = Sheets::tr("Lifting day. %1").arg(massAndAgeText(*casting, strength));
    all.table = holdTable(holds, *casting);
    std::vector<SheetPage> pages = listPages(like, {all}, holdSentences(strength));
    std::vector<Drawn> drawn;
    for (const Hold& hold : holds) {
        drawn.push_back({hold.names.join(Sheets::tr(", ")), edgeSentence(hold.result, *casting),
                         holdDrawing(part, casting, hold.result)});
    }
    SheetPage page = like;
    page.view = Sheets::tr("from above, as it stands");
    page.paint = [drawn](QPainter& painter, const QRectF& area) { paintDrawn(painter, area, drawn); };
    pages.push_back(std::move(page));
    return pages;
}

}  // namespace yardcast::ui
