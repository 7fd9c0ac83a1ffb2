#include "ui/wording/board_times.h"

#include <algorithm>
#include <iterator>

#include "core/pour/pour_plan.h"
#include "ui/wording/figures.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

QString plain(double mm) { return shortNumberText(mm, 1); }

QString word(const std::string& text) { return QString::fromStdString(text); }

/// One out of a shared mould after the other, with the day of each where it is poured.
QStringList sharedTexts(const Plan& plan, const Assessment& assessment, const std::string& casting)
{
    const auto places = pourPlaces(assessment.pour);
    for (const SharedMould& shared : mouldingOf(plan).shared) {
        const auto at = std::find(shared.castings.begin(), shared.castings.end(), casting);
        if (at == shared.castings.end() || shared.castings.size() < 2) continue;
        QStringList names;
        for (const std::string& id : shared.castings) {
            const auto place = places.find(id);
            names << (place == places.end() ? word(id)
                                            : Words::tr("%1 (day %2)").arg(word(id)).arg(place->second.calendarDay));
        }
        if (at == shared.castings.begin()) {
            return {Words::tr("Out of this mould come, one after the other: %1. Clean it, mend its silicone and oil it "
                              "again in between; the boards are not bought again.")
                        .arg(names.join(QStringLiteral(", ")))};
        }
        return {Words::tr("Nothing to build: %1 comes out of the mould of %2, in this order: %3.")
                    .arg(word(casting), word(shared.castings.front()), names.join(QStringLiteral(", ")))};
    }
    return {};
}

}  // namespace

QString laterPieceText(const LaterPiece& piece)
{
    return Words::tr("%1, %2: %3 × %4", "number of a board, what it is, its size")
        .arg(word(piece.name), mouldPartName(piece.kind), plain(piece.size.width), plain(piece.size.depth));
}

QString laterPiecesText(const std::vector<LaterPiece>& pieces)
{
    QStringList texts;
    for (const LaterPiece& piece : pieces) texts << laterPieceText(piece);
    return texts.join(QStringLiteral("; "));
}

QString laterCutText(const LaterCut& cut)
{
    return Words::tr("Day %1: saw the old base %2 of %3 to %4.")
        .arg(cut.day)
        .arg(word(cut.board), word(cut.casting), laterPiecesText(cut.pieces));
}

QStringList boardTimeTexts(const Plan& plan, const Assessment& assessment, const LaterBoards& later,
                           const std::string& casting)
{
    QStringList said = sharedTexts(plan, assessment, casting);
    for (const LaterCut& cut : later.cuts) {
        if (cut.casting == casting) {
            said << Words::tr("If you keep the base %1 clean: it is free on day %2 and can be sawn on day %3 to %4. Use only its "
                              "clean part of %5 × %6, %7 from the left and %8 from the front inner side.")
                        .arg(word(cut.board))
                        .arg(cut.freeDay)
                        .arg(cut.day)
                        .arg(laterPiecesText(cut.pieces), plain(cut.clean.width), plain(cut.clean.depth),
                             lengthText(cut.cleanAt.x), lengthText(cut.cleanAt.y));
        }
        std::vector<LaterPiece> here;
        std::copy_if(cut.pieces.begin(), cut.pieces.end(), std::back_inserter(here),
                     [&](const LaterPiece& piece) { return piece.casting == casting; });
        if (here.empty()) continue;
        said << Words::tr("Need not be bought if they are sawn on day %1 out of the old base %2 of %3: %4.")
                    .arg(cut.day)
                    .arg(word(cut.board), word(cut.casting), laterPiecesText(here));
    }
    return said;
}

}  // namespace yardcast::ui
