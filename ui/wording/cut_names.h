#pragma once

#include <string>

#include <QString>

namespace yardcast::ui {

/// A kind of piece in a saw list ("side", "hold_down", "mesh", "batten"): "side", "hold-down batten"; an unknown one is
/// given back.
QString cutPieceWord(const std::string& what);

/// What is known of the least money: "proven to be the least", or how far above it the price is at most.
QString gapText(double price, double bound, bool proven);

}  // namespace yardcast::ui
