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
/// Rounded up as `shownWaitH` does, everywhere but in JSON: "31 h"; past two days "5.5 days"; "never".
QString waitText(double h);
/// An hour that the plan itself states, as typed: "40 h", "2.5 days (60 h)".
QString plannedHourText(double h);
/// Up to the next half day: "2.5 days".
QString curingDaysText(double days);
/// Between 20:00 and 06:00.
bool isNight(double hourOfDay);
/// Where an hour after a pour that begins at `startH` falls into the night, the morning to wait for; else empty.
QString byDayText(double h, double startH);
/// Day and hour of the clock, where the pour was begun at `startH` on day 1: "day 2, 15:00".
QString clockText(double h, double startH);
/// From when on a casting bears what a finding of strength says it cracks by; empty where that is not known.
QString bearsFromText(const FindingValues& values);
/// Why the plan's hour is too early.
QString tooEarlyText(const FindingValues& values);
/// "January" ... by its number.
QString monthName(int month);

}  // namespace yardcast::ui
