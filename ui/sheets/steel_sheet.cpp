#include <algorithm>
#include <cmath>
#include <memory>

#include <QPainter>

#include "ui/sheets/cautions.h"
#include "ui/sheets/list_pages.h"
#include "ui/sheets/scales.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/sheets/steel_drawing.h"
#include "ui/sheets/steel_tables.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/steel_names.h"

namespace yardcast::ui {

namespace {

constexpr double kNotesMm = 22.0;
constexpr double kSectionMm = 56.0;
constexpr double kCutPlanMm = 75.0;

SheetPage blank(const Plan& plan, const CastingSteelLayout& layout)
{
    SheetPage page;
    page.sheet = sheetTitle(QStringLiteral("steel"));
    page.part = subjectName(&plan, layout.casting);
    page.caution = Sheets::tr("Cut ends of steel are sharp: gloves and goggles. Cutting and grinding: sparks and dust. Wet "
                              "concrete burns. Home-made slabs are furniture: no standing on overhangs.");
    return page;
}

QString viewText(const CastingSteelLayout& layout)
{
    if (layout.datum == SteelDatum::frontWall) return Sheets::tr("from the front, as it stands in the mould");
    return seenOf(layout) == Seen::inTheMould ? Sheets::tr("from above, AS IT LIES IN THE MOULD (mirrored)")
                                              : Sheets::tr("from above, as it lies in the mould");
}

/// Which way round it is, checked by the marked corner and the largest cutout.
QStringList notesOf(const CastingSteelLayout& layout, const Part& part)
{
    const auto* counter = std::get_if<Counter>(&part.body);
    const bool mirrored = seenOf(layout) == Seen::inTheMould;
    const QString id = QString::fromStdString(layout.casting);
    QStringList notes{Sheets::tr("%1 %2.").arg(id, pourPositionText(layout, counter != nullptr))};
    if (mirrored) {
        notes << Sheets::tr("MIRRORED: what is on the left here is on the right when it stands.");
    }
    if (counter) {
        notes << handednessSentence(*counter, mirrored ? Seen::inTheMould : Seen::asItStands);
        notes << (mirrored ? Sheets::tr("The black dot is the front left corner of the finished slab; here it lies at the "
                                        "front right.")
                           : Sheets::tr("The black dot is the front left corner."));
    } else {
        notes << (mirrored ? Sheets::tr("The black dot is the left end of the foot, seen from the front where it stands; "
                                        "here it lies on the right.")
                           : Sheets::tr("The black dot is the left end of the foot, seen from the front."));
    }
    if (!layout.cornerBars.empty()) notes << Sheets::tr("Dashed bars are proposed; the plan does not have them.");
    notes.removeAll(QString());
    return notes;
}

void paintNotes(QPainter& painter, const QRectF& box, const QStringList& notes)
{
    Type type;
    QStringList lines;
    for (type.sizeMm = kBodyType; type.sizeMm > 2.4; type.sizeMm -= 0.2) {
        lines = wrapped(notes.join(QLatin1Char(' ')), box.width(), type);
        if (lineHeightMm(type) * static_cast<double>(lines.size()) <= box.height()) break;
    }
    paintLines(painter, box, lines, type);
}

SheetPage drawingPage(const Plan& plan, const CastingSteelLayout& layout, const Part& part, const CastingPtr& casting)
{
    SteelDrawingOptions options;
    options.seen = seenOf(layout);
    options.withSection = true;
    options.sectionXMm = steelSectionXMm(*casting, layout);
    const ScaledDrawing drawing = steelDrawing(part, casting, layout, options);
    const ScaledDrawing section = steelSection(casting, layout, options.sectionXMm);
    const DrawingFit fit = fitOnSheet(drawing, kNotesMm, kSectionMm);
    SheetPage page = blank(plan, layout);
    page.landscape = fit.landscape;
    page.view = viewText(layout);
    page.scale = scaleText(fit.scale);
    page.scaleOf = fit.scale;
    page.paint = [drawing, section, fit, notes = notesOf(layout, part)](QPainter& painter, const QRectF& area) {
        paintNotes(painter, QRectF(area.left() + 3.0, area.top() + 2.0, area.width() - 6.0, kNotesMm - 3.0), notes);
        paintInBox(painter, drawing, area.adjusted(0.0, kNotesMm, 0.0, -kSectionMm), fit.scale);
        const QRectF strip(area.left(), area.bottom() - kSectionMm, area.width(), kSectionMm);
        painter.setPen(QPen(Qt::black, 0.25));
        painter.drawLine(strip.topLeft(), strip.topRight());
        const QRectF box = strip.adjusted(3.0, 7.0, -3.0, 0.0);
        const int own = fitInBox(section, box.size());
        paintListTitle(painter, QRectF(strip.left(), strip.top(), strip.width(), kListTitleMm),
                       Sheets::tr("Section A–A as it is poured, %1; heights in mm to the nearest side of the steel")
                           .arg(scaleText(own)));
        paintInBox(painter, section, box, own);
    };
    return page;
}

std::vector<SheetPage> tablePages(const Plan& plan, const CastingSteelLayout& layout, const Part& part,
                                  const CastingPtr& casting, const CastingStrength* strength)
{
    const bool counter = part.kind() == PartKind::counter;
    std::vector<ListBlock> blocks;
    for (const MeshLayout& mesh : layout.meshes) {
        if (mesh.sheets < 1) continue;
        ListBlock block;
        block.drawing = meshCutDrawing(mesh, seenOf(layout));
        block.drawingMm = kCutPlanMm;
        block.title = mesh.sheets == 1 ? Sheets::tr("Cut the mesh from 1 sheet of %1")
                                             .arg(sizeText(mesh.sheet.width, mesh.sheet.depth))
                                       : Sheets::tr("Cut the mesh from %1 sheets of %2")
                                             .arg(mesh.sheets)
                                             .arg(sizeText(mesh.sheet.width, mesh.sheet.depth));
        const bool mirrored = seenOf(layout) == Seen::inTheMould;
        block.title = mirrored ? Sheets::tr("%1, as it lies in the mould (mirrored)").arg(block.title)
                               : Sheets::tr("%1, as it lies in the mould").arg(block.title);
        blocks.push_back(std::move(block));
    }
    const auto add = [&](const QString& title, SheetTable table) {
        if (table.rows.empty()) return;
        ListBlock block;
        block.title = title;
        block.table = std::move(table);
        blocks.push_back(std::move(block));
    };
    add(Sheets::tr("Pieces of mesh"), meshTable(layout, counter));
    add(Sheets::tr("Bars"), barTable(layout, counter));
    add(Sheets::tr("Where the bars lie, measured from the black dot"), barPlaceTable(layout, markedCorner(*casting)));
    add(Sheets::tr("What the steel is worth, at the gravest sections"), steelCheckTable(strength, part));
    SheetPage like = blank(plan, layout);
    return listPages(like, blocks, steelSentences(layout, counter));
}

}  // namespace

std::vector<SheetPage> steelPages(const Plan& plan, const Assessment& assessment)
{
    std::vector<SheetPage> pages;
    for (const CastingSteelLayoutPtr& shared : assessment.steel.layouts) {
        const CastingSteelLayout& layout = *shared;
        const Part* part = findPart(plan, layout.part);
        const auto placed = std::find_if(
            assessment.castings.begin(), assessment.castings.end(),
            [&](const PlacedCasting& one) { return one.casting && one.casting->id == layout.casting; });
        if (!part || placed == assessment.castings.end()) continue;
        pages.push_back(drawingPage(plan, layout, *part, placed->casting));
        std::vector<SheetPage> more =
            tablePages(plan, layout, *part, placed->casting, assessment.strengthOf(layout.casting));
        pages.insert(pages.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    }
    if (pages.empty()) {
        SheetPage page;
        page.sheet = sheetTitle(QStringLiteral("steel"));
        pages.push_back(wordsPage(page, Sheets::tr("No casting of this plan has mesh or bars.")));
    }
    return pages;
}

}  // namespace yardcast::ui
