#pragma once

#include <optional>

#include <QString>
#include <QStringList>

#include "core/pour/mixing_card.h"

/// Words for what goes into the mixer.
namespace yardcast::ui {

/// "Water, first portion", "Fibres PP", "Extra cement" (of a bag mix).
QString stepName(const CardStep& step, bool perBag);
/// What goes on a scale: below 1 kg in g ("125 g"), else in kg ("3.25 kg"). The one rule for everything that is weighed.
QString weighedText(double kg);
/// What goes into a jug or bucket: below 1 l in ml ("119 ml"), else in l ("6.24 l").
QString measuredText(double litres);
/// "3 bags and 14.8 kg", "6.24 l", "125 g", "119 ml (127 g)".
QString stepAmountText(const CardStep& step);
/// "3 bags" or "2.59 bags".
QString bagsText(double bags);
/// "2 × 37.7 l and 1 × 32.5 l".
QString batchesText(const MixingCard& card);
/// "Full batch", "Each batch", "Last but one", "Last batch", "The one batch"; `batch` is one of the card's.
QString batchName(const MixingCard& card, const BatchCard& batch);
/// Why the last batches are no full ones and a rest; empty where they are.
QString sharedBatchesText(const MixingCard& card);
/// Which water goes into the bucket, and what is in the mix besides it, for a bag or a m³.
QString waterText(const MixingCard& card);
/// "Water to cement, XC4".
/// The same without what sets it: "Strength class".
QString limitKindName(LimitCheck::What what);
/// Those that are not met, by what they limit: "strength class (XC4, XF3); air (XF3)"; empty where all are.
QString missedText(const MixCheck& check);
QString limitName(const LimitCheck& row);
/// "0.44, at most 0.50"; what is not known as "not stated".
QString limitText(const LimitCheck& row);
/// "met", "not met", "not known".
QString metText(const std::optional<bool>& met);
/// "10 bags give 118 to 128 l"; empty by a recipe.
QString spreadText(const MixQuantities& quantities);

}  // namespace yardcast::ui
