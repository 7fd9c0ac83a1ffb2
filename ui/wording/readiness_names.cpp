#include "ui/wording/readiness_names.h"

#include <cmath>

#include "ui/wording/figures.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr double kHoursADay = 24.0;
constexpr double kInDaysFromH = 96.0;

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
    if (h < kInDaysFromH) return Words::tr("%1\u00a0h").arg(numberText(std::ceil(h - 0.05), 0));
    return Words::tr("%1\u00a0days").arg(shortNumberText(std::ceil(h / kHoursADay * 10 - 0.05) / 10, 1));
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
        return Words::tr("The mould should stay on for %1, until the concrete has %2\u00a0MPa on the mean.")
            .arg(cautious, shortNumberText(numberAt(values, "strip_mpa").value_or(0.0), 1));
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
