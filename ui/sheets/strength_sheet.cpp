#include <algorithm>
#include <cmath>
#include <memory>
#include <optional>

#include <QPainter>

#include "ui/drawing/marks.h"
#include "ui/drawing/strength_picture.h"
#include "ui/sheets/cautions.h"
#include "ui/sheets/hold_pages.h"
#include "ui/sheets/list_pages.h"
#include "ui/sheets/own_drawing.h"
#include "ui/sheets/scales.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/sheets/strength_tables.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

constexpr std::size_t kMostSections = 9;

bool isHandled(StrengthCase which)
{
    return which != StrengthCase::ownWeight && which != StrengthCase::inPlace && which != StrengthCase::standing;
}

const CaseResult* worstOf(const CastingStrength& strength, bool handled)
{
    const CaseResult* worst = nullptr;
    for (const CaseResult& result : strength.cases) {
        if (isHandled(result.which) != handled || !result.holds) continue;
        if (!worst || result.usePercent > worst->usePercent) worst = &result;
    }
    return worst;
}

QStringList casesThatTip(const CastingStrength& strength, bool handled)
{
    QStringList names;
    for (const CaseResult& result : strength.cases) {
        if (isHandled(result.which) == handled && !result.holds) names << strengthCaseName(result.which).toLower();
    }
    return names;
}

/// One case drawn, with what its table of sections needs.
struct CaseDrawing {
    const CaseResult* result = nullptr;
    QString title;
    ScaledDrawing drawing;
    SheetTable sections;
    QStringList words;      ///< below the drawing
};

std::optional<CaseDrawing> drawingOf(const CastingStrength& strength, const Part& part, const CastingPtr& casting,
                                     bool handled)
{
    const CaseResult* result = worstOf(strength, handled);
    if (!result) return std::nullopt;
    CaseDrawing made;
    made.result = result;
    const std::vector<SectionForces> sections = shownSections(*result, kMostSections);
    made.sections = sectionTable(sections, part);
    const QString said = Sheets::tr("%1, %2, use %3")
                             .arg(strengthCaseName(result->which).toLower(), ageText(result->ageH),
                                  percentText(result->usePercent));
    const QStringList tips = casesThatTip(strength, handled);
    if (!tips.isEmpty()) {
        made.title = Sheets::tr("IT TIPS: %1. Drawn: %2").arg(tips.join(QStringLiteral(", ")), said);
    } else {
        made.title = (handled ? Sheets::tr("Worst when handled: %1") : Sheets::tr("Worst in place: %1")).arg(said);
    }
    made.words = {strengthLegend(*result, !sections.empty())};
    if (handled) {
        const QString edge = edgeSentence(*result, *casting);
        if (!edge.isEmpty()) made.words.prepend(edge);
        made.words.prepend(massAndAgeText(*casting, strength) + QLatin1Char(' ') +
                           Sheets::tr("Where hands and battens go: next sheets."));
    }
    made.drawing = strengthDrawing(part, casting, *result, sections);
    return made;
}

SheetPage blank(const Plan& plan, const std::string& casting)
{
    SheetPage page;
    page.sheet = sheetTitle(QStringLiteral("strength"));
    page.part = subjectName(&plan, casting);
    page.caution = slabCaution();
    return page;
}

void setScale(SheetPage& page, int scale)
{
    page.scale = scaleText(scale);
    page.scaleOf = scale;
    page.view = Sheets::tr("from above, as it stands");
}

/// One drawing on a sheet of its own, as large as it goes, with its sections below.
SheetPage drawingPage(const Plan& plan, const CastingStrength& strength, const CaseDrawing& one)
{
    const auto tableOn = [&](bool landscape) {
        const double width = contentBox(landscape, true).width();
        return one.sections.scaledTo(std::min(width - 2.0, 1.6 * one.sections.widthMm()));
    };
    const double words = sentencesHeightMm(one.words, contentBox(false, true).width() - 4.0);
    const bool hasTable = !one.sections.rows.empty();
    const double tableMm = hasTable ? std::max(tableOn(false).heightMm(), tableOn(true).heightMm()) : 0.0;
    const double below = tableMm + words + 2.0 * kListGapMm;
    const DrawingFit fit = fitOnSheet(one.drawing, kListTitleMm, below);
    SheetPage page = blank(plan, strength.casting);
    page.landscape = fit.landscape;
    setScale(page, fit.scale);
    page.paint = [one, table = tableOn(fit.landscape), below, fit](QPainter& painter, const QRectF& box) {
        paintListTitle(painter, QRectF(box.left(), box.top(), box.width(), kListTitleMm), one.title);
        paintInBox(painter, one.drawing, box.adjusted(0.0, kListTitleMm, 0.0, -below), fit.scale);
        const double y = box.bottom() - below;
        const double height = table.rows.empty() ? 0.0 : paintTable(painter, QPointF(box.left() + 1.0, y), table);
        paintSentences(painter, QRectF(box.left() + 2.0, y + height + kListGapMm, box.width() - 4.0, 0.0),
                       one.words);
    };
    return page;
}

