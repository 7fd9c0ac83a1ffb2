#include <algorithm>
#include <cmath>

#include <QBuffer>
#include <QPainter>
#include <QSaveFile>
#include <QSvgGenerator>

#include "ui/drawing/part_painter.h"
#include "ui/sheets/print_pack.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
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

/// Type and lines are made for paper on which the whole is some 250 mm wide.
PaintStyle styleFor(const QRectF& bounds)
{
    PaintStyle style = paperStyle(std::max(2.0, std::max(bounds.width(), bounds.height()) / 250.0));
    style.ink = lightInk();
    style.ink.sheet = Qt::white;
    return style;
}

}  // namespace

bool writePlanSvg(const QString& path, const Plan& plan, const Assessment&, const QString& view,
                  const QString& partId, QString* error)
{
    if (view != QLatin1String("plan")) {
        return fail(error, Sheets::tr("there is no view \"%1\"").arg(view));
    }
    const Part* part = partId.isEmpty() ? nullptr : findPart(plan, partId.toStdString());
    if (!part && !partId.isEmpty()) {
        return fail(error, Sheets::tr("there is no part \"%1\"").arg(partId));
    }
    const QString title = part ? subjectName(&plan, part->id) : QString::fromStdString(plan.title);
    const Projection above = Projection::above();
    const ScaledDrawing drawing = part ? partDrawing(*part) : planDrawing(plan, Measured::yes);
    const PaintStyle style =
        styleFor(part ? partShape(plan, *part, above).boundingRect() : drawingBounds(plan, above));
    // Whole mm, so that width, height and view box are the same.
    QRectF bounds = drawing.bounds(style);
    bounds.setSize(QSizeF(std::ceil(bounds.width()), std::ceil(bounds.height())));

    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setSize(bounds.size().toSize());
    generator.setViewBox(QRectF(QPointF(0.0, 0.0), bounds.size()));
    generator.setTitle(title);
    generator.setDescription(Sheets::tr("From above, as it stands. True size: one unit is one mm. Figures are mm. "
                                        "Front at the bottom."));
    QPainter painter(&generator);
    painter.fillRect(QRectF(QPointF(0.0, 0.0), bounds.size()), Qt::white);
    painter.translate(-bounds.topLeft());
    drawing.paint(painter, style);
    painter.end();

    const QByteArray svg = inTrueSize(buffer.data(), bounds.size().toSize());
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(svg) != svg.size() || !file.commit()) {
        return fail(error, file.errorString());
    }
    return true;
}

}  // namespace yardcast::ui
