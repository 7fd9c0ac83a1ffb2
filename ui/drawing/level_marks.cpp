#include "ui/drawing/level_marks.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <QPainter>

#include "ui/drawing/marks.h"

namespace yardcast::ui {

double groundLevelMm(const Plan& plan, Point at)
{
    if (!plan.site.ground) {
        return 0.0;
    }
    const Ground& ground = *plan.site.ground;
    const SineCosine towards = sineCosineDeg(ground.fallTowardsDeg);
    return ground.levelMm - ground.fallPercent / 100.0 * dot(at, Point{towards.cosine, towards.sine});
}

namespace {

QString levelFigure(double levelMm)
{
    const auto whole = std::llround(levelMm);
    if (whole == 0) {
        return QStringLiteral("0");
    }
    // A true minus sign, as wide as the plus.
    return (whole > 0 ? QString(QLatin1Char('+')) : QString(QChar(0x2212))) + QString::number(std::llabs(whole));
}

}  // namespace

std::vector<LevelMark> levelMarks(const Plan& plan, const Projection& projection)
{
    if (projection.isAbove()) {
        return {};
    }
    std::vector<double> levels{0.0};
    for (const PartPtr& part : plan.parts) {
        if (part && (part->kind() == PartKind::counter || part->kind() == PartKind::panel)) {
            levels.push_back(levelsOf(plan, *part).highMm);
        }
    }
    std::sort(levels.begin(), levels.end());
    std::vector<LevelMark> marks;
    for (const double level : levels) {
        if (marks.empty() || level - marks.back().levelMm >= 0.5) {
            marks.push_back({level, levelFigure(level)});
        }
    }
    return marks;
}

void paintLevelMarks(QPainter& painter, const std::vector<LevelMark>& marks, double x, const PaintStyle& style)
{
    const double unit = style.mmPerUnit;
    const double size = (style.onPaper ? 2.5 : 8.0) * unit;
    TextLook look;
    look.sizeUnits = figureUnits(style);
    look.align = Qt::AlignLeft | Qt::AlignVCenter;
    const double row = textSizeMm(QStringLiteral("0"), style, look).height();
    double below = std::numeric_limits<double>::max();
    for (const LevelMark& mark : marks) {
        const double y = -mark.levelMm;
        // Marks come upwards; a figure too close to the one below moves up, tied to its level by a leader.
        const double figureY = std::min(y, below - 0.95 * row);
        below = figureY;
        const QPointF at(x, y);
        QPolygonF arrow;
        arrow << at + QPointF(-size * 0.6, -size * 0.8) << at << at + QPointF(size * 0.6, -size * 0.8);
        painter.setPen(thinPen(style, style.ink.ink));
        painter.drawPolyline(arrow);
        painter.drawPolyline(QPolygonF{QPointF(x - 1.2 * size, y), QPointF(x + 1.2 * size, y),
                                       QPointF(x + 2.2 * size, figureY), QPointF(x + 2.5 * size, figureY)});
        paintText(painter, QPointF(x + 2.8 * size, figureY), mark.figure, style, look);
    }
}

}  // namespace yardcast::ui
