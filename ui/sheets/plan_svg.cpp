#include <algorithm>
#include <cmath>
#include <iterator>

#include <QBuffer>
#include <QPainter>
#include <QSaveFile>
#include <QSvgGenerator>

#include "ui/drawing/marks.h"
#include "ui/drawing/mould_section.h"
#include "ui/drawing/overlay_painter.h"
#include "ui/drawing/own_map.h"
#include "ui/drawing/part_painter.h"
#include "ui/drawing/strength_picture.h"
#include "ui/sheets/mould_drawing.h"
#include "ui/sheets/own_drawing.h"
#include "ui/sheets/print_pack.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/sheets/steel_drawing.h"
#include "ui/wording/figures.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/names.h"
#include "ui/wording/steel_names.h"
#include "ui/wording/strength_names.h"

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

struct SvgDrawing {
    ScaledDrawing drawing;
    QString description;
};

/// Drawings that share one frame, one over the other.
ScaledDrawing together(const std::vector<ScaledDrawing>& drawings)
{
    ScaledDrawing whole;
    whole.bounds = [drawings](const PaintStyle& style) {
        QRectF bounds;
        for (const ScaledDrawing& one : drawings) {
            bounds |= one.bounds(style);
        }
        return bounds;
    };
    whole.paint = [drawings](QPainter& painter, const PaintStyle& style) {
        for (const ScaledDrawing& one : drawings) {
            one.paint(painter, style);
        }
    };
    return whole;
}

/// The pieces of a counter with one mark of the front for all.
ScaledDrawing piecesTogether(const std::vector<ScaledDrawing>& drawings)
{
    const ScaledDrawing pieces = together(drawings);
    ScaledDrawing whole;
    whole.bounds = [pieces](const PaintStyle& style) {
        return pieces.bounds(style).adjusted(0.0, 0.0, 0.0, 7.0 * style.mmPerUnit);
    };
    whole.paint = [pieces](QPainter& painter, const PaintStyle& style) {
        pieces.paint(painter, style);
        const QRectF bounds = pieces.bounds(style);
        paintFrontMark(painter, QPointF(bounds.center().x(), bounds.bottom()), style);
    };
    return whole;
}

/// The drawing with sentences above it.
ScaledDrawing captioned(const ScaledDrawing& drawing, const QStringList& sentences)
{
    constexpr double kLine = 5.5;
    const double above = kLine * static_cast<double>(sentences.size()) + 2.0;
    const auto width = [sentences](const PaintStyle& style) {
        double most = 0.0;
        for (const QString& sentence : sentences) {
            most = std::max(most, textSizeMm(sentence, style).width());
        }
        return most;
    };
    ScaledDrawing whole;
    whole.bounds = [drawing, above, width](const PaintStyle& style) {
        QRectF bounds = drawing.bounds(style).adjusted(0.0, -above * style.mmPerUnit, 0.0, 0.0);
        bounds.setWidth(std::max(bounds.width(), width(style) + 4.0 * style.mmPerUnit));
        return bounds;
    };
    whole.paint = [drawing, above, sentences](QPainter& painter, const PaintStyle& style) {
        drawing.paint(painter, style);
        TextLook look;
        look.align = Qt::AlignLeft | Qt::AlignTop;
        const double unit = style.mmPerUnit;
        QPointF at = drawing.bounds(style).topLeft() + QPointF(2.0 * unit, (1.0 - above) * unit);
        for (const QString& sentence : sentences) {
            paintText(painter, at, sentence, style, look);
            at.ry() += kLine * unit;
        }
    };
    return whole;
}

/// One or several pieces of a part; the part itself where there is none.
ScaledDrawing pieceDrawing(const Part& part, const std::vector<ScaledDrawing>& drawings)
{
    if (drawings.empty()) {
        return partDrawing(part);
    }
    return drawings.size() == 1 ? drawings.front() : piecesTogether(drawings);
}

CastingPtr castingOf(const Assessment& assessment, const std::string& id)
{
    const auto found = std::find_if(assessment.castings.begin(), assessment.castings.end(),
                                    [&](const PlacedCasting& one) { return one.casting && one.casting->id == id; });
    return found == assessment.castings.end() ? nullptr : found->casting;
}

