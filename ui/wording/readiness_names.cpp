#include "ui/wording/readiness_names.h"

#include <cmath>

#include "ui/wording/figures.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

/// Nobody lifts in the dark; our choice.
constexpr double kEveningH = 20.0;
constexpr double kMorningH = 6.0;
constexpr double kHoursADay = 24.0;

}  // namespace

QString handlingWayName(HandlingWay way)
{
    switch (way) {
    case HandlingWay::strip: return Words::tr("Out of the mould, flat");
    case HandlingWay::tilt: return Words::tr("Tilted up");
    case HandlingWay::carryFlat: return Words::tr("Carried flat");
    case HandlingWay::carryOnEdge: return Words::tr("Carried on edge");
    }
    return {};
}

QString handledWayText(const std::string& word)
{
    if (word == "strip") return Words::tr("lifted flat off the mould");
    if (word == "tilt") return Words::tr("tilted up");
    if (word == "carry_flat") return Words::tr("carried flat");
    if (word == "carry_on_edge") return Words::tr("carried on edge");
    return QString::fromStdString(word);
}

QString waitText(double h)
{
    if (!std::isfinite(h)) return Words::tr("never");
    const double shown = shownWaitH(h);
    if (shown <= kWholeHoursUpToH) return Words::tr("%1\u00a0h").arg(numberText(shown, 0));
    return Words::tr("%1\u00a0days").arg(shortNumberText(shown / kHoursADay, 1));
}

QString plannedHourText(double h)
{
    if (!(std::isfinite(h) && h > kWholeHoursUpToH)) return Words::tr("%1\u00a0h").arg(shortNumberText(h, 1));
    return Words::tr("%1\u00a0days (%2\u00a0h)").arg(shortNumberText(h / kHoursADay, 1), shortNumberText(h, 1));
}

QString curingDaysText(double days)
{
    if (!std::isfinite(days)) return Words::tr("no end in these days");
    const double halves = std::ceil(days * 2 - 1e-6) / 2;
    return halves == 1.0 ? Words::tr("1\u00a0day") : Words::tr("%1\u00a0days").arg(shortNumberText(halves, 1));
}

bool isNight(double hourOfDay)
{
    const double ofDay = hourOfDay - kHoursADay * std::floor(hourOfDay / kHoursADay);
    return ofDay >= kEveningH || ofDay < kMorningH;
}

QString byDayText(double h, double startH)
{
    if (!std::isfinite(h) || !isNight(h + startH)) return {};
    const double toMorning = std::fmod(kMorningH + 2 * kHoursADay - std::fmod(h + startH, kHoursADay), kHoursADay);
    return Words::tr("that is at night: lift it by daylight, %1").arg(clockText(h + toMorning, startH));
}

QString clockText(double h, double startH)
{
    // To the next quarter of an hour: nobody lifts by the minute, and none of it is earlier than it was found.
    const double quarters = std::ceil((h + startH) * 4 - 1e-6);
    const int day = 1 + static_cast<int>(std::floor(quarters / 4 / kHoursADay));
    const int ofDay = static_cast<int>(quarters) - (day - 1) * 96;
    return Words::tr("day %1, %2:%3")
        .arg(day)
        .arg(ofDay / 4)
        .arg(ofDay % 4 * 15, 2, 10, QLatin1Char('0'));
}

QString bearsFromText(const FindingValues& values)
{
    if (numberAt(values, "never")) return Words::tr(" It does not bear that at any age: waiting does not help.");
    const auto likely = numberAt(values, "likely_h");
    const auto cautious = numberAt(values, "cautious_h");
    if (!likely || !cautious) return {};
    return Words::tr(" It is likely to bear that from %1 on, and with the safety kept from %2 on.")
        .arg(waitText(*likely), waitText(*cautious));
}

QString tooEarlyText(const FindingValues& values)
{
    const QString cautious = waitText(numberAt(values, "cautious_h").value_or(HUGE_VAL));
    if (numberAt(values, "by_compression") == 1.0) {
        return Words::tr("The mould should stay on for %1, until %2\u00a0MPa can be counted on; on the mean the concrete has "
                         "them from %3 on.")
            .arg(cautious, shortNumberText(numberAt(values, "strip_mpa").value_or(0.0), 1),
                 waitText(numberAt(values, "likely_h").value_or(HUGE_VAL)));
    }
    return Words::tr("When it is %1 it is likely to hold from %2 on, and with the safety kept from %3 on.")
        .arg(handledWayText(wordAt(values, "way")), waitText(numberAt(values, "likely_h").value_or(HUGE_VAL)), cautious);
}

QString monthName(int month)
{
    switch (month) {
    case 1: return Words::tr("January");
    case 2: return Words::tr("February");
    case 3: return Words::tr("March");
    case 4: return Words::tr("April");
    case 5: return Words::tr("May");
    case 6: return Words::tr("June");
    case 7: return Words::tr("July");
    case 8: return Words::tr("August");
    case 9: return Words::tr("September");
    case 10: return Words::tr("October");
    case 11: return Words::tr("November");
    case 12: return Words::tr("December");
    }
    return QString::number(month);
}

}  // namespace yardcast::ui
