#pragma once

#include <string>

#include <QString>

namespace yardcast::ui {

/// A kind of piece in a saw list ("side", "hold_down", "mesh", "batten"): "side", "hold-down batten"; an unknown one is
/// given back.
QString cutPieceWord(const std::string& what);

/// What is known of the least money (minor units): "proven to be the least", or what nothing costs less than.
QString gapText(double boundMinor, bool proven, const std::string& currency);

}  // namespace yardcast::ui
