#include "ui/drawing/weather_chart.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QPainter>

#include "ui/drawing/marks.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

constexpr double kDayH = 24.0;
constexpr int kHourStep = 3;
constexpr double kUncertain = kEvaporationUncertainPercent / 100;
/// Also a mild day has room for its limit.
constexpr double kLeastTopOfLimit = 1.25;
constexpr double kHeightInLines = 13.5;
constexpr double kHatchDeg = 45.0;

QString tr(const char* text) { return QCoreApplication::translate("WeatherChart", text); }

/// 1, 2 or 5 times a power of ten, so that there are some four steps.
double niceStep(double top)
{
    const double raw = top / 4;
    const double power = std::pow(10.0, std::floor(std::log10(raw)));
    for (const double step : {1.0, 2.0, 5.0}) {
        if (step * power >= raw) return step * power;
    }
    return 10.0 * power;
}

class Chart {
public:
    Chart(QPainter& painter, const QRectF& rect, const PourWeather& weather, const PaintStyle& style)
        : p_(painter), weather_(weather), style_(style), line_(1.25 * labelUnits(style))
    {
        double most = kLeastTopOfLimit * weather.limitKgM2H;
        for (const WeatherHour& hour : weather.hours) {
            if (std::isfinite(hour.evaporationKgM2H)) most = std::max(most, (1 + kUncertain) * hour.evaporationKgM2H);
        }
        step_ = niceStep(most);
        top_ = step_ * std::ceil(most / step_ - 1e-9);
        const double axis = text(numberText(top_, decimals())).width() + 0.5 * line_;
        // Title and the two bars of work above, hours and air below.
        area_ = rect.adjusted(axis, 4.2 * line_, -1.0 * line_, -2.8 * line_);
    }

    void paint()
    {
        if (area_.width() <= 0.0 || area_.height() <= 0.0 || weather_.hours.empty()) return;
        p_.save();
        p_.setRenderHint(QPainter::Antialiasing);
        paintText(p_, {area_.left(), area_.top() - 3.6 * line_}, tr("Water lost, kg/m² an hour"), style_,
                  look(Qt::AlignLeft | Qt::AlignVCenter));
        paintNight();
        paintBand();
        paintScale();
        paintLimits();
        paintCurve();
        paintWork(weather_.startH, tr("as planned"), 2.5, true);
        paintWork(weather_.bestStartH, tr("best start"), 1.2, false);
        p_.restore();
    }

private:
    TextLook look(Qt::Alignment align, QColor colour = {}, QColor behind = {}) const
    {
        TextLook own;
        own.align = align;
        own.colour = colour;
        own.behind = behind;
        return own;
    }
    QSizeF text(const QString& words) const { return textSizeMm(words, style_); }
    double x(double hour) const { return area_.left() + area_.width() * hour / kDayH; }
    double y(double rate) const { return area_.bottom() - area_.height() * std::clamp(rate / top_, 0.0, 1.0); }
    int decimals() const { return step_ < 0.0999 ? 2 : 1; }
    QPen pen(double units, Qt::PenStyle kind = Qt::SolidLine) const { return style_.pen(style_.ink.ink, units, kind); }
    QPen pencil(double units, Qt::PenStyle kind = Qt::SolidLine) const
    {
        return style_.pen(style_.ink.pencil, units, kind);
    }

    void paintNight()
    {
        for (const auto& [from, to] : {std::pair{0.0, kEarliestWorkH}, std::pair{kLatestWorkH, kDayH}}) {
            QPainterPath night;
            night.addRect(QRectF(QPointF(x(from), area_.top()), QPointF(x(to), area_.bottom())));
            p_.setPen(pencil(0.5 * style_.narrow()));
            p_.drawLines(hatched(night));
        }
    }

    QList<QLineF> hatched(const QPainterPath& path) const
    {
        const std::vector<QLineF> lines = hatchLines(path, kHatchDeg, 0.6 * line_);
        return {lines.begin(), lines.end()};
    }

    QPolygonF curve(double factor) const
    {
        QPolygonF points;
        for (const WeatherHour& hour : weather_.hours) {
            points << QPointF(x(hour.hourOfDay), y(factor * hour.evaporationKgM2H));
        }
        points << QPointF(x(kDayH), y(factor * weather_.hours.front().evaporationKgM2H));
        return points;
    }

    void paintBand()
    {
        QPolygonF band = curve(1 + kUncertain);
        const QPolygonF low = curve(1 - kUncertain);
        for (qsizetype i = low.size(); i-- > 0;) band << low[i];
        QColor tone = style_.onPaper ? QColor(0, 0, 0) : style_.ink.water;
        tone.setAlphaF(style_.onPaper ? 0.10f : 0.18f);
        p_.setPen(Qt::NoPen);
        p_.setBrush(tone);
        p_.drawPolygon(band);
        p_.setBrush(Qt::NoBrush);
    }

