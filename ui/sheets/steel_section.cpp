#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <memory>
#include <optional>
#include <set>

#include <QPainter>

#include "ui/drawing/dimension_painter.h"
#include "ui/drawing/marks.h"
#include "ui/sheets/counter_section.h"
#include "ui/sheets/sheet_words.h"
#include "ui/sheets/steel_drawing.h"
#include "ui/wording/steel_names.h"

namespace yardcast::ui {

namespace {

constexpr double kBoardUnits = 3.0;

/// Drawn with the mould base at 0 and heights above it upwards (negative).
class SteelSection {
public:
    SteelSection(const Casting& casting, const CastingSteelLayout& layout, double xMm)
        : layout_(layout), xMm_(xMm), pieces_(sectionPieces({std::make_shared<const Casting>(casting)}, xMm)),
          isCounter_(casting.kind == PartKind::counter)
    {
        deepestMm_ = 0.0;
        fromY_ = std::numeric_limits<double>::max();
        toY_ = -fromY_;
        for (const SectionPiece& piece : pieces_) {
            deepestMm_ = std::max(deepestMm_, piece.bottomMm);
            fromY_ = std::min(fromY_, piece.fromYMm);
            toY_ = std::max(toY_, piece.toYMm);
        }
    }

    bool isEmpty() const { return pieces_.empty(); }

    std::vector<Dimension> dimensions(const PaintStyle& style) const
    {
        std::vector<Dimension> found;
        const auto upright = [&](double y, double low, double high, double offset) {
            Dimension dimension;
            dimension.a = QPointF(y, -low);
            dimension.b = QPointF(y, -high);
            dimension.offsetUnits = offset;
            dimension.valueMm = high - low;
            found.push_back(dimension);
        };
        upright(fromY_, 0.0, deepestMm_, 7.0);
        double offset = -6.0;
        for (const double height : heights()) {
            upright(toY_, 0.0, height, offset);
            offset -= 7.5;
        }
        staggerFigures(found, style);
        return found;
    }

    QRectF bounds(const PaintStyle& style) const
    {
        const double unit = style.mmPerUnit;
        QRectF box(QPointF(fromY_, -deepestMm_), QPointF(toY_, 0.0));
        for (const Dimension& dimension : dimensions(style)) box |= dimensionBounds(dimension, style);
        return box.adjusted(-2.0 * unit, -4.0 * unit, 2.0 * unit, (kBoardUnits + 6.0) * unit);
    }

    void paint(QPainter& painter, const PaintStyle& style) const
    {
        paintBody(painter, style);
        paintBase(painter, style);
        for (const MeshLayout& mesh : layout_.meshes) paintMesh(painter, mesh, style);
        for (const LaidBar& bar : layout_.bars) paintBar(painter, bar, true, style);
        for (const CornerBar& bar : layout_.cornerBars) paintBar(painter, bar.bar, false, style);
        paintBarNames(painter, style);
        for (const Dimension& dimension : dimensions(style)) paintDimension(painter, dimension, style);
    }

private:
    /// Distances of the layers from the base, each once, from the lowest; those that this section cuts.
    std::set<double> heights() const
    {
        std::set<double> found;
        for (const MeshLayout& mesh : layout_.meshes) {
            if (!wires(mesh).empty()) found.insert(std::round(mesh.height.distanceMm * 10.0) / 10.0);
        }
        for (const LaidBar& bar : layout_.bars) {
            if (crossing(bar)) found.insert(std::round(bar.height.distanceMm * 10.0) / 10.0);
        }
        return found;
    }

    double heightOf(double depthMm) const
    {
        return layout_.faceDown ? depthMm : deepestMm_ - depthMm;
    }

    QRectF boxOf(const SectionPiece& piece) const
    {
        return QRectF(QPointF(piece.fromYMm, -heightOf(piece.topMm)), QPointF(piece.toYMm, -heightOf(piece.bottomMm)))
            .normalized();
    }

