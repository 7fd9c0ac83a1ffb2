#include "ui/drawing/steel_painter.h"

#include <algorithm>
#include <cmath>
#include <map>

#include <QCoreApplication>
#include <QPainter>

#include "ui/drawing/marks.h"
#include "ui/wording/figures.h"
#include "ui/wording/steel_names.h"

namespace yardcast::ui {

namespace {

/// Words about a bar that is shorter than this on the screen are still written, pixels.
constexpr double kLeastWords = 60.0;
constexpr double kLeastReach = 120.0;

QPolygonF boxPolygon(const Box& box, const OwnMap& map)
{
    return {map(box.low), map({box.high.x, box.low.y}), map(box.high), map({box.low.x, box.high.y})};
}

/// Far away the wires would run together: every second, fourth ... is drawn.
double drawnPitchMm(double pitchMm, const PaintStyle& style)
{
    const double least = (style.onPaper ? 1.2 : 4.0) * style.mmPerUnit;
    double pitch = pitchMm;
    while (pitch < least) {
        pitch *= 2.0;
    }
    return pitch;
}

/// On paper wires are paler than bars and outlines, so that marks can be read over them.
QColor wireColour(const PaintStyle& style)
{
    if (!style.onPaper) {
        return style.ink.steel;
    }
    const QColor& steel = style.ink.steel;
    const QColor& sheet = style.ink.sheet;
    return QColor((steel.red() + sheet.red()) / 2, (steel.green() + sheet.green()) / 2,
                  (steel.blue() + sheet.blue()) / 2);
}

void paintWires(QPainter& painter, const QPainterPath& path, double pitchMm, double turnDeg, const PaintStyle& style)
{
    painter.setPen(thinPen(style, wireColour(style)));
    for (const double angle : {0.0, 90.0}) {
        const std::vector<QLineF> lines = hatchLines(path, turnDeg + angle, drawnPitchMm(pitchMm, style));
        painter.drawLines(lines.data(), static_cast<int>(lines.size()));
    }
}

void paintMesh(QPainter& painter, const MeshLayout& mesh, const OwnMap& map, double turnDeg, const PaintStyle& style)
{
    if (!(mesh.pitchMm > 1.0)) {
        return;
    }
    for (const MeshPiece& piece : mesh.pieces) {
        const QPainterPath shape = regionPath(piece.shape, map);
        paintWires(painter, shape, mesh.pitchMm, turnDeg, style);
        painter.setPen(style.pen(style.ink.steel, style.narrow()));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(shape);
        // The diagonal of ISO 3766, only where there is mesh.
        const QPointF low = map(piece.at.low);
        const QPointF along = map(piece.at.high) - low;
        const QList<QPolygonF> polygons = shape.toSubpathPolygons();
        for (const Span& span : spansInside({polygons.begin(), polygons.end()}, low, along)) {
            painter.drawLine(low + along * std::max(0.0, span.from), low + along * std::min(1.0, span.to));
        }
    }
    for (const Box& lap : meshLaps(mesh)) {
        QPainterPath path;
        path.addPolygon(boxPolygon(lap, map));
        path.closeSubpath();
        painter.setPen(thinPen(style, style.ink.steel));
        const std::vector<QLineF> lines = hatchLines(path, turnDeg + 45.0, (style.onPaper ? 1.6 : 5.0) * style.mmPerUnit);
        painter.drawLines(lines.data(), static_cast<int>(lines.size()));
    }
}

void paintBar(QPainter& painter, const LaidBar& bar, bool proposed, const OwnMap& map, const PaintStyle& style)
{
    const double least = style.onPaper ? style.wide() : 2.0 * style.mmPerUnit;
    const double width = std::max(bar.diameterMm, least);
    QPen pen(style.ink.steel, width, Qt::SolidLine, Qt::FlatCap);
    if (proposed) {
        const double dash = (style.onPaper ? 3.0 : 9.0) * style.mmPerUnit / width;
        pen.setDashPattern({dash, 0.6 * dash});
    }
    painter.setPen(pen);
    painter.drawLine(map(bar.from), map(bar.to));
}

OverlayLabel label(QPointF at, const QStringList& texts, const PaintStyle& style, double weight)
{
    OverlayLabel made;
    made.at = at;
    made.texts = texts;
    made.weight = weight;
    made.look.colour = style.ink.steel;
    made.look.behind = style.ink.sheet;
    return made;
}

/// Where words about a piece stand: inside it with all their width, far from its edges and openings.
Point roomiest(const MeshPiece& piece, QSizeF words)
{
    constexpr int kAcross = 9;
    constexpr int kDeep = 5;
    Point best = piece.at.centre();
    double most = -1.0;
    for (int i = 0; i < kAcross * kDeep; ++i) {
        const Point at{piece.at.low.x + piece.at.width() * (i % kAcross + 0.5) / kAcross,
                       piece.at.low.y + piece.at.height() * (i / kAcross + 0.5) / kDeep};
        if (!contains(piece.shape, at)) {
            continue;
        }
        double room = std::min(piece.at.width(), piece.at.height());
        for (const Polygon& polygon : piece.shape) {
            room = std::min(room, distanceToRing(polygon.outer, at));
            for (const Ring& hole : polygon.holes) {
                room = std::min(room, distanceToRing(hole, at));
            }
        }
        const Point half{0.5 * words.width(), 0.0};
        if (contains(piece.shape, at - half) && contains(piece.shape, at + half)) {
            room += words.width();
        }
        if (room > most + 1.0) {
            most = room;
            best = at;
        }
    }
    return best;
}

/// The longest thing laid.
double reachMm(const CastingSteelLayout& layout)
{
    double reach = 0.0;
    for (const LaidBar& bar : layout.bars) reach = std::max(reach, distance(bar.from, bar.to));
    for (const MeshLayout& mesh : layout.meshes) {
        for (const MeshPiece& piece : mesh.pieces) {
            reach = std::max({reach, piece.at.width(), piece.at.height()});
        }
    }
    return reach;
}

/// Bars of one mark that lie side by side are named once, at their middle one.
struct BarRun {
    std::vector<const LaidBar*> bars;
    bool proposed = false;
};

void addBarLabels(const CastingSteelLayout& layout, const OwnMap& map, const PaintStyle& style,
                  std::vector<OverlayLabel>& labels)
{
    std::map<std::pair<int, int>, BarRun> runs;
    for (const LaidBar& bar : layout.bars) runs[{bar.group, bar.mark}].bars.push_back(&bar);
    int corner = 0;
    for (const CornerBar& bar : layout.cornerBars) runs[{-1 - corner++, bar.bar.mark}] = {{&bar.bar}, true};
    for (const auto& [key, run] : runs) {
        const LaidBar& middle = *run.bars[run.bars.size() / 2];
        const QString mark = barMark(key.second);
        const QString size = QCoreApplication::translate("Drawing", "Ø%1", "diameter in mm")
                                 .arg(shortNumberText(middle.diameterMm));
        QString many = QCoreApplication::translate("Drawing", "%1: %2 × %3", "mark, number of bars, diameter")
                           .arg(mark)
                           .arg(run.bars.size())
                           .arg(size);
        if (run.proposed) many = QCoreApplication::translate("Drawing", "%1 %2 proposed").arg(mark, size);
        const QString full =
            many + QCoreApplication::translate("Drawing", ", %1").arg(heightText(middle.height, layout.datum));
        const double runMm = distance(middle.from, middle.to) * static_cast<double>(run.bars.size());
        const double room = distance(middle.from, middle.to);
        QStringList texts{many, mark};
        if (!style.onPaper) {
            // Far away words would stand all over the drawing.
            texts = QStringList{full, many, mark};
            texts.removeIf([&](const QString& text) {
                return text != mark && textSizeMm(text, style).width() > std::max(room, kLeastWords * style.mmPerUnit);
            });
        }
        OverlayLabel one = label(map((middle.from + middle.to) * 0.5), texts, style, middle.diameterMm * runMm);
        // Beside a short bar, not over it.
        constexpr double kMostAside = 4.0;
        const double half = 0.5 * distance(middle.from, middle.to) / style.mmPerUnit / (style.onPaper ? 1.0 : 4.0);
        one.clearUnits = std::min(half, kMostAside) * (style.onPaper ? 1.0 : 4.0);
        if (half > 3.0 * kMostAside) one.clearUnits = style.onPaper ? 0.8 : 3.0;
        labels.push_back(std::move(one));
    }
}

}  // namespace

std::vector<Box> meshLaps(const MeshLayout& mesh)
{
    std::vector<Box> laps;
    for (std::size_t i = 0; i < mesh.pieces.size(); ++i) {
        for (std::size_t k = i + 1; k < mesh.pieces.size(); ++k) {
            const Box& a = mesh.pieces[i].at;
            const Box& b = mesh.pieces[k].at;
            const Box both{{std::max(a.low.x, b.low.x), std::max(a.low.y, b.low.y)},
                           {std::min(a.high.x, b.high.x), std::min(a.high.y, b.high.y)}};
            if (both.width() > 0.5 && both.height() > 0.5) laps.push_back(both);
        }
    }
    return laps;
}

void paintSteelLayout(QPainter& painter, const CastingSteelLayout& layout, const OwnMap& map, double turnDeg,
                      const PaintStyle& style)
{
    for (const MeshLayout& mesh : layout.meshes) paintMesh(painter, mesh, map, turnDeg, style);
    for (const LaidBar& bar : layout.bars) paintBar(painter, bar, false, map, style);
    for (const CornerBar& bar : layout.cornerBars) paintBar(painter, bar.bar, true, map, style);
}

std::vector<OverlayLabel> steelLabels(const CastingSteelLayout& layout, const OwnMap& map, const PaintStyle& style)
{
    std::vector<OverlayLabel> labels;
    // On the screen, far away, marks would hide what they mark.
    if (!style.onPaper && reachMm(layout) < kLeastReach * style.mmPerUnit) return labels;
    addBarLabels(layout, map, style, labels);
    for (const MeshLayout& mesh : layout.meshes) {
        for (const MeshPiece& piece : mesh.pieces) {
            const QString size = QCoreApplication::translate("Drawing", "%1, %2", "mark and size of a piece of mesh")
                                     .arg(meshMark(piece.mark), sizeText(std::round(piece.at.width()),
                                                                         std::round(piece.at.height())));
            QStringList texts{size, meshMark(piece.mark)};
            if (!style.onPaper) {
                texts.prepend(size + QLatin1Char('\n') + heightText(mesh.height, layout.datum));
                texts.removeIf([&](const QString& text) {
                    return text != meshMark(piece.mark) &&
                           textSizeMm(text.section(QLatin1Char('\n'), -1), style).width() > piece.at.width();
                });
            }
            labels.push_back(label(map(roomiest(piece, textSizeMm(size, style))), texts, style,
                                   1e6 + piece.at.width() * piece.at.height() * 1e-6));
        }
        for (const Box& lap : meshLaps(mesh)) {
            const QString text = QCoreApplication::translate("Drawing", "lap %1")
                                     .arg(shortNumberText(std::min(lap.width(), lap.height())));
            labels.push_back(label(map(lap.centre()), {text}, style, 100.0));
        }
    }
    return labels;
}

}  // namespace yardcast::ui