    void paintScale()
    {
        p_.setPen(pencil(style_.narrow()));
        p_.drawLine(area_.bottomLeft(), area_.bottomRight());
        p_.drawLine(area_.bottomLeft(), area_.topLeft());
        const double tick = 0.25 * line_;
        for (double rate = 0.0; rate <= top_ + 1e-9; rate += step_) {
            p_.drawLine(QPointF(area_.left() - tick, y(rate)), QPointF(area_.left(), y(rate)));
            paintText(p_, {area_.left() - 1.6 * tick, y(rate)}, numberText(rate, decimals()), style_,
                      look(Qt::AlignRight | Qt::AlignVCenter));
        }
        for (int h = 0; h <= kDayH; h += kHourStep) {
            p_.setPen(pencil(style_.narrow()));
            p_.drawLine(QPointF(x(h), area_.bottom()), QPointF(x(h), area_.bottom() + tick));
            const double air = weather_.hours[h % weather_.hours.size()].airC;
            const QString words = h == 0 ? tr("0 h") : QString::number(h);
            paintText(p_, {x(h), area_.bottom() + 0.9 * line_}, words, style_, look(Qt::AlignCenter));
            paintText(p_, {x(h), area_.bottom() + 2.1 * line_}, tr("%1°").arg(numberText(air, 0)), style_,
                      look(Qt::AlignCenter, style_.ink.pencil));
        }
    }

    void paintLimits()
    {
        const auto at = [&](double rate, const QString& words, const QColor& colour) {
            if (rate > top_) return;
            p_.setPen(style_.pen(style_.onPaper ? style_.ink.ink : colour, style_.narrow(), Qt::DashLine));
            p_.drawLine(QPointF(area_.left(), y(rate)), QPointF(area_.right(), y(rate)));
            paintText(p_, {x(clearHour(rate)), y(rate) - 0.65 * line_}, words, style_,
                      look(Qt::AlignCenter, {}, style_.ink.sheet));
        };
        at(weather_.limitKgM2H, tr("limit"), style_.ink.caution);
        at(2 * weather_.limitKgM2H, tr("twice the limit"), style_.ink.stop);
    }

    /// Where the curve leaves most room for the words on a level line.
    double clearHour(double rate) const
    {
        double best = 4.0;
        double most = -1.0;
        for (double h = 4.0; h <= 20.0; h += 4.0) {
            double room = HUGE_VAL;
            for (double at = h - 2.0; at <= h + 2.0; at += 1.0) {
                const WeatherHour& hour = weather_.hours[static_cast<std::size_t>(at) % weather_.hours.size()];
                room = std::min(room, std::abs(y(hour.evaporationKgM2H) - (y(rate) - 0.65 * line_)));
            }
            if (room > most) {
                most = room;
                best = h;
            }
        }
        return best;
    }

    void paintCurve()
    {
        p_.setPen(pen(style_.wide()));
        p_.drawPolyline(curve(1.0));
    }

    /// A bar from the start to the end of the work: filled as planned, hollow from the best start.
    void paintWork(double startH, const QString& words, double linesAbove, bool filled)
    {
        const double endH = std::min(startH + weather_.workH, kDayH);
        const QRectF bar(QPointF(x(startH), area_.top() - linesAbove * line_ - 0.25 * line_),
                         QPointF(x(endH), area_.top() - linesAbove * line_ + 0.25 * line_));
        p_.setPen(pen(style_.narrow()));
        p_.setBrush(filled ? QBrush(style_.ink.pencil) : QBrush(Qt::NoBrush));
        p_.drawRect(bar);
        p_.setBrush(Qt::NoBrush);
        const QString label = tr("%1 %2").arg(words, clockText(startH));
        const double room = area_.right() - bar.right() - 0.4 * line_;
        const bool right = text(label).width() <= room;
        paintText(p_, {right ? bar.right() + 0.4 * line_ : bar.left() - 0.4 * line_, bar.center().y()}, label, style_,
                  look((right ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter));
    }

    QPainter& p_;
    const PourWeather& weather_;
    const PaintStyle& style_;
    double line_;  ///< height of a line of text
    double step_ = 0.5;
    double top_ = 1.0;
    QRectF area_;
};

}  // namespace

void paintWeatherChart(QPainter& painter, const QRectF& rect, const PourWeather& weather, const PaintStyle& style)
{
    Chart(painter, rect, weather, style).paint();
}

double weatherChartHeight(const PaintStyle& style) { return kHeightInLines * 1.25 * labelUnits(style); }

}  // namespace yardcast::ui