/// The plan drawing with something over it.
ScaledDrawing planWith(const Plan& plan, const Assessment& assessment,
                       const std::function<void(QPainter&, const Plan&, const Assessment&, const PaintStyle&)>& over)
{
    const ScaledDrawing base = planDrawing(plan, Measured::no);
    ScaledDrawing drawing;
    drawing.bounds = base.bounds;
    drawing.paint = [base, over, plan, assessment](QPainter& painter, const PaintStyle& style) {
        base.paint(painter, style);
        over(painter, plan, assessment, style);
    };
    return drawing;
}

/// Each piece of mesh and each kind of bar with where it lies.
QStringList steelLines(const CastingSteelLayout& layout, bool counter)
{
    const QString id = QString::fromStdString(layout.casting);
    QStringList lines;
    for (const MeshLayout& mesh : layout.meshes) {
        if (!mesh.pieces.empty()) {
            lines << Sheets::tr("%1, %2: %3, %4 in use.")
                         .arg(id, meshMark(mesh.pieces.front().mark), heightText(mesh.height, layout.datum),
                              steelSideText(mesh.height.side, counter));
        }
    }
    for (const BarListRow& bar : layout.barList) {
        if (const SteelHeight* height = heightOfBar(layout, bar.mark)) {
            lines << Sheets::tr("%1, %2: %3 × Ø%4, %5 long, %6, %7 in use.")
                         .arg(id, barMark(bar.mark), QString::number(bar.count), shortNumberText(bar.diameterMm),
                              lengthText(bar.cutLengthMm), heightText(*height, layout.datum),
                              steelSideText(height->side, counter));
        }
    }
    return lines;
}

SvgDrawing steelSvg(const Plan& plan, const Assessment& assessment, const Part* part)
{
    QStringList said{Sheets::tr("Steel, as it stands, seen from above.")};
    std::vector<ScaledDrawing> drawings;
    bool faceDown = false;
    bool proposed = false;
    std::vector<CastingSteelLayoutPtr> layouts;
    std::copy_if(assessment.steel.layouts.begin(), assessment.steel.layouts.end(), std::back_inserter(layouts),
                 [&](const CastingSteelLayoutPtr& one) { return !part || one->part == part->id; });
    for (const CastingSteelLayoutPtr& shared : layouts) {
        const CastingSteelLayout& layout = *shared;
        faceDown = faceDown || seenOf(layout) == Seen::inTheMould;
        proposed = proposed || !layout.cornerBars.empty();
        const CastingPtr casting = castingOf(assessment, layout.casting);
        if (part && casting) {
            SteelDrawingOptions options;
            options.seen = Seen::asItStands;
            options.front = layouts.size() > 1 ? FrontMark::no : FrontMark::yes;
            drawings.push_back(steelDrawing(*part, casting, layout, options));
            said << steelLines(layout, part->kind() == PartKind::counter);
        }
    }
    if (faceDown) {
        said << Sheets::tr("What is cast face down lies mirrored in its mould: print the sheet Steel for that.");
    }
    if (proposed) {
        said << Sheets::tr("Dashed: proposed, not in the plan.");
    }
    if (part && part->kind() == PartKind::panel) {
        said[0] = Sheets::tr("Steel, as it stands, seen from the front.");
    }
    SvgDrawing svg;
    if (!part) {
        svg.drawing = planWith(plan, assessment, [](QPainter& painter, const Plan& shown, const Assessment& with,
                                                    const PaintStyle& style) {
            paintSteelOverlay(painter, shown, with, Projection::above(), style);
        });
    } else {
        svg.drawing = pieceDrawing(*part, drawings);
    }
    if (part ? drawings.empty() : assessment.steel.layouts.empty()) {
        said = QStringList{part ? Sheets::tr("%1 has no mesh and no bars.").arg(subjectName(&plan, part->id))
                                : Sheets::tr("No casting of this plan has mesh or bars.")};
    }
    svg.drawing = captioned(svg.drawing, said);
    svg.description = said.join(QLatin1Char(' '));
    return svg;
}

QString caseSentence(const Plan& plan, const CastingStrength& strength, const CaseResult& result)
{
    if (!result.holds) {
        return Sheets::tr("%1: %2: it tips, or nothing holds it.")
            .arg(subjectName(&plan, strength.casting), strengthCaseName(result.which).toLower());
    }
    return Sheets::tr("%1: %2, %3, use %4.")
        .arg(subjectName(&plan, strength.casting), strengthCaseName(result.which).toLower(), ageText(result.ageH),
             percentText(result.usePercent));
}

