#include <algorithm>
#include <memory>

#include <QCoreApplication>
#include <QPainter>

#include "ui/drawing/dimension_painter.h"
#include "ui/drawing/marks.h"
#include "ui/sheets/cautions.h"
#include "ui/sheets/counter_section.h"
#include "ui/sheets/scales.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr double kNotesMm = 24.0;
constexpr double kSectionMm = 46.0;

QString say(const char* text)
{
    return QCoreApplication::translate("Sheets", text);
}

/// A sentence one can check at the slab: where its largest cutout lies for one who stands at the front edge.
QString handednessSentence(const Counter& counter)
{
    const Cutout* largest = nullptr;
    double most = 0.0;
    for (const Cutout& cutout : counter.cutouts) {
        const double area = std::fabs(signedArea(cutoutRing(cutout)));
        if (area > most) {
            most = area;
            largest = &cutout;
        }
    }
    const std::optional<Box> box = boundsOf(counter.outline);
    if (!largest || !box) {
        return {};
    }
    const double aside = largest->centre.x - box->centre().x;
    const QString name = purposeName(largest->purpose).toLower();
    if (std::fabs(aside) < 5.0) {
        return say("Stand at the front edge: the %1 is in the middle.").arg(name);
    }
    return (aside < 0.0 ? say("Stand at the front edge: the %1 is on your left.")
                        : say("Stand at the front edge: the %1 is on your right."))
        .arg(name);
}

QString makeSentence(const Counter& counter)
{
    QStringList said;
    said << say("Field %1").arg(lengthText(counter.thicknessMm));
    if (counter.rim) {
        said << say("rim %1 deep, %2 wide").arg(lengthText(counter.rim->depthMm), lengthText(counter.rim->widthMm));
    }
    if (counter.filler) {
        said << (counter.filler->stays ? say("foam behind the field, stays in") : say("foam behind the field, taken out"));
    }
    said << (counter.cast == CounterCast::faceDown ? say("cast face down") : say("cast face up"));
    if (!counter.mix.empty()) {
        said << say("mix %1").arg(QString::fromStdString(counter.mix));
    }
    said << say("face at %1").arg(lengthText(counter.topMm));
    return said.join(QStringLiteral("; ")) + QLatin1Char('.');
}

QString massSentence(const Assessment& assessment, const Part& part)
{
    QStringList said;
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting && placed.casting->part == part.id) {
            said << say("%1: %2, %3").arg(QString::fromStdString(placed.casting->id),
                                          massText(placed.casting->massKg), volumeText(placed.casting->volumeL));
        }
    }
    return said.isEmpty() ? QString() : say("To lift and to pour: %1.").arg(said.join(QStringLiteral("; ")));
}

/// The slab in its own frame, with its dimensions and the line of the section.
ScaledDrawing slabDrawing(const Part& whole, double sectionX, bool withSection)
{
    auto plan = std::make_shared<Plan>();
    auto part = std::make_shared<Part>(whole);
    part->place = {};
    plan->parts = {part};
    const Projection above = Projection::above();
    const auto dimensionsAt = [plan, part, above](const PaintStyle& style) {
        std::vector<Dimension> dimensions = sheetDimensions(*plan, *part, above);
        staggerFigures(dimensions, style);
        return dimensions;
    };
    const auto body = [plan, part, above, dimensionsAt](const PaintStyle& style) {
        QRectF bounds = partShape(*plan, *part, above).boundingRect();
        for (const Dimension& dimension : dimensionsAt(style)) {
            bounds |= dimensionBounds(dimension, style);
        }
        return bounds;
    };
    ScaledDrawing drawing;
    drawing.bounds = [body](const PaintStyle& style) {
        const double unit = style.mmPerUnit;
        return body(style).adjusted(-2.0 * unit, -8.0 * unit, 2.0 * unit, 14.0 * unit);
    };
    drawing.paint = [plan, part, above, dimensionsAt, body, sectionX, withSection](QPainter& painter,
                                                                                   const PaintStyle& style) {
        paintPart(painter, *plan, *part, above, style);
        for (const Dimension& dimension : dimensionsAt(style)) {
            paintDimension(painter, dimension, style);
        }
        const double unit = style.mmPerUnit;
        const QRectF bounds = body(style);
        // The marked corner: front left, where the own frame begins.
        const QRectF slab = partShape(*plan, *part, above).boundingRect();
        painter.setPen(Qt::NoPen);
        painter.setBrush(style.ink.ink);
        painter.drawEllipse(QPointF(slab.left(), slab.bottom()), 1.6 * unit, 1.6 * unit);
        painter.setBrush(Qt::NoBrush);
        paintFrontMark(painter, QPointF(slab.center().x(), bounds.bottom() + 5.0 * unit), style);
        if (!withSection) {
            return;
        }
        painter.setPen(centrePen(style, style.ink.ink));
        painter.drawLine(QPointF(sectionX, bounds.top() - 1.0 * unit), QPointF(sectionX, bounds.bottom() + 1.0 * unit));
        TextLook look;
        look.bold = true;
        for (const double y : {bounds.top() - 4.0 * unit, bounds.bottom() + 3.0 * unit}) {
            painter.setPen(outlinePen(style));
            painter.drawLine(QPointF(sectionX, y), QPointF(sectionX - 6.0 * unit, y));
            paintArrowhead(painter, QPointF(sectionX - 8.0 * unit, y), QPointF(-1.0, 0.0), style, style.ink.ink);
            paintText(painter, QPointF(sectionX + 3.0 * unit, y), QStringLiteral("A"), style, look);
        }
    };
    return drawing;
}

}  // namespace

