#include "ui/sheets/sheet_text.h"

#include <algorithm>

#include <QPainter>

#include "ui/drawing/marks.h"

namespace yardcast::ui {

PaintStyle paperStyle(double mmPerUnit)
{
    PaintStyle style;
    style.ink = paperInk();
    style.onPaper = true;
    style.mmPerUnit = mmPerUnit;
    return style;
}

namespace {

TextLook lookOf(const Type& type)
{
    TextLook look;
    look.sizeUnits = type.sizeMm;
    look.bold = type.bold;
    look.colour = type.colour;
    return look;
}

/// A word wider than the line, parted into pieces that fit.
QStringList parted(QString word, double widthMm, const Type& type)
{
    QStringList pieces;
    while (word.size() > 1 && textWidthMm(word, type) > widthMm) {
        qsizetype count = word.size() - 1;
        while (count > 1 && textWidthMm(word.left(count), type) > widthMm) {
            --count;
        }
        pieces << word.left(count);
        word.remove(0, count);
    }
    return pieces << word;
}

}  // namespace

double textWidthMm(const QString& text, const Type& type)
{
    return textSizeMm(text, paperStyle(), lookOf(type)).width();
}

double lineHeightMm(const Type& type)
{
    return textSizeMm(QStringLiteral("0"), paperStyle(), lookOf(type)).height();
}

QStringList wrapped(const QString& text, double widthMm, const Type& type)
{
    QStringList lines;
    for (const QString& paragraph : text.split(QLatin1Char('\n'))) {
        QString line;
        for (const QString& whole : paragraph.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
            for (const QString& word : parted(whole, widthMm, type)) {
                const QString longer = line.isEmpty() ? word : line + QLatin1Char(' ') + word;
                if (line.isEmpty() || textWidthMm(longer, type) <= widthMm) {
                    line = longer;
                } else {
                    lines << line;
                    line = word;
                }
            }
        }
        lines << line;
    }
    return lines;
}

Type fittedType(const QString& text, double widthMm, Type type, double leastMm)
{
    const double width = textWidthMm(text, type);
    if (width > widthMm && width > 0.0) {
        type.sizeMm = std::max(leastMm, type.sizeMm * widthMm / width * 0.999);
    }
    return type;
}

double paintLines(QPainter& painter, const QRectF& box, const QStringList& lines, const Type& type)
{
    TextLook look = lookOf(type);
    look.align = Qt::AlignTop;
    double x = box.left();
    if (type.align & Qt::AlignRight) {
        look.align |= Qt::AlignRight;
        x = box.right();
    } else if (type.align & Qt::AlignHCenter) {
        look.align |= Qt::AlignHCenter;
        x = box.center().x();
    } else {
        look.align |= Qt::AlignLeft;
    }
    const double step = lineHeightMm(type);
    double y = box.top();
    for (const QString& line : lines) {
        paintText(painter, QPointF(x, y), line, paperStyle(), look);
        y += step;
    }
    return y - box.top();
}

double paintWrapped(QPainter& painter, const QRectF& box, const QString& text, const Type& type)
{
    return paintLines(painter, box, wrapped(text, box.width(), type), type);
}

void paintFitted(QPainter& painter, const QRectF& box, const QString& text, const Type& type)
{
    const Type fitted = fittedType(text, box.width(), type);
    const double rest = box.height() - lineHeightMm(fitted);
    paintLines(painter, box.adjusted(0.0, rest / 2.0, 0.0, 0.0), {text}, fitted);
}

void paintName(QPainter& painter, const QRectF& box, const QString& text, const Type& type)
{
    constexpr double kLeast = 2.4;
    for (Type tried = type; tried.sizeMm >= kLeast; tried.sizeMm -= 0.2) {
        const QStringList lines = wrapped(text, box.width(), tried);
        const double height = lineHeightMm(tried) * static_cast<double>(lines.size());
        if (height <= box.height() + 0.1 || (lines.size() == 1 && tried.sizeMm <= kLeast + 0.2)) {
            paintLines(painter, box.adjusted(0.0, (box.height() - height) / 2.0, 0.0, 0.0), lines, tried);
            return;
        }
    }
    Type least = type;
    least.sizeMm = kLeast;
    QStringList lines = wrapped(text, box.width(), least);
    const auto room = std::max<qsizetype>(1, static_cast<qsizetype>(box.height() / lineHeightMm(least)));
    if (lines.size() > room) {
        lines = lines.mid(0, room);
        QString& last = lines.last();
        while (!last.isEmpty() && textWidthMm(last + QChar(0x2026), least) > box.width()) {
            last.chop(1);
        }
        last += QChar(0x2026);
    }
    paintLines(painter, box, lines, least);
}

}  // namespace yardcast::ui
