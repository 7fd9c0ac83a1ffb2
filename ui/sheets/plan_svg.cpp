#include <QBuffer>
#include <QCoreApplication>
#include <QPainter>
#include <QSaveFile>
#include <QSvgGenerator>

#include "ui/drawing/dimension_painter.h"
#include "ui/drawing/part_painter.h"
#include "ui/sheets/print_pack.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

bool fail(QString* error, const QString& text)
{
    if (error) {
        *error = text;
    }
    return false;
}

/// The generator states the size by whole dots an inch; here it is stated in mm, as the view box counts.
QByteArray inTrueSize(QByteArray svg, QSize sizeMm)
{
    const qsizetype from = svg.indexOf("width=\"");
    const qsizetype to = svg.indexOf("viewBox", from);
    if (from >= 0 && to > from) {
        svg.replace(from, to - from,
                    QStringLiteral("width=\"%1mm\" height=\"%2mm\" ")
                        .arg(sizeMm.width())
                        .arg(sizeMm.height())
                        .toLatin1());
    }
    return svg;
}

/// Type and lines are made for paper at this many mm of the plan a mm of paper: readable when the whole is shown.
double typeScale(const QRectF& bounds)
{
    return std::max(2.0, std::max(bounds.width(), bounds.height()) / 250.0);
}

}  // namespace

bool writePlanSvg(const QString& path, const Plan& whole, const Assessment&, const QString& view,
                  const QString& partId, QString* error)
{
    if (view != QLatin1String("plan")) {
        return fail(error, QCoreApplication::translate("Sheets", "there is no view \"%1\"").arg(view));
    }
    Plan plan = whole;
    QString title = QString::fromStdString(whole.title);
    if (!partId.isEmpty()) {
        const Part* part = findPart(whole, partId.toStdString());
        if (!part) {
            return fail(error, QCoreApplication::translate("Sheets", "there is no part \"%1\"").arg(partId));
        }
        plan = Plan();
        plan.parts = {std::make_shared<const Part>(*part)};
        title = subjectName(&whole, part->id);
    }
    const Projection above = Projection::above();
    PaintStyle style = paperStyle(typeScale(drawingBounds(plan, above)));
    style.ink = lightInk();
    style.ink.sheet = Qt::white;
    std::vector<Dimension> dimensions =
        partId.isEmpty() ? drawingDimensions(plan, above) : sheetDimensions(plan, *plan.parts.front(), above);
    staggerFigures(dimensions, style);
    QRectF bounds = drawingBounds(plan, above);
    for (const Dimension& dimension : dimensions) {
        bounds |= dimensionBounds(dimension, style);
    }
    const double air = 5.0 * style.mmPerUnit;
    bounds = bounds.adjusted(-air, -air, air, 2.0 * air);
    // Whole mm, so that width, height and view box are the same.
    bounds.setSize(QSizeF(std::ceil(bounds.width()), std::ceil(bounds.height())));

    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setSize(bounds.size().toSize());
    generator.setViewBox(QRectF(QPointF(0.0, 0.0), bounds.size()));
    generator.setTitle(title);
    generator.setDescription(QCoreApplication::translate(
        "Sheets", "From above, as it stands. True size: one unit is one mm. Figures are mm. Front at the bottom."));
    QPainter painter(&generator);
    painter.fillRect(QRectF(QPointF(0.0, 0.0), bounds.size()), Qt::white);
    painter.translate(-bounds.topLeft());
    paintSite(painter, plan, above, style);
    for (const Part* part : paintOrder(plan, above)) {
        paintPart(painter, plan, *part, above, style);
    }
    for (const Dimension& dimension : dimensions) {
        paintDimension(painter, dimension, style);
    }
    paintFrontMark(painter, QPointF(bounds.center().x(), bounds.bottom() - 1.4 * air), style);
    painter.end();

    const QByteArray svg = inTrueSize(buffer.data(), bounds.size().toSize());
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(svg) != svg.size() || !file.commit()) {
        return fail(error, file.errorString());
    }
    return true;
}

}  // namespace yardcast::ui
