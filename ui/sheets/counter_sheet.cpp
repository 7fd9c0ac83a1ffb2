#include <algorithm>
#include <memory>

#include <QPainter>

#include "ui/drawing/dimension_painter.h"
#include "ui/drawing/marks.h"
#include "ui/sheets/cautions.h"
#include "ui/sheets/counter_section.h"
#include "ui/sheets/handedness.h"
#include "ui/sheets/scales.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr double kNotesMm = 24.0;
constexpr double kSectionMm = 52.0;

QString makeSentence(const Counter& counter)
{
    QStringList said;
    said << Sheets::tr("Field %1").arg(lengthText(counter.thicknessMm));
    if (counter.rim) {
        said << Sheets::tr("rim %1 deep, %2 wide")
                    .arg(lengthText(counter.rim->depthMm), lengthText(counter.rim->widthMm));
    }
    if (counter.filler) {
        said << (counter.filler->stays ? Sheets::tr("foam behind the field, stays in")
                                       : Sheets::tr("foam behind the field, taken out"));
    }
    said << (counter.cast == CounterCast::faceDown ? Sheets::tr("cast face down") : Sheets::tr("cast face up"));
    if (!counter.mix.empty()) {
        said << Sheets::tr("mix %1").arg(QString::fromStdString(counter.mix));
    }
    said << Sheets::tr("face at %1").arg(lengthText(counter.topMm));
    return said.join(QStringLiteral("; ")) + QLatin1Char('.');
}

/// "K1 sink 460 × 410 mm, corners of 20 mm, rim of 50 mm".
QString cutoutSentence(const Counter& counter)
{
    QStringList said;
    for (const Cutout& cutout : counter.cutouts) {
        QString one = QString::fromStdString(cutout.id) + QLatin1Char(' ') + purposeName(cutout.purpose).toLower() +
                      QLatin1Char(' ');
        if (cutout.shape == CutoutShape::circle) {
            one += QChar(0x00D8) + lengthText(cutout.diameterMm);
        } else {
            one += sizeText(cutout.size.width, cutout.size.depth);
            if (cutout.cornerRadiusMm.value_or(0.0) > 0.0) {
                one += Sheets::tr(", corners of %1").arg(lengthText(*cutout.cornerRadiusMm));
            }
        }
        if (cutout.turnDeg.value_or(0.0) != 0.0) {
            one += Sheets::tr(", turned %1 degrees counter-clockwise").arg(shortNumberText(*cutout.turnDeg, 1));
        }
        if (cutout.rimMm.value_or(0.0) > 0.0) {
            one += Sheets::tr(", rim of %1").arg(lengthText(*cutout.rimMm));
        }
        said << one;
    }
    return said.isEmpty() ? QString() : said.join(QStringLiteral("; ")) + QLatin1Char('.');
}

QString massSentence(const Assessment& assessment, const Part& part)
{
    QStringList said;
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting && placed.casting->part == part.id) {
            said << Sheets::tr("%1: %2, %3").arg(QString::fromStdString(placed.casting->id),
                                          massText(placed.casting->massKg), volumeText(placed.casting->volumeL));
        }
    }
    return said.isEmpty() ? QString() : Sheets::tr("To lift and to pour: %1.").arg(said.join(QStringLiteral("; ")));
}

/// A part in its own frame, with its dimensions, the ids of its castings and the marks of the section.
ScaledDrawing slabDrawing(const Part& whole, const std::vector<CastingPtr>& castings, double sectionX,
                          bool withSection)
{
    auto plan = std::make_shared<Plan>();
    auto part = std::make_shared<Part>(whole);
    part->place = {};
    // The title block has the name; on the slab it would stand among the dimensions.
    part->name.reset();
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
        return body(style).adjusted(-2.0 * unit, -7.0 * unit, 2.0 * unit, 13.0 * unit);
    };
    drawing.paint = [plan, part, castings, above, dimensionsAt, body, sectionX,
                     withSection](QPainter& painter, const PaintStyle& style) {
        PaintStyle named = style;
        // Pieces between joints are called by their own ids.
        named.showNames = castings.size() < 2;
        paintPart(painter, *plan, *part, above, named);
        for (const CastingPtr& casting : castings) {
            if (castings.size() > 1) {
                TextLook look;
                look.bold = true;
                look.behind = style.ink.cast;
                const Point centre{casting->centroidMm[0], casting->centroidMm[1]};
                paintText(painter, above.map(centre), QString::fromStdString(casting->id), style, look);
            }
        }
        for (const Dimension& dimension : dimensionsAt(style)) {
            paintDimension(painter, dimension, style);
        }
        const double unit = style.mmPerUnit;
        const QRectF bounds = body(style);
        const QRectF slab = partShape(*plan, *part, above).boundingRect();
        if (const auto* counter = std::get_if<Counter>(&part->body)) {
            painter.setPen(Qt::NoPen);
            painter.setBrush(style.ink.ink);
            painter.drawEllipse(above.map(frontLeftCorner(counter->outline)), 1.6 * unit, 1.6 * unit);
            painter.setBrush(Qt::NoBrush);
        }
        paintFrontMark(painter, QPointF(slab.center().x(), bounds.bottom() + 5.0 * unit), style);
        if (!withSection) {
            return;
        }
        TextLook look;
        look.bold = true;
        // Only the ends of the cut are marked (ISO 128-3), so that no figure is crossed.
        for (const double y : {bounds.top() - 3.0 * unit, bounds.bottom() + 3.0 * unit}) {
            painter.setPen(outlinePen(style));
            painter.drawLine(QPointF(sectionX, y - 2.5 * unit), QPointF(sectionX, y + 2.5 * unit));
            painter.drawLine(QPointF(sectionX, y), QPointF(sectionX - 6.0 * unit, y));
            paintArrowhead(painter, QPointF(sectionX - 8.0 * unit, y), QPointF(-1.0, 0.0), style, style.ink.ink);
            paintText(painter, QPointF(sectionX + 3.0 * unit, y), QStringLiteral("A"), style, look);
        }
    };
    return drawing;
}

}  // namespace

ScaledDrawing partDrawing(const Part& part)
{
    return slabDrawing(part, castingsOf(part), 0.0, false);
}

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
    std::vector<SectionPiece> pieces = sectionPieces(castings, sectionX);
    snapToCircles(pieces, counter, sectionX);
    const ScaledDrawing slab = slabDrawing(part, castings, sectionX, !pieces.empty());
    const double below = pieces.empty() ? 0.0 : kSectionMm;
    const DrawingFit fit = fitOnSheet(slab, kNotesMm, below);

    SheetPage page;
    page.landscape = fit.landscape;
    page.sheet = Sheets::tr("Counter");
    page.part = subjectName(&plan, part.id);
    page.view = Sheets::tr("from above, as it stands");
    page.scale = scaleText(fit.scale);
    page.scaleOf = fit.scale;
    page.caution = slabCaution();
    QStringList notes{makeSentence(counter), cutoutSentence(counter), massSentence(assessment, part),
                      handednessSentence(counter), Sheets::tr("The black dot is the front left corner.")};
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
                   {Sheets::tr("Section A–A, %1, cut concrete hatched").arg(scaleText(own))}, title);
        paintInBox(painter, section, box, own);
    };
    return page;
}

}  // namespace yardcast::ui
