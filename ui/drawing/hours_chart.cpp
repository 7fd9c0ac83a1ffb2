#include "ui/drawing/hours_chart.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QPainter>
#include <QStringList>

#include "core/pour/weather.h"
#include "ui/drawing/marks.h"
#include "ui/look/theme.h"
#include "ui/wording/names.h"
#include "ui/wording/readiness_names.h"

namespace yardcast::ui {

namespace {

struct Chart {
    Q_DECLARE_TR_FUNCTIONS(hours_chart)
};

constexpr double kHoursADay = 24.0;
/// Dark enough to stay in bed; not astronomy.
constexpr double kNightFromH = 21.0;
constexpr double kNightToH = 6.0;
constexpr double kLeastEndH = 48.0;
/// Longer axes show days only: nights would be a comb.
constexpr double kMostNightsH = 10 * kHoursADay;
/// Of an em.
constexpr double kRow = 1.75;
constexpr double kBar = 1.15;
constexpr double kAxis = 1.5;
constexpr double kGap = 0.6;

double em(const PaintStyle& style) { return labelUnits(style); }

bool sameHours(const CastingHours& a, const CastingHours& b)
{
    if (a.ways.size() != b.ways.size() || a.planH != b.planH || a.carry != b.carry) return false;
    for (std::size_t i = 0; i < a.ways.size(); ++i) {
        const EarliestHour& x = a.ways[i];
        const EarliestHour& y = b.ways[i];
        const auto same = [](double p, double q) { return p == q || std::abs(p - q) < 0.5; };
        if (x.way != y.way || x.possible != y.possible) return false;
        if (!same(x.likelyH, y.likelyH) || !same(x.cautiousH, y.cautiousH)) return false;
    }
    return true;
}

bool isPlanned(const CastingHours& hours, HandlingWay way)
{
    if (way == HandlingWay::carryFlat || way == HandlingWay::carryOnEdge) return way == hours.carry;
    return true;
}

HoursGroup groupOf(const CastingHours& hours)
{
    HoursGroup group;
    group.planH = hours.planH;
    for (const EarliestHour& hour : hours.ways) {
        group.bars.push_back({hour.way, hour.likelyH, hour.cautiousH, hour.possible, isPlanned(hours, hour.way)});
    }
    return group;
}

QString wayText(const HoursBar& bar)
{
    const QString name = handlingWayName(bar.way);
    return bar.planned ? name : Chart::tr("(%1)").arg(name.toLower());
}

double nameWidth(const HoursChart& chart, const PaintStyle& style)
{
    double width = 0.0;
    for (const HoursGroup& group : chart.groups) {
        for (const HoursBar& bar : group.bars) width = std::max(width, textSizeMm(wayText(bar), style).width());
    }
    return width + 0.6 * em(style);
}

double groupHeight(const HoursGroup& group, const PaintStyle& style)
{
    return (static_cast<double>(group.bars.size() + 1) * kRow + kGap) * em(style);
}

/// The plot of one chart: where hours lie.
struct Axis {
    double left = 0.0;
    double right = 0.0;
    double endH = 1.0;
    double x(double h) const { return left + (right - left) * std::clamp(h, 0.0, endH) / endH; }
};

void fillNights(QPainter& painter, const Axis& axis, double top, double bottom, double startH, const PaintStyle& style)
{
    if (axis.endH > kMostNightsH) return;
    const QColor night = mixed(style.onPaper ? QColor(Qt::white) : style.ink.card, style.ink.ink, 0.1);
    for (int day = -1; (day - 1) * kHoursADay < axis.endH + startH; ++day) {
        const double from = day * kHoursADay + kNightFromH - startH;
        const double to = (day + 1) * kHoursADay + kNightToH - startH;
        if (to <= 0.0 || from >= axis.endH) continue;
        painter.fillRect(QRectF(QPointF(axis.x(from), top), QPointF(axis.x(to), bottom)), night);
    }
}

/// Days above, each in the middle of its stretch, with a line at every midnight.
void paintDays(QPainter& painter, const Axis& axis, double top, double bottom, double startH, const PaintStyle& style)
{
    TextLook look;
    look.colour = style.ink.pencil;
    const double row = kAxis * em(style);
    double free = axis.left;
    for (int day = 0; day * kHoursADay < axis.endH + startH; ++day) {
        const double from = axis.x(day * kHoursADay - startH);
        const double to = axis.x((day + 1) * kHoursADay - startH);
        if (day > 0) {
            painter.setPen(thinPen(style, style.ink.line));
            painter.drawLine(QPointF(from, top), QPointF(from, bottom));
        }
        const QString text = Chart::tr("day %1").arg(day + 1);
        const double width = textSizeMm(text, style).width();
        const double middle = (from + to) / 2;
        if (middle - width / 2 < free || middle + width / 2 > axis.right || to - from < width * 0.8) continue;
        paintText(painter, {middle, top + row / 2}, text, style, look);
        free = middle + width / 2 + 0.5 * em(style);
    }
}

void paintHours(QPainter& painter, const Axis& axis, double top, const PaintStyle& style)
{
    TextLook look;
    look.colour = style.ink.pencil;
    double step = 12.0;
    const auto room = [&] { return axis.x(step) - axis.left > 4.5 * em(style); };
    while (!room() && step < axis.endH) step *= 2;
    for (double h = 0.0; h <= axis.endH + 1e-9; h += step) {
        painter.setPen(thinPen(style, style.ink.pencil));
        painter.drawLine(QPointF(axis.x(h), top), QPointF(axis.x(h), top + 0.25 * em(style)));
        const QString text = h > 0.0 ? Chart::tr("%1\u00a0h").arg(h) : Chart::tr("0");
        const double half = textSizeMm(text, style).width() / 2;
        const double at = std::clamp(axis.x(h), axis.left + half, axis.right - half);
        paintText(painter, {at, top + 0.95 * em(style)}, text, style, look);
    }
}

void hatchBar(QPainter& painter, const QRectF& bar, const PaintStyle& style)
{
    QPainterPath path;
    path.addRect(bar);
    painter.setPen(thinPen(style, style.ink.ink));
    for (const QLineF& line : hatchLines(path, 45.0, 0.4 * em(style))) painter.drawLine(line);
}

QColor readyTone(const PaintStyle& style)
{
    return mixed(style.onPaper ? QColor(Qt::white) : style.ink.card, style.ink.ink, style.onPaper ? 0.35 : 0.4);
}

void paintBar(QPainter& painter, const HoursBar& bar, const Axis& axis, double middle, double planH,
              const PaintStyle& style)
{
    const double half = kBar / 2 * em(style);
    TextLook look;
    look.align = Qt::AlignLeft | Qt::AlignVCenter;
    look.colour = style.ink.pencil;
    if (!bar.possible) {
        paintText(painter, {axis.left + 0.4 * em(style), middle}, Chart::tr("nothing holds it that way"), style, look);
        return;
    }
    const bool reached = bar.cautiousH < axis.endH;
    const double likely = axis.x(bar.likelyH);
    const double cautious = axis.x(bar.cautiousH);
    if (cautious > likely) {
        const QRectF box(QPointF(likely, middle - half), QPointF(cautious, middle + half));
        hatchBar(painter, box, style);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(thinPen(style, style.ink.ink));
        painter.drawRect(box);
    }
    if (reached) {
        const QRectF box(QPointF(cautious, middle - half), QPointF(axis.right, middle + half));
        painter.fillRect(box, readyTone(style));
        painter.setPen(outlinePen(style));
        painter.drawLine(box.topLeft(), box.bottomLeft());
    }
    // The figure stands on a plate beside the mark, on whichever side there is room.
    const bool early = bar.planned && planH < bar.cautiousH - 0.05;
    const QString said = std::isfinite(bar.cautiousH) ? waitText(bar.cautiousH) : Chart::tr("never");
    const QString figure = early ? Chart::tr("%1 !").arg(said) : said;
    look.bold = early;
    look.colour = early ? style.ink.stop : style.ink.ink;
    look.behind = style.onPaper ? QColor(Qt::white) : style.ink.card;
    const double width = textSizeMm(figure, style, look).width();
    const double gap = 0.4 * em(style);
    const bool right = reached && cautious + gap + width < axis.right;
    const double end = std::min(likely, axis.right);
    const double left = std::max(axis.left + gap, end - gap - width);
    paintText(painter, {right ? cautious + gap : left, middle}, figure, style, look);
}

void paintGroup(QPainter& painter, const HoursGroup& group, const Axis& axis, double left, double top,
                const PaintStyle& style)
{
    const double row = kRow * em(style);
    TextLook look;
    look.align = Qt::AlignLeft | Qt::AlignVCenter;
    look.bold = true;
    look.behind = style.onPaper ? QColor(Qt::white) : style.ink.card;
    paintText(painter, {left, top + row / 2}, group.title, style, look);
    double y = top + row;
    look = {};
    look.align = Qt::AlignLeft | Qt::AlignVCenter;
    for (const HoursBar& bar : group.bars) {
        look.colour = bar.planned ? style.ink.ink : style.ink.pencil;
        paintText(painter, {left, y + row / 2}, wayText(bar), style, look);
        y += row;
    }
    const double plan = axis.x(group.planH);
    painter.setPen(hiddenPen(style, style.ink.ink));
    painter.drawLine(QPointF(plan, top + 0.75 * row), QPointF(plan, y));
    look.colour = style.ink.ink;
    look.behind = style.onPaper ? QColor(Qt::white) : style.ink.card;
    const QString said = Chart::tr("plan: %1").arg(plannedHourText(group.planH));
    const double half = textSizeMm(said, style).width() / 2;
    look.align = Qt::AlignCenter;
    TextLook bold;
    bold.bold = true;
    const double titleEnd = left + textSizeMm(group.title, style, bold).width() + em(style);
    const double at = std::min(std::max({plan, axis.left + half, titleEnd + half}), axis.right - half);
    paintText(painter, {at, top + row / 2 - 0.1 * em(style)}, said, style, look);
    y = top + row;
    for (const HoursBar& bar : group.bars) {
        paintBar(painter, bar, axis, y + row / 2, group.planH, style);
        y += row;
    }
}

struct LegendItem {
    QString text;
    bool hatched = false;
    bool filled = false;
    bool night = false;
    QString sign{};         ///< in place of a box
};

std::vector<LegendItem> legendOf(const HoursChart& chart, const PaintStyle& style)
{
    std::vector<LegendItem> items{{Chart::tr("likely to hold"), true, false, false},
                                  {Chart::tr("holds with the safety kept"), false, true, false}};
    if (chart.endH <= kMostNightsH) items.push_back({Chart::tr("night"), false, false, true});
    // On the screen the finding says it, and the table has the plan's ways.
    if (!style.onPaper) return items;
    items.push_back({Chart::tr("not how the plan handles it"), false, false, false, QStringLiteral("( )")});
    items.push_back({Chart::tr("later than the plan wants it"), false, false, false, QStringLiteral("!")});
    return items;
}

/// On the screen one below the other, which fits any width; paper is wide enough for two rows.
double legendRows(const HoursChart& chart, const PaintStyle& style)
{
    return style.onPaper ? 2.0 : static_cast<double>(legendOf(chart, style).size());
}

void paintLegend(QPainter& painter, const HoursChart& chart, double left, double right, double top,
                 const PaintStyle& style)
{
    const double row = 1.4 * em(style);
    double x = left;
    TextLook look;
    look.align = Qt::AlignLeft | Qt::AlignVCenter;
    look.colour = style.ink.pencil;
    const QColor ground = style.onPaper ? QColor(Qt::white) : style.ink.card;
    for (const LegendItem& item : legendOf(chart, style)) {
        const double width = 2.1 * em(style) + textSizeMm(item.text, style).width();
        if (x > left && (!style.onPaper || x + width > right)) {
            x = left;
            top += row;
        }
        const QRectF box(x, top + row / 2 - 0.4 * em(style), 1.6 * em(style), 0.8 * em(style));
        x += width + 1.5 * em(style);
        if (item.filled) painter.fillRect(box, readyTone(style));
        if (item.night) painter.fillRect(box, mixed(ground, style.ink.ink, 0.1));
        if (item.hatched) hatchBar(painter, box, style);
        if (item.sign.isEmpty()) {
            painter.setBrush(Qt::NoBrush);
            painter.setPen(thinPen(style, style.ink.pencil));
            painter.drawRect(box);
        } else {
            paintText(painter, {box.left() + 0.2 * em(style), box.center().y()}, item.sign, style, look);
        }
        paintText(painter, {box.right() + 0.5 * em(style), box.center().y()}, item.text, style, look);
    }
}

}  // namespace

HoursChart hoursChart(const Plan& plan, const Assessment& assessment, const std::string& part)
{
    HoursChart chart;
    chart.startH = courseOf(plan).startH;
    chart.endH = kLeastEndH;
    std::vector<const CastingHours*> first;
    for (const CastingHoursPtr& hours : assessment.hours) {
        if (!hours || hours->ways.empty() || (!part.empty() && hours->part != part)) continue;
        std::size_t group = 0;
        while (group < first.size() && !sameHours(*first[group], *hours)) ++group;
        if (group == first.size()) {
            first.push_back(hours.get());
            chart.groups.push_back(groupOf(*hours));
        }
        chart.groups[group].castings.push_back(hours->casting);
    }
    for (HoursGroup& group : chart.groups) {
        const QString name = subjectName(&plan, group.castings.front());
        const int more = static_cast<int>(group.castings.size()) - 1;
        QStringList ids;
        for (const std::string& id : group.castings) ids << QString::fromStdString(id);
        group.title = more == 0 ? name
                      : more < 4 ? ids.join(QStringLiteral(", "))
                                 : Chart::tr("%1 to %2 (%3 alike)").arg(ids.first(), ids.last()).arg(more + 1);
        double last = group.planH;
        for (const HoursBar& bar : group.bars) {
            if (std::isfinite(bar.cautiousH) && bar.planned) last = std::max(last, bar.cautiousH);
        }
        chart.endH = std::max(chart.endH, std::min(last * 1.25, kLongestWaitH));
    }
    chart.endH = std::ceil(chart.endH / 12.0) * 12.0;
    return chart;
}

HoursChart chartOfGroups(const HoursChart& chart, std::size_t from, std::size_t to)
{
    HoursChart some = chart;
    to = std::min(to, chart.groups.size());
    some.groups.assign(chart.groups.begin() + static_cast<std::ptrdiff_t>(std::min(from, to)),
                       chart.groups.begin() + static_cast<std::ptrdiff_t>(to));
    return some;
}

double hoursChartHeight(const HoursChart& chart, const PaintStyle& style)
{
    if (chart.groups.empty()) return 0.0;
    double height = (2 * kAxis + kGap) * em(style);
    for (const HoursGroup& group : chart.groups) height += groupHeight(group, style);
    return height + 1.4 * em(style) * legendRows(chart, style);
}

double hoursChartLeastWidth(const HoursChart& chart, const PaintStyle& style)
{
    return nameWidth(chart, style) + 12.0 * em(style);
}

void paintHoursChart(QPainter& painter, const QRectF& box, const HoursChart& chart, const PaintStyle& style)
{
    if (chart.groups.empty()) return;
    painter.save();
    const Axis axis{box.left() + nameWidth(chart, style), box.right(), chart.endH};
    const double first = box.top() + kAxis * em(style);
    double bottom = first;
    for (const HoursGroup& group : chart.groups) bottom += groupHeight(group, style);
    fillNights(painter, axis, first, bottom, chart.startH, style);
    paintDays(painter, axis, box.top(), bottom, chart.startH, style);
    double y = first;
    for (const HoursGroup& group : chart.groups) {
        paintGroup(painter, group, axis, box.left(), y, style);
        y += groupHeight(group, style);
    }
    painter.setPen(outlinePen(style));
    painter.drawLine(QPointF(axis.left, bottom), QPointF(axis.right, bottom));
    paintHours(painter, axis, bottom, style);
    paintLegend(painter, chart, box.left(), box.right(), bottom + (kAxis + kGap) * em(style), style);
    painter.restore();
}

QString hoursChartWords(const HoursChart& chart)
{
    QStringList lines;
    for (const HoursGroup& group : chart.groups) {
        QStringList ways;
        for (const HoursBar& bar : group.bars) {
            ways << (bar.possible ? Chart::tr("%1: likely from %2, with the safety kept from %3 (%4)")
                                        .arg(handlingWayName(bar.way), waitText(bar.likelyH), waitText(bar.cautiousH),
                                             std::isfinite(bar.cautiousH) ? clockText(bar.cautiousH, chart.startH)
                                                                          : Chart::tr("never"))
                                  : Chart::tr("%1: nothing holds it that way").arg(handlingWayName(bar.way)));
        }
        lines << Chart::tr("%1, plan %2. %3").arg(group.title, plannedHourText(group.planH), ways.join(QStringLiteral("; ")));
    }
    return lines.join(QLatin1Char('\n'));
}

}  // namespace yardcast::ui