    void paintBody(QPainter& painter, const PaintStyle& style) const
    {
        QPainterPath concrete;
        for (const SectionPiece& piece : pieces_) {
            QPainterPath box;
            box.addRect(boxOf(piece));
            if (piece.kind == ZoneKind::filler || piece.kind == ZoneKind::core) {
                fillFoam(painter, box, style);
                painter.setPen(thinPen(style, style.ink.ink));
                painter.setBrush(Qt::NoBrush);
                painter.drawRect(boxOf(piece));
            } else {
                // Hatching would hide the steel: cut concrete is toned here.
                painter.fillPath(box, style.ink.cast);
                concrete = concrete.united(box);
            }
        }
        painter.setPen(outlinePen(style));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(concrete.simplified());
    }

    void paintBase(QPainter& painter, const PaintStyle& style) const
    {
        const double unit = style.mmPerUnit;
        const QRectF board(QPointF(fromY_ - 3.0 * unit, 0.0), QPointF(toY_ + 3.0 * unit, kBoardUnits * unit));
        QPainterPath path;
        path.addRect(board);
        painter.setPen(thinPen(style, style.ink.ink));
        const std::vector<QLineF> lines = hatchLines(path, 30.0, 3.0 * unit);
        painter.drawLines(lines.data(), static_cast<int>(lines.size()));
        painter.drawRect(board);
        const double y = (kBoardUnits + 1.0) * unit;
        TextLook look;
        look.align = Qt::AlignLeft | Qt::AlignTop;
        const bool stands = layout_.datum == SteelDatum::frontWall;
        paintText(painter, QPointF(fromY_, y), isCounter_ ? Sheets::tr("front") : Sheets::tr("foot"), style, look);
        look.align = Qt::AlignRight | Qt::AlignTop;
        paintText(painter, QPointF(toY_, y), isCounter_ ? Sheets::tr("back") : Sheets::tr("top"), style, look);
        look.align = Qt::AlignHCenter | Qt::AlignTop;
        look.bold = true;
        const QString base = stands ? Sheets::tr("front wall of the mould") : Sheets::tr("mould base");
        const QString side = isCounter_ ? (layout_.faceDown ? Sheets::tr("face") : Sheets::tr("underside"))
                                        : (layout_.faceDown ? Sheets::tr("front") : Sheets::tr("back"));
        paintText(painter, QPointF((fromY_ + toY_) / 2.0, y), Sheets::tr("%1 (%2)").arg(base, side), style, look);
    }

    /// Stretches of the mesh in the section, along own y.
    std::vector<Span> wires(const MeshLayout& mesh) const
    {
        std::vector<Span> spans;
        for (const MeshPiece& piece : mesh.pieces) {
            std::vector<QPolygonF> polygons;
            for (const Polygon& polygon : piece.shape) {
                const auto add = [&](const Ring& ring) {
                    QPolygonF points;
                    for (const Point& point : ring) points.append(QPointF(point.x, point.y));
                    polygons.push_back(points);
                };
                add(polygon.outer);
                for (const Ring& hole : polygon.holes) add(hole);
            }
            const std::vector<Span> more = spansInside(polygons, QPointF(xMm_, 0.0), QPointF(0.0, 1.0));
            spans.insert(spans.end(), more.begin(), more.end());
        }
        return spans;
    }

    void paintMesh(QPainter& painter, const MeshLayout& mesh, const PaintStyle& style) const
    {
        const double low = mesh.height.distanceMm;
        const double width = std::max(mesh.barMm, 0.35 * style.mmPerUnit);
        const double radius = std::max(mesh.barMm / 2.0, 0.3 * style.mmPerUnit);
        for (const Span& span : wires(mesh)) {
            painter.setPen(QPen(style.ink.steel, width, Qt::SolidLine, Qt::FlatCap));
            painter.drawLine(QPointF(span.from, -(low + 1.5 * mesh.barMm)), QPointF(span.to, -(low + 1.5 * mesh.barMm)));
            painter.setPen(Qt::NoPen);
            painter.setBrush(style.ink.steel);
            double pitch = std::max(mesh.pitchMm, 1.0);
            while (pitch < 1.2 * style.mmPerUnit) pitch *= 2.0;
            for (double y = span.from + pitch / 2.0; y < span.to; y += pitch) {
                painter.drawEllipse(QPointF(y, -(low + mesh.barMm / 2.0)), radius, radius);
            }
            painter.setBrush(Qt::NoBrush);
        }
    }

