#include "ui/drawing/running_dimensions.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QPainter>

#include "ui/drawing/marks.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

constexpr double kSameMm = 0.5;

/// A figure with where it stands along the row, and where it belongs.
struct Figure {
    QString text;
    double atMm = 0.0;
    double placedMm = 0.0;
};

double perUnit(const PaintStyle& style) { return (style.onPaper ? 1.0 : 3.0) * style.mmPerUnit; }

TextLook figureLook(const PaintStyle& style)
{
    TextLook look;
    look.sizeUnits = style.onPaper ? 3.4 : 11.0;
    return look;
}

/// Figures moved apart as little as they must, keeping their order.
std::vector<Figure> figuresOf(const RunningRow& row, const PaintStyle& style)
{
    std::vector<Figure> figures;
    for (const RunningStop& stop : row.stops) {
        const QString figure = shortNumberText(std::fabs(stop.atMm - row.datumMm), 1);
        QString about = stop.about;
        if (stop.isMiddle) about = QCoreApplication::translate("Drawing", "mid %1", "middle of a hole").arg(about);
        figures.push_back({about.isEmpty() ? figure : figure + QLatin1Char(' ') + about, stop.atMm, stop.atMm});
    }
    std::sort(figures.begin(), figures.end(), [](const Figure& a, const Figure& b) { return a.atMm < b.atMm; });
    const double pitch = textSizeMm(QStringLiteral("0"), style, figureLook(style)).height() * 0.92;
    // Figures that would touch stand in one pile about the middle of where they belong; piles that touch become one.
    struct Pile {
        std::size_t count = 0;
        double sum = 0.0;
        double middle() const { return sum / static_cast<double>(count); }
    };
    std::vector<Pile> piles;
    const auto touch = [&](const Pile& a, const Pile& b) {
        return b.middle() - a.middle() < pitch * static_cast<double>(a.count + b.count) / 2.0 - 1e-9;
    };
    for (const Figure& figure : figures) {
        piles.push_back({1, figure.atMm});
        while (piles.size() > 1 && touch(piles[piles.size() - 2], piles.back())) {
            const Pile last = piles.back();
            piles.pop_back();
            piles.back().count += last.count;
            piles.back().sum += last.sum;
        }
    }
    std::size_t next = 0;
    for (const Pile& pile : piles) {
        const double first = pile.middle() - pitch * static_cast<double>(pile.count - 1) / 2.0;
        for (std::size_t i = 0; i < pile.count; ++i) {
            figures[next++].placedMm = first + pitch * static_cast<double>(i);
        }
    }
    return figures;
}

QPointF at(const RunningRow& row, double along, double acrossMm)
{
    return row.across ? QPointF(along, acrossMm) : QPointF(acrossMm, along);
}

/// From the datum to the middle of the row's title, on the side where no stops are.
double titleAway(const RunningRow& row, const PaintStyle& style)
{
    const QSizeF size = textSizeMm(row.title, style, figureLook(style));
    const double half = (row.across ? size.width() : size.height()) / 2.0 + 1.8 * perUnit(style);
    const bool onwards = !row.stops.empty() && row.stops.back().atMm > row.datumMm;
    return onwards ? -half : half;
}

}  // namespace

RunningRow tidied(RunningRow row)
{
    std::sort(row.stops.begin(), row.stops.end(), [&](const RunningStop& a, const RunningStop& b) {
        return std::fabs(a.atMm - row.datumMm) < std::fabs(b.atMm - row.datumMm);
    });
    std::vector<RunningStop> kept;
    for (const RunningStop& stop : row.stops) {
        if (std::fabs(stop.atMm - row.datumMm) < kSameMm) continue;
        const auto same = std::find_if(kept.begin(), kept.end(), [&](const RunningStop& other) {
            return std::fabs(other.atMm - stop.atMm) < kSameMm;
        });
        if (same == kept.end()) {
            kept.push_back(stop);
        } else if (same->about.isEmpty()) {
            same->about = stop.about;
            same->isMiddle = stop.isMiddle;
        } else if (same->about != stop.about && !stop.about.isEmpty()) {
            same->about += QStringLiteral(", ") + stop.about;
            same->isMiddle = same->isMiddle && stop.isMiddle;
        }
    }
    row.stops = std::move(kept);
    return row;
}

