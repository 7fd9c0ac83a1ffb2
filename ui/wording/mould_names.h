#pragma once

#include <string>

#include <array>

#include <QString>
#include <QStringList>

#include "core/castings/casting.h"
#include "core/mould/mould.h"

/// Words about moulds: parts, hands, what one can check standing at one.
namespace yardcast::ui {

/// "base", "side", "former" and so on.
QString mouldPartName(MouldPartKind kind);
QString mouldStuffName(MouldStuff stuff);
/// With what it is about: "side, front", "former of K1".
QString mouldPartText(const MouldPart& part);
/// The number alone: "4" of "C1-4".
QString mouldNumber(const MouldPart& part);
/// Numbers in few signs: "4", "7–9", "4, 6".
QString mouldNumbers(const std::vector<const MouldPart*>& parts);
/// Of MouldPart::mitreDeg: "ends 45° and 45°", "ends 45° and square"; "45° inner" at an inner corner. Nothing where both
/// ends are square.
QString mitreText(const std::array<double, 2>& mitreDeg);
/// What one does with it, for the list of steps.
QString mouldStepText(const MouldPart& part);

/// "AS IT LIES IN THE MOULD, MIRRORED" or what else it is; in capitals, for the head of a picture.
QString mouldViewTitle(const Mould& mould);
QString standingViewTitle();
/// "face down: you look at its underside".
QString mouldFaceText(const Mould& mould, PartKind kind);
/// Front edge of a counter, foot of an upright.
QString frontEdgeName(PartKind kind);
/// "Stand at the front edge of the mould: the sink is on your right." Nothing where nothing tells left from right.
QString mouldCheckSentence(const MouldCheck& check, PartKind kind);
/// The same as a question for a box to tick.
QString mouldCheckQuestion(const MouldCheck& check, PartKind kind);
/// "mirror twin of C2: not out of this mould"; one line a twin.
QStringList twinTexts(const Mould& mould);

/// Shorter, for over the drawing: "same as C2", "mirror twin of C3".
QStringList twinNames(const Mould& mould);

}  // namespace yardcast::ui