    std::optional<double> crossing(const LaidBar& bar) const
    {
        const double run = bar.to.x - bar.from.x;
        if (std::fabs(run) < 1e-9) return std::nullopt;
        const double share = (xMm_ - bar.from.x) / run;
        if (share < 0.0 || share > 1.0) return std::nullopt;
        return bar.from.y + share * (bar.to.y - bar.from.y);
    }

    void paintBar(QPainter& painter, const LaidBar& bar, bool planned, const PaintStyle& style) const
    {
        const std::optional<double> y = crossing(bar);
        if (!y) return;
        const double radius = std::max(bar.diameterMm / 2.0, 0.5 * style.mmPerUnit);
        const QPointF at(*y, -(bar.height.distanceMm + bar.diameterMm / 2.0));
        painter.setPen(style.pen(style.ink.steel, style.narrow()));
        painter.setBrush(planned ? QBrush(style.ink.steel) : QBrush(style.ink.sheet));
        painter.drawEllipse(at, radius, radius);
        painter.setBrush(Qt::NoBrush);
    }

    /// Above the section; bars that lie close are named together.
    void paintBarNames(QPainter& painter, const PaintStyle& style) const
    {
        std::map<double, QString> names;
        const auto add = [&](const LaidBar& bar) {
            if (const std::optional<double> y = crossing(bar)) names.emplace(*y, barMark(bar.mark));
        };
        for (const LaidBar& bar : layout_.bars) add(bar);
        for (const CornerBar& bar : layout_.cornerBars) add(bar.bar);
        TextLook look;
        look.sizeUnits = 2.4;
        look.align = Qt::AlignHCenter | Qt::AlignBottom;
        for (auto entry = names.begin(); entry != names.end();) {
            const double first = entry->first;
            double last = first;
            QStringList words;
            double room = 0.0;
            while (entry != names.end() && (words.isEmpty() || entry->first - last < room)) {
                last = entry->first;
                if (!words.contains(entry->second)) words << entry->second;
                room = textSizeMm(words.join(QStringLiteral(", ")), style, look).width() + style.mmPerUnit;
                ++entry;
            }
            paintText(painter, QPointF((first + last) / 2.0, -deepestMm_ - 0.6 * style.mmPerUnit),
                      words.join(QStringLiteral(", ")), style, look);
        }
    }

    const CastingSteelLayout layout_;
    double xMm_;
    std::vector<SectionPiece> pieces_;
    bool isCounter_;
    double deepestMm_ = 0.0;
    double fromY_ = 0.0;
    double toY_ = 0.0;
};

}  // namespace

double steelSectionXMm(const Casting& casting, const CastingSteelLayout& layout)
{
    const Box& box = casting.boundsMm;
    const auto barsAt = [&](double x) {
        return std::count_if(layout.bars.begin(), layout.bars.end(), [x](const LaidBar& bar) {
            return std::min(bar.from.x, bar.to.x) <= x && x <= std::max(bar.from.x, bar.to.x);
        });
    };
    double best = box.low.x + 0.35 * box.width();
    std::pair<long, double> most{-1, 0.0};
    constexpr int kTried = 17;
    for (int i = 1; i < kTried; ++i) {
        const double x = box.low.x + box.width() * i / kTried;
        double concrete = 0.0;
        for (const Zone& zone : casting.zones) {
            if (zone.isConcrete() && contains(zone.region, {x, box.low.y + 0.5 * box.height()})) concrete = 1.0;
        }
        const std::pair<long, double> found{static_cast<long>(barsAt(x)), concrete};
        if (found > most) {
            most = found;
            best = x;
        }
    }
    return best;
}

ScaledDrawing steelSection(const CastingPtr& casting, const CastingSteelLayout& layout, double xMm)
{
    const auto section = std::make_shared<const SteelSection>(*casting, layout, xMm);
    ScaledDrawing drawing;
    drawing.bounds = [section](const PaintStyle& style) { return section->bounds(style); };
    drawing.paint = [section](QPainter& painter, const PaintStyle& style) {
        if (!section->isEmpty()) section->paint(painter, style);
    };
    return drawing;
}

}  // namespace yardcast::ui
