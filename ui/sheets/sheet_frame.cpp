#include "ui/sheets/sheet_frame.h"

#include <QPainter>

#include "ui/drawing/marks.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

constexpr double kFilingMm = 20.0;
constexpr double kEdgeMm = 10.0;
constexpr double kUprightBlockMm = 180.0;  // ISO 7200: at most 180
constexpr double kLyingBlockMm = 158.0;    // leaves room for the strip of the scale beside it
constexpr double kRowMm = 11.0;
constexpr double kStripMm = 22.0;
constexpr double kCautionMm = 8.0;

void paintField(QPainter& painter, const QRectF& box, const QString& label, const QString& value, double sizeMm,
                bool isFigure = false)
{
    painter.setPen(QPen(Qt::black, 0.25));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box);
    Type small;
    small.sizeMm = kLabelType;
    paintLines(painter, box.adjusted(1.2, 0.6, -1.2, 0.0), {label}, small);
    Type type;
    type.sizeMm = sizeMm;
    const QRectF inner = box.adjusted(1.2, 3.4, -1.2, -0.4);
    if (isFigure) {
        paintFitted(painter, inner, value, type);
    } else {
        paintName(painter, inner, value, type);
    }
}

double blockWidth(bool landscape)
{
    return landscape ? kLyingBlockMm : kUprightBlockMm;
}

void paintTitleBlock(QPainter& painter, const SheetPage& page, const TitleBlock& block)
{
    const QRectF frame = frameBox(page.landscape);
    const double width = blockWidth(page.landscape);
    const QRectF box(frame.right() - width, frame.bottom() - 2.0 * kRowMm, width, 2.0 * kRowMm);
    double x = box.left();
    double y = box.top();
    const auto field = [&](double wide, const QString& label, const QString& value, double size, bool figure) {
        paintField(painter, QRectF(x, y, wide, kRowMm), label, value, size, figure);
        x += wide;
    };
    const QString none = QString(QChar(0x2013));
    const auto orNone = [&](const QString& text) { return text.isEmpty() ? none : text; };
    constexpr double kFigures = 17.0 + 24.0 + 26.0 + 17.0;
    const double words = (width - kFigures) / 2.0;
    field(0.56 * width, Sheets::tr("Plan"), orNone(block.plan), kTitleType, false);
    field(0.44 * width, Sheets::tr("Sheet"), page.sheet, kTitleType, false);
    x = box.left();
    y += kRowMm;
    field(words, Sheets::tr("Part"), page.part.isEmpty() ? Sheets::tr("all") : page.part, kBodyType, false);
    field(words, Sheets::tr("View"), orNone(page.view), kSmallType, false);
    field(17.0, Sheets::tr("Scale"), orNone(page.scale), kBodyType, true);
    field(24.0, Sheets::tr("Date"), block.date.toString(Qt::ISODate), kBodyType, true);
    field(26.0, Sheets::tr("Version, plan mark"), block.version, kBodyType, true);
    field(17.0, Sheets::tr("Page"), Sheets::tr("%1 of %2").arg(block.page).arg(block.pages), kBodyType, true);
    painter.setPen(QPen(Qt::black, 0.5));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box);
}

/// Marks in the middle of each side that help to place a sheet (ISO 5457). They end at the frame, so that they cross
/// no text.
void paintCentringMarks(QPainter& painter, bool landscape)
{
    const QRectF frame = frameBox(landscape);
    const QSizeF sheet = sheetSize(landscape);
    painter.setPen(QPen(Qt::black, 0.7, Qt::SolidLine, Qt::FlatCap));
    const double x = sheet.width() / 2.0;
    const double y = sheet.height() / 2.0;
    painter.drawLine(QPointF(x, 5.0), QPointF(x, frame.top()));
    painter.drawLine(QPointF(x, sheet.height() - 5.0), QPointF(x, frame.bottom()));
    painter.drawLine(QPointF(5.0, y), QPointF(frame.left(), y));
    painter.drawLine(QPointF(sheet.width() - 5.0, y), QPointF(frame.right(), y));
}