SheetPage counterPage(const Plan& plan, const Assessment& assessment, const Part& part)
{
    const auto& counter = std::get<Counter>(part.body);
    std::vector<CastingPtr> castings;
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting && placed.casting->part == part.id) {
            castings.push_back(placed.casting);
        }
    }
    const double sectionX = sectionXMm(counter);
    const std::vector<SectionPiece> pieces = sectionPieces(castings, sectionX);
    const ScaledDrawing slab = slabDrawing(part, sectionX, !pieces.empty());
    const double below = pieces.empty() ? 0.0 : kSectionMm;
    const DrawingFit fit = fitOnSheet(slab, kNotesMm, below);

    SheetPage page;
    page.landscape = fit.landscape;
    page.sheet = say("Counter");
    page.part = subjectName(&plan, part.id);
    page.view = say("from above, as it stands");
    page.scale = scaleText(fit.scale);
    page.scaleOf = fit.scale;
    page.caution = drawingCaution(plan);
    QStringList notes{makeSentence(counter), massSentence(assessment, part), handednessSentence(counter),
                      say("The black dot is the front left corner.")};
    notes.removeAll(QString());
    page.paint = [slab, pieces, below, scale = fit.scale, notes](QPainter& painter, const QRectF& area) {
        Type type;
        const QRectF top(area.left() + 3.0, area.top() + 2.0, area.width() - 6.0, kNotesMm - 3.0);
        QStringList lines;
        for (type.sizeMm = kBodyType; type.sizeMm > 2.4; type.sizeMm -= 0.2) {
            lines = wrapped(notes.join(QLatin1Char(' ')), top.width(), type);
            if (lineHeightMm(type) * static_cast<double>(lines.size()) <= top.height()) {
                break;
            }
        }
        paintLines(painter, top, lines, type);
        paintInBox(painter, slab, area.adjusted(0.0, kNotesMm, 0.0, -below), scale);
        if (pieces.empty()) {
            return;
        }
        const QRectF strip(area.left(), area.bottom() - below, area.width(), below);
        const QRectF box = strip.adjusted(3.0, 7.0, -3.0, 0.0);
        const ScaledDrawing section = sectionDrawing(pieces);
        const int own = fitInBox(section, box.size());
        painter.setPen(QPen(Qt::black, 0.25));
        painter.drawLine(strip.topLeft(), strip.topRight());
        Type title;
        title.bold = true;
        title.sizeMm = kBodyType;
        paintLines(painter, strip.adjusted(3.0, 1.2, -3.0, 0.0),
                   {say("Section A–A, %1, cut concrete hatched").arg(scaleText(own))}, title);
        paintInBox(painter, section, box, own);
    };
    return page;
}

}  // namespace yardcast::ui
