#pragma once

#include <string>
#include <vector>

#include <QString>
#include <QStringList>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "core/purchase/later_boards.h"

/// Words about moulds that serve more than once, and boards that become other boards.
namespace yardcast::ui {

/// "C2-1, base: 600 × 400".
QString laterPieceText(const LaterPiece& piece);
/// Of all that it becomes: "C2-1, base: 600 × 400; C2-2, side: ..."
QString laterPiecesText(const std::vector<LaterPiece>& pieces);
/// "Day 5: saw the old base C1-1 of C1 to C2-1, base: 600 × 400; ..."
QString laterCutText(const LaterCut& cut);

/// What whoever stands at the mould of a casting has to know: which castings come out of it and on which days of the
/// pour plan, what its base can become afterwards, which of its boards can come out of an old base.
QStringList boardTimeTexts(const Plan& plan, const Assessment& assessment, const LaterBoards& later,
                           const std::string& casting);

}  // namespace yardcast::ui
