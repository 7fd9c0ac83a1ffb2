#include <algorithm>
#include <vector>

#include <QFont>
#include <QFontMetricsF>
#include <QHash>
#include <QPainter>
#include <QStringList>
#include <QTransform>

#include "ui/drawing/marks.h"

namespace yardcast::ui {

namespace {

/// Type is set at this many pixels and scaled, so that sizes in mm of paper need no whole pixels.
constexpr int kPaperTypePx = 40;

struct Setting {
    QFont font;
    double mmPerPx = 1.0;  ///< drawing mm a pixel of the font
};

Setting settingOf(const PaintStyle& style, const TextLook& look)
{
    Setting setting;
    const double units = look.sizeUnits > 0.0 ? look.sizeUnits : labelUnits(style);
    setting.font.setBold(look.bold);
    setting.font.setStyleHint(QFont::SansSerif);
    if (style.onPaper) {
        setting.font.setPixelSize(kPaperTypePx);
        setting.font.setHintingPreference(QFont::PreferNoHinting);
        setting.mmPerPx = units * style.mmPerUnit / kPaperTypePx;
    } else {
        setting.font.setPixelSize(std::max(1, qRound(units)));
        setting.mmPerPx = style.mmPerUnit;
    }
    return setting;
}

QSizeF sizeIn(const QFontMetricsF& metrics, const QStringList& lines)
{
    double width = 0.0;
    for (const QString& line : lines) {
        width = std::max(width, metrics.horizontalAdvance(line));
    }
    return {width, metrics.lineSpacing() * static_cast<double>(lines.size() - 1) + metrics.height()};
}

/// Setting words is what costs most in a repaint, and the same few are asked for over and over while one drags.
QSizeF sizePx(const QString& text, const QFont& font)
{
    constexpr qsizetype kMostKept = 2000;
    constexpr std::size_t kMostFonts = 12;
    struct Sizes {
        QFont font;
        QHash<QString, QSizeF> byText;
    };
    thread_local std::vector<Sizes> kept;
    auto found = std::find_if(kept.begin(), kept.end(), [&](const Sizes& one) { return one.font == font; });
    if (found == kept.end()) {
        if (kept.size() >= kMostFonts) kept.clear();
        kept.push_back({font, {}});
        found = std::prev(kept.end());
    }
    if (const auto known = found->byText.constFind(text); known != found->byText.constEnd()) return *known;
    if (found->byText.size() >= kMostKept) found->byText.clear();
    const QSizeF size = sizeIn(QFontMetricsF(font), text.split(QLatin1Char('\n')));
    found->byText.insert(text, size);
    return size;
}

}  // namespace

double labelUnits(const PaintStyle& style)
{
    return style.onPaper ? 3.8 : 12.0;
}

double figureUnits(const PaintStyle& style)
{
    return style.onPaper ? 4.4 : 12.0;
}

QSizeF textSizeMm(const QString& text, const PaintStyle& style, const TextLook& look)
{
    const Setting setting = settingOf(style, look);
    return sizePx(text, setting.font) * setting.mmPerPx;
}

QPainterPath paintText(QPainter& painter, QPointF at, const QString& text, const PaintStyle& style,
                       const TextLook& look)
{
    const Setting setting = settingOf(style, look);
    const QFontMetricsF metrics(setting.font);
    const QStringList lines = text.split(QLatin1Char('\n'));
    const QSizeF size = sizePx(text, setting.font);
    double left = -size.width() / 2.0;
    double top = -size.height() / 2.0;
    if (look.align & Qt::AlignLeft) {
        left = 0.0;
    } else if (look.align & Qt::AlignRight) {
        left = -size.width();
    }
    if (look.align & Qt::AlignTop) {
        top = 0.0;
    } else if (look.align & Qt::AlignBottom) {
        top = -size.height();
    }

    painter.save();
    QTransform local;
    local.translate(at.x(), at.y());
    local.rotate(look.angleDeg);
    local.scale(setting.mmPerPx, setting.mmPerPx);
    painter.setTransform(local, true);
    const QRectF box(QPointF(left, top), size);
    if (look.behind.isValid()) {
        const double side = 0.15 * metrics.height();
        painter.fillRect(box.adjusted(-side, 0.0, side, 0.0), look.behind);
    }
    painter.setFont(setting.font);
    painter.setPen(look.colour.isValid() ? look.colour : style.ink.ink);
    double baseline = top + metrics.ascent();
    for (const QString& line : lines) {
        double x = left;
        if (!(look.align & (Qt::AlignLeft | Qt::AlignRight))) {
            x = -metrics.horizontalAdvance(line) / 2.0;
        } else if (look.align & Qt::AlignRight) {
            x = -metrics.horizontalAdvance(line);
        }
        painter.drawText(QPointF(x, baseline), line);
        baseline += metrics.lineSpacing();
    }
    painter.restore();
    QPainterPath shape;
    shape.addPolygon(local.map(QPolygonF(box)));
    shape.closeSubpath();
    return shape;
}

}  // namespace yardcast::ui