QRectF runningBounds(const RunningRow& row, const PaintStyle& style)
{
    if (row.stops.empty()) return {};
    const double unit = perUnit(style);
    double low = row.datumMm;
    double high = row.datumMm;
    double longest = 0.0;
    for (const Figure& figure : figuresOf(row, style)) {
        const QSizeF size = textSizeMm(figure.text, style, figureLook(style));
        longest = std::max(longest, size.width());
        low = std::min({low, figure.atMm, figure.placedMm - size.height() / 2.0});
        high = std::max({high, figure.atMm, figure.placedMm + size.height() / 2.0});
    }
    const double reach = row.lineMm + row.outwards * (longest + 3.5 * unit);
    if (!row.title.isEmpty()) {
        const QSizeF size = textSizeMm(row.title, style, figureLook(style));
        const double away = titleAway(row, style);
        low = std::min(low, row.datumMm + away - (row.across ? size.width() : size.height()) / 2.0);
        high = std::max(high, row.datumMm + away + (row.across ? size.width() : size.height()) / 2.0);
    }
    const QPointF a = at(row, low - unit, row.lineMm - row.outwards * 1.5 * unit);
    const QPointF b = at(row, high + unit, reach);
    return QRectF(a, b).normalized();
}

void paintRunning(QPainter& painter, const RunningRow& row, const PaintStyle& style)
{
    if (row.stops.empty()) return;
    const double unit = perUnit(style);
    double far = row.datumMm;
    for (const RunningStop& stop : row.stops) {
        if (std::fabs(stop.atMm - row.datumMm) > std::fabs(far - row.datumMm)) far = stop.atMm;
    }
    painter.setPen(thinPen(style, style.ink.ink));
    painter.setBrush(Qt::NoBrush);
    painter.drawLine(at(row, row.datumMm, row.lineMm), at(row, far, row.lineMm));
    painter.drawEllipse(at(row, row.datumMm, row.lineMm), 1.1 * unit, 1.1 * unit);
    const auto extension = [&](double along, double edge) {
        const double gap = (row.lineMm > edge ? 1.0 : -1.0) * unit;
        painter.drawLine(at(row, along, edge + gap), at(row, along, row.lineMm + row.outwards * 1.2 * unit));
    };
    const auto first = std::min_element(
        row.stops.begin(), row.stops.end(), [&](const RunningStop& a, const RunningStop& b) {
            return std::fabs(a.edgeMm - row.lineMm) < std::fabs(b.edgeMm - row.lineMm);
        });
    extension(row.datumMm, first->edgeMm);
    for (const RunningStop& stop : row.stops) {
        extension(stop.atMm, stop.edgeMm);
        const double sense = stop.atMm > row.datumMm ? 1.0 : -1.0;
        paintArrowhead(painter, at(row, stop.atMm, row.lineMm), row.across ? QPointF(sense, 0.0) : QPointF(0.0, sense),
                       style, style.ink.ink);
        painter.setPen(thinPen(style, style.ink.ink));
    }
    TextLook look = figureLook(style);
    if (!row.title.isEmpty()) {
        const QSizeF size = textSizeMm(row.title, style, look);
        const double aside = row.across ? 0.0 : row.outwards * (size.width() / 2.0 - unit);
        paintText(painter, at(row, row.datumMm + titleAway(row, style), row.lineMm + aside), row.title, style, look);
    }
    look.behind = style.ink.sheet;
    for (const Figure& figure : figuresOf(row, style)) {
        const double from = row.lineMm + row.outwards * 1.2 * unit;
        const double to = row.lineMm + row.outwards * 3.0 * unit;
        painter.setPen(thinPen(style, style.ink.ink));
        painter.drawLine(at(row, figure.atMm, from), at(row, figure.placedMm, to));
        const QSizeF size = textSizeMm(figure.text, style, look);
        const double middle = to + row.outwards * (0.4 * unit + size.width() / 2.0);
        look.angleDeg = row.across ? -90.0 : 0.0;
        paintText(painter, at(row, figure.placedMm, middle), figure.text, style, look);
    }
}

}  // namespace yardcast::ui
