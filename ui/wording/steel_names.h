#pragma once

#include <string>

#include <QString>

#include "core/plan/plan.h"
#include "core/reinforcement/steel_layout.h"
#include "core/structure/strength.h"

/// Words for how steel is laid.
namespace yardcast::ui {

/// "mesh 1" and "bar 1": they are counted apart, and letters alone would be taken for ids of parts.
QString meshMark(int mark);
QString barMark(int mark);
/// How the bars of a mark lie; null for a mark that is not there.
const SteelHeight* heightOfBar(const CastingSteelLayout& layout, int mark);
/// "25 mm above the mould base" or "25 mm from the front wall of the mould".
QString heightText(const SteelHeight& height, SteelDatum datum);
/// "towards the face", "in the middle: it works either way, but weakly", "towards the underside"; of a panel front and back.
QString steelSideText(SteelSide side, bool counter = true);
/// Shapes of ISO 3766 by their codes in BS 8666: "straight" for 00, the code itself for others.
QString barShapeText(const std::string& code);
/// Whether a section is asked enough for its steel to be worth a word: a tenth of what cracks it.
bool steelMatters(const SteelCheck& check);
/// Asked at least half of what cracks it, and then it breaks without warning or carries less than is asked.
bool steelIsWeak(const SteelCheck& check);
/// What the steel at a section is worth, in sentences: what the cracked section carries against what is asked, where it
/// breaks without warning, where it would be worth more.
QString steelCheckText(const SteelCheck& check);
/// "Fibres are not counted on for strength ..."
QString fibresText();
/// How the casting lies while its steel is laid: "face down on the mould base" and so on.
QString pourPositionText(const CastingSteelLayout& layout, bool counter = true);

}  // namespace yardcast::ui