void paintStrengthInPlan(QPainter& painter, const Plan& plan, const Assessment& assessment, const PaintStyle& style)
{
    const Projection above = Projection::above();
    for (const CastingStrengthPtr& strength : assessment.strength) {
        const Part* part = strength ? findPart(plan, strength->part) : nullptr;
        const CaseResult* worst = strength ? strength->worst() : nullptr;
        const CastingPtr casting = strength ? castingOf(assessment, strength->casting) : nullptr;
        if (!part || part->kind() != PartKind::counter || !worst || !casting) {
            continue;
        }
        const OwnMap map = [&](Point own) { return above.map(part->place.toPlan(own)); };
        paintUse(painter, *worst, map, style);
        painter.setPen(outlinePen(style));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(regionPath(casting->outline, map));
        paintUseMarks(painter, *worst, {}, map, style);
    }
}

SvgDrawing strengthSvg(const Plan& plan, const Assessment& assessment, const Part* part)
{
    constexpr std::size_t kMostSections = 9;
    QStringList said{Sheets::tr("Use of strength in percent, each in its worst case; as it stands.")};
    QStringList lettered;
    std::vector<CastingStrengthPtr> shown;
    for (const CastingStrengthPtr& strength : assessment.strength) {
        const Part* own = strength && strength->worst() ? findPart(plan, strength->part) : nullptr;
        if (own && (part ? own->id == part->id : own->kind() == PartKind::counter)) {
            shown.push_back(strength);
        }
    }
    std::vector<ScaledDrawing> drawings;
    for (const CastingStrengthPtr& strength : shown) {
        const CaseResult& worst = *strength->worst();
        said << caseSentence(plan, *strength, worst);
        const CastingPtr casting = castingOf(assessment, strength->casting);
        if (!part || !casting) {
            continue;
        }
        // Letters of several pieces would be taken for one another's.
        const bool alone = shown.size() == 1;
        const auto sections = alone ? shownSections(worst, kMostSections) : std::vector<SectionForces>();
        for (std::size_t i = 0; i < sections.size(); ++i) {
            lettered << Sheets::tr("%1: %2, moment %3\u00a0N, force %4\u00a0N/mm, use %5.")
                            .arg(sectionLetter(i), placeText(sections[i].name, part),
                                 numberText(sections[i].meanMomentN, 0), numberText(sections[i].meanForceNMm, 2),
                                 percentText(sections[i].usePercent));
        }
        drawings.push_back(strengthDrawing(*part, casting, worst, sections, alone ? FrontMark::yes : FrontMark::no));
    }
    SvgDrawing svg;
    if (!part) {
        svg.drawing = planWith(plan, assessment, paintStrengthInPlan);
    } else {
        svg.drawing = pieceDrawing(*part, drawings);
    }
    if (said.size() == 1) {
        said = QStringList{Sheets::tr("Nothing here was solved for strength.")};
    } else {
        said << lettered;
        said << Sheets::tr("A careful estimate, no structural design: so thin a slab lies outside the code's scope.");
    }
    svg.drawing = captioned(svg.drawing, said);
    svg.description = said.join(QLatin1Char(' '));
    return svg;
}

/// What somebody bears who lifts the casting, in one sentence.
QString liftSentence(const Plan& plan, const Assessment& assessment, const CastingLift& lift)
{
    const CastingStrength* strength = assessment.strengthOf(lift.casting);
    const auto shares = personLoads(lift.loadsAt(strength ? strength->grips : std::vector<Point>()), lift.crewPeople);
    const QString name = subjectName(&plan, lift.casting);
    if (shares.empty()) {
        return Sheets::tr("%1: %2, %3 people lift up to %4.")
            .arg(name, massText(lift.massKg), QString::number(lift.crewPeople), massText(lift.limitKg));
    }
    return Sheets::tr("%1: %2, %3 people lift up to %4; one of them bears at most %5.")
        .arg(name, massText(lift.massKg), QString::number(lift.crewPeople), massText(lift.limitKg),
             massText(*std::max_element(shares.begin(), shares.end())));
}

