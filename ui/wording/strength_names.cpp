#include "ui/wording/strength_names.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>

#include "core/materials/gravity.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

QString cutoutText(const std::string& id, const Part* part)
{
    const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
    const QString name = QString::fromStdString(id);
    if (!counter) return name;
    const auto cutout = std::find_if(counter->cutouts.begin(), counter->cutouts.end(),
                                     [&](const Cutout& one) { return one.id == id; });
    if (cutout == counter->cutouts.end()) return name;
    return purposeName(cutout->purpose).toLower() + QChar(0x00A0) + name;
}

}  // namespace

QString strengthCaseName(StrengthCase which)
{
    switch (which) {
    case StrengthCase::ownWeight: return Words::tr("In place, own weight");
    case StrengthCase::inPlace: return Words::tr("In use with loads");
    case StrengthCase::suction: return Words::tr("Breaking loose from the mould");
    case StrengthCase::tilt: return Words::tr("Tilted up about an edge");
    case StrengthCase::carriedFlat: return Words::tr("Carried flat");
    case StrengthCase::carriedOnEdge: return Words::tr("Carried on edge");
    case StrengthCase::setDown: return Words::tr("Set down on two rests");
    case StrengthCase::cornerLate: return Words::tr("One corner let down late");
    case StrengthCase::standing: return Words::tr("Standing on its pads");
    }
    return {};
}

QString ageText(double hours)
{
    constexpr double kHoursADay = 24.0;
    const double days = hours / kHoursADay;
    if (hours >= 5.0 * kHoursADay && std::abs(days - std::round(days)) < 0.05) {
        return Words::tr("at %1 days").arg(shortNumberText(std::round(days)));
    }
    return Words::tr("at %1\u00a0h").arg(shortNumberText(hours, 1));
}

QString placeText(const PlaceName& place, const Part* part)
{
    const QString cutout = cutoutText(place.a, part);
    const QString a = QString::fromStdString(place.a);
    switch (place.kind) {
    case PlaceKind::stripInFront: return Words::tr("strip in front of %1").arg(cutout);
    case PlaceKind::stripBehind: return Words::tr("strip behind %1").arg(cutout);
    case PlaceKind::stripLeft: return Words::tr("strip left of %1").arg(cutout);
    case PlaceKind::stripRight: return Words::tr("strip right of %1").arg(cutout);
    case PlaceKind::middleOfSpan:
        return Words::tr("middle of span %1–%2").arg(a, QString::fromStdString(place.b));
    case PlaceKind::over: return Words::tr("over %1").arg(a);
    case PlaceKind::overhang: return Words::tr("overhang beyond %1").arg(a);
    case PlaceKind::corner:
        return place.a.empty() ? Words::tr("inner corner of the outline") : Words::tr("corner of %1").arg(cutout);
    case PlaceKind::field: return Words::tr("field");
    case PlaceKind::rim: return Words::tr("rim");
    case PlaceKind::body: return Words::tr("body");
    }
    return {};
}

QString heldText(const std::string& under)
{
    const auto numbered = [&](std::string_view word) -> std::optional<QString> {
        if (under.size() <= word.size() || under.compare(0, word.size(), word) != 0) return std::nullopt;
        return QString::fromStdString(under.substr(word.size()));
    };
    if (const auto number = numbered("hand ")) return Words::tr("hand %1").arg(*number);
    if (const auto number = numbered("batten ")) return Words::tr("batten %1").arg(*number);
    if (const auto number = numbered("corner ")) return Words::tr("corner %1").arg(*number);
    if (const auto number = numbered("pad ")) return Words::tr("pad %1").arg(*number);
    if (under == "late corner") return Words::tr("late corner");
    if (under == "edge") return Words::tr("edge");
    return QString::fromStdString(under);
}

QString heldForceText(double newton)
{
    const double kg = std::abs(newton) / kGravityMS2;
    return kg > 0.0 && kg < 0.5 ? Words::tr("under 1\u00a0kg") : Words::tr("%1\u00a0kg").arg(numberText(kg, 0));
}

QString sideText(bool onFace)
{
    return onFace ? Words::tr("face") : Words::tr("underside");
}

}  // namespace yardcast::ui
