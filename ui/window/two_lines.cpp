#include "ui/window/two_lines.h"

#include <QFontMetrics>
#include <QTextLayout>

namespace yardcast::ui {

QStringList brokenInTwo(const QString& text, const QFont& font, int widthPx)
{
    if (text.isEmpty() || widthPx <= 0) return {};
    const QFontMetrics metrics(font);
    QTextLayout layout(text, font);
    layout.beginLayout();
    QTextLine first = layout.createLine();
    first.setLineWidth(widthPx);
    const int taken = first.textStart() + first.textLength();
    layout.endLayout();
    QStringList lines{metrics.elidedText(text.left(taken).trimmed(), Qt::ElideRight, widthPx)};
    const QString rest = text.mid(taken).trimmed();
    if (!rest.isEmpty()) lines.append(metrics.elidedText(rest, Qt::ElideRight, widthPx));
    return lines;
}

}  // namespace yardcast::ui