SvgDrawing liftSvg(const Plan& plan, const Assessment& assessment, const Part* part)
{
    QStringList said{Sheets::tr("Lifting, as it stands, seen from above: centres of gravity, grips with what each bears, and "
                                "in heavy line the edge a piece is tilted about.")};
    Assessment shown;
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting && (!part || placed.casting->part == part->id)) {
            shown.castings.push_back(placed);
        }
    }
    for (const PlacedCasting& placed : shown.castings) {
        const auto lift = std::find_if(assessment.handling.begin(), assessment.handling.end(),
                                       [&](const CastingLift& one) { return one.casting == placed.casting->id; });
        if (lift == assessment.handling.end()) {
            continue;
        }
        shown.handling.push_back(*lift);
        if (part) {
            said << liftSentence(plan, assessment, *lift);
        }
    }
    shown.strength = assessment.strength;
    if (shown.castings.empty()) {
        said = QStringList{Sheets::tr("There is nothing to lift here.")};
    }
    Plan seen = plan;
    if (part) {
        seen.parts = {std::make_shared<const Part>(*part)};
        seen.site = Site{};
    }
    SvgDrawing svg;
    svg.drawing = planWith(seen, shown, [](QPainter& painter, const Plan& over, const Assessment& with,
                                           const PaintStyle& style) {
        paintLiftOverlay(painter, over, with, Projection::above(), style);
    });
    svg.drawing = captioned(svg.drawing, said);
    svg.description = said.join(QLatin1Char(' '));
    return svg;
}

SvgDrawing mouldSvg(const Plan& plan, const Assessment& assessment, const Part* part)
{
    QStringList said;
    SvgDrawing svg;
    if (!part) {
        said << Sheets::tr("Moulds over the plan as it stands, seen from above. Two triangles of which one mirrors the other: "
                           "built as the mirror image.");
        svg.drawing = planWith(plan, assessment, [](QPainter& painter, const Plan& shown, const Assessment& with,
                                                    const PaintStyle& style) {
            paintMouldOverlay(painter, shown, with, Projection::above(), style);
        });
    } else {
        std::vector<ScaledDrawing> drawings;
        for (const MouldPtr& mould : assessment.moulds) {
            if (mould->part != part->id) continue;
            const std::optional<MouldSubject> subject = mouldSubject(plan, assessment, mould->casting);
            if (!subject) continue;
            drawings.push_back(standingDrawing(*subject));
            drawings.push_back(mouldDrawing(*subject, mouldSectionXMm(*subject)));
            said << Sheets::tr("%1: %2; %3.").arg(QString::fromStdString(mould->casting), mouldViewTitle(*mould).toLower(),
                                                  mouldFaceText(*mould, part->kind()));
            said << mouldCheckSentence(mould->check, part->kind()) << twinTexts(*mould);
        }
        said.removeAll(QString());
        if (drawings.empty()) {
            said << Sheets::tr("%1 has no mould.").arg(subjectName(&plan, part->id));
            drawings.push_back(partDrawing(*part));
        }
        svg.drawing = inARow(drawings);
    }
    svg.drawing = captioned(svg.drawing, said);
    svg.description = said.join(QLatin1Char(' '));
    return svg;
}

SvgDrawing svgOf(const Plan& plan, const Assessment& assessment, const QString& view, const Part* part)
{
    if (view == QLatin1String("steel")) {
        return steelSvg(plan, assessment, part);
    }
    if (view == QLatin1String("mould")) {
        return mouldSvg(plan, assessment, part);
    }
    if (view == QLatin1String("strength")) {
        return strengthSvg(plan, assessment, part);
    }
    if (view == QLatin1String("lift")) {
        return liftSvg(plan, assessment, part);
    }
    return {part ? partDrawing(*part) : planDrawing(plan, Measured::yes), Sheets::tr("From above, as it stands.")};
}

}  // namespace

QStringList svgViews()
{
    return {QStringLiteral("plan"), QStringLiteral("strength"), QStringLiteral("steel"), QStringLiteral("mould"),
            QStringLiteral("lift")};
}

bool writePlanSvg(const QString& path, const Plan& plan, const Assessment& assessment, const QString& view,
                  const QString& partId, QString* error)
{
    if (!svgViews().contains(view)) {
        return fail(error, Sheets::tr("there is no view \"%1\"").arg(view));
    }
    const Part* part = partId.isEmpty() ? nullptr : findPart(plan, partId.toStdString());
    if (!part && !partId.isEmpty()) {
        return fail(error, Sheets::tr("there is no part \"%1\"").arg(partId));
    }
    const QString title = part ? subjectName(&plan, part->id) : QString::fromStdString(plan.title);
    const Projection above = Projection::above();
    const SvgDrawing svgDrawing = svgOf(plan, assessment, view, part);
    const ScaledDrawing& drawing = svgDrawing.drawing;
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
    generator.setDescription(svgDrawing.description + QLatin1Char(' ') +
                             Sheets::tr("True size: one unit is one mm. Figures are mm. Front at the bottom."));
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