QString realLength(double mm)
{
    return mm >= 1000.0 ? metresText(mm / 1000.0) : lengthText(mm);
}

void paintScaleStrip(QPainter& painter, const SheetPage& page)
{
    const QLineF line = checkLine(page.landscape);
    painter.setPen(QPen(Qt::black, 0.35, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(line);
    for (const QPointF& end : {line.p1(), line.p2()}) {
        painter.drawLine(end + QPointF(0.0, -1.5), end + QPointF(0.0, 1.5));
    }
    Type small;
    small.sizeMm = kSmallType;
    const QRectF above(line.x1(), line.y1() - 4.4, kCheckLineMm, 4.0);
    paintFitted(painter, above, Sheets::tr("Check: this line is 100 mm long on paper"), small);

    // The scale bar: ten pieces of 10 mm, black and white by turns.
    const double top = line.y1() + 3.0;
    painter.setPen(QPen(Qt::black, 0.25));
    for (int i = 0; i < 10; ++i) {
        painter.setBrush(i % 2 == 0 ? Qt::black : Qt::white);
        painter.drawRect(QRectF(line.x1() + 10.0 * i, top, 10.0, 1.6));
    }
    painter.setBrush(Qt::NoBrush);
    for (const double at : {0.0, 50.0, 100.0}) {
        Type figure = small;
        figure.align = at == 0.0 ? Qt::AlignLeft : at == 50.0 ? Qt::AlignHCenter : Qt::AlignRight;
        const double x = line.x1() + at;
        const QRectF box(at == 0.0 ? x : x - (at == 50.0 ? 20.0 : 40.0), top + 2.0, 40.0, 4.0);
        const QString text = at == 0.0 ? QStringLiteral("0") : realLength(at * page.scaleOf);
        paintLines(painter, box, {text}, figure);
    }
    if (page.caution.isEmpty()) {
        return;
    }
    // Upright: beside the check line. Lying: above the title block, across the sheet.
    const QRectF frame = frameBox(page.landscape);
    QRectF box(line.x2() + 5.0, line.y1() - 4.8, frame.right() - 1.5 - line.x2() - 5.0, kStripMm - 2.5);
    if (page.landscape) {
        box = QRectF(frame.left() + 4.0, frame.bottom() - 2.0 * kRowMm - kCautionMm, frame.width() - 8.0, kCautionMm);
    }
    Type type = small;
    const auto heightMm = [&] {
        return lineHeightMm(type) * static_cast<double>(wrapped(page.caution, box.width(), type).size());
    };
    while (type.sizeMm > 2.2 && heightMm() > box.height()) {
        type.sizeMm -= 0.1;
    }
    paintWrapped(painter, box, page.caution, type);
}

}  // namespace

QSizeF sheetSize(bool landscape)
{
    return landscape ? QSizeF(297.0, 210.0) : QSizeF(210.0, 297.0);
}

QRectF frameBox(bool landscape)
{
    const QSizeF sheet = sheetSize(landscape);
    return QRectF(kFilingMm, kEdgeMm, sheet.width() - kFilingMm - kEdgeMm, sheet.height() - 2.0 * kEdgeMm);
}

QRectF contentBox(bool landscape, bool toScale)
{
    const double strip = landscape ? kCautionMm : kStripMm;
    const double below = 2.0 * kRowMm + (toScale ? strip : 0.0);
    return frameBox(landscape).adjusted(0.0, 0.0, 0.0, -below);
}

QLineF checkLine(bool landscape)
{
    const QRectF frame = frameBox(landscape);
    const double y = frame.bottom() - (landscape ? kStripMm : 2.0 * kRowMm + kStripMm) + 6.5;
    return {frame.left() + 4.0, y, frame.left() + 4.0 + kCheckLineMm, y};
}

void paintFrame(QPainter& painter, const SheetPage& page, const TitleBlock& block)
{
    painter.setPen(QPen(Qt::black, 0.7, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(frameBox(page.landscape));
    paintCentringMarks(painter, page.landscape);
    paintTitleBlock(painter, page, block);
    if (page.scaleOf > 0.0) {
        paintScaleStrip(painter, page);
    }
}

}  // namespace yardcast::ui