/// Pieces of which every case is the same share a table.
class AlikeTables {
public:
    void add(const CastingStrength& strength, const QString& name, SheetTable table)
    {
        // More ids would not fit a title.
        constexpr qsizetype kMostAlike = 12;
        const auto alike = std::find_if(entries_.begin(), entries_.end(), [&](const Entry& one) {
            return one.ids.size() < kMostAlike && one.table.rows == table.rows;
        });
        if (alike == entries_.end()) {
            entries_.push_back({{QString::fromStdString(strength.casting)}, name, std::move(table)});
        } else {
            alike->ids << QString::fromStdString(strength.casting);
        }
    }

    std::vector<ListBlock> blocks() const
    {
        std::vector<ListBlock> made;
        for (const Entry& entry : entries_) {
            ListBlock block;
            block.title = entry.ids.size() == 1
                              ? entry.name
                              : Sheets::tr("%1: %2 alike").arg(entry.ids.join(QStringLiteral(", "))).arg(entry.ids.size());
            block.table = entry.table;
            made.push_back(std::move(block));
        }
        return made;
    }

private:
    struct Entry {
        QStringList ids;
        QString name;
        SheetTable table;
    };
    std::vector<Entry> entries_;
};

std::vector<SheetPage> counterPages(const Plan& plan, const CastingStrength& strength, const Part& part,
                                    const CastingPtr& casting)
{
    std::vector<SheetPage> pages;
    for (const bool handled : {false, true}) {
        const std::optional<CaseDrawing> one = drawingOf(strength, part, casting, handled);
        if (one) pages.push_back(drawingPage(plan, strength, *one));
    }
    const std::vector<SheetPage> holds = holdPages(blank(plan, strength.casting), strength, part, casting);
    pages.insert(pages.end(), holds.begin(), holds.end());
    const ListBlock all{Sheets::tr("Every case"), caseTable(strength, part, *casting), {}, 0.0, {}, 0.0};
    const std::vector<SheetPage> list =
        listPages(blank(plan, strength.casting), {all}, strengthSentences(strength, part));
    pages.insert(pages.end(), list.begin(), list.end());
    return pages;
}

}  // namespace

std::vector<SheetPage> strengthPages(const Plan& plan, const Assessment& assessment)
{
    std::vector<SheetPage> pages;
    AlikeTables uprights;
    QStringList unsolved;
    const CastingStrength* anyUpright = nullptr;
    const Part* uprightPart = nullptr;
    for (const CastingStrengthPtr& strength : assessment.strength) {
        const Part* part = strength ? findPart(plan, strength->part) : nullptr;
        const auto placed = std::find_if(
            assessment.castings.begin(), assessment.castings.end(),
            [&](const PlacedCasting& one) { return strength && one.casting && one.casting->id == strength->casting; });
        if (!part || placed == assessment.castings.end()) continue;
        const QString name = subjectName(&plan, strength->casting);
        if (strength->cases.empty()) {
            unsolved << name;
        } else if (part->kind() == PartKind::counter) {
            std::vector<SheetPage> more = counterPages(plan, *strength, *part, placed->casting);
            pages.insert(pages.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
        } else {
            uprights.add(*strength, name, caseTable(*strength, *part, *placed->casting));
            anyUpright = strength.get();
            uprightPart = part;
        }
    }
    SheetPage like;
    like.sheet = sheetTitle(QStringLiteral("strength"));
    if (anyUpright) {
        like.part = Sheets::tr("supports and panels");
        const std::vector<SheetPage> list = listPages(like, uprights.blocks(), strengthSentences(*anyUpright, *uprightPart));
        pages.insert(pages.end(), list.begin(), list.end());
    }
    like.part.clear();
    if (!unsolved.isEmpty()) {
        pages.push_back(wordsPage(like, Sheets::tr("Not solved: %1. The findings say why.")
                                            .arg(unsolved.join(QStringLiteral(", ")))));
    }
    if (pages.empty()) {
        pages.push_back(wordsPage(like, assessment.castings.empty()
                                            ? Sheets::tr("Nothing to solve yet: the plan has no castings.")
                                            : Sheets::tr("The strength of this plan has not been computed.")));
    }
    return pages;
}

}  // namespace yardcast::ui
