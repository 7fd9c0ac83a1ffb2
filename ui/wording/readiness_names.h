#pragma once

#include <QString>

#include "core/plan/finding.h"
#include "core/readiness/earliest_hours.h"

/// Hours after the pour and what may be done from them on, in words.
namespace yardcast::ui {

/// "Out of the mould", "Tilted up", "Carried flat", "Carried on edge".
QString handlingWayName(HandlingWay way);
/// What is done to it, by the word of a way: "lifted off flat", "tilted up".
QString handledWayText(const std::string& word);
/// Whole hours, rounded up: an hour is no earlier than it is. "31 h"; from four days on "5.5 days"; "never".
QString waitText(double h);
/// Day and hour of the clock, where the pour was begun at `startH` on day 1: "day 2, 15:00".
QString clockText(double h, double startH);
/// From when on a casting bears what a finding of strength says it cracks by; empty where that is not known.
QString bearsFromText(const FindingValues& values);
/// Why the plan's hour is too early.
QString tooEarlyText(const FindingValues& values);
/// "January" ... by its number.
QString monthName(int month);

}  // namespace yardcast::ui
