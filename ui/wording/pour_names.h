#pragma once

#include <QString>

#include "core/pour/pour_play.h"

/// Words for what a pour is planned with.
namespace yardcast::ui {

/// Whole minutes: "12 min".
QString minutesText(double minutes);
/// "23 %", under one percent "0.4 %"; where no play in so many had it "under 0.2 %" (with 95 % certainty: three in so
/// many), and likewise "over 99.8 %".
QString chanceText(double chance, int plays);
/// "between 20 and 26 %": what the count of plays leaves open, 95 %.
QString chanceSpreadText(const CastingChance& chance);
/// "First layer", "Steel", "Foam" ...
QString layerName(LayerKind kind);
/// Batches counted from 0: "batch 1", "batches 2 to 4", "part of batch 3".
QString batchesText(double first, double last);
/// "Water of 5 °C", "Start at 06:00" ...
QString changeName(const TriedChange& tried);

}  // namespace yardcast::ui
