#include "ui/wording/pour_names.h"

#include <algorithm>
#include <cmath>

#include "ui/wording/figures.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr double kNoise = 1e-9;
constexpr double kSure95 = 1.96;

}  // namespace

QString minutesText(double minutes) { return shortNumberText(minutes, 0) + QChar(0x00A0) + Words::tr("min"); }

QString chanceText(double chance, int plays)
{
    const double open = plays > 0 ? std::ceil(3000.0 / plays) / 10 : 100.0;
    if (chance * plays < 0.5) return Words::tr("under %1").arg(shortNumberText(open, 1) + QStringLiteral("\u00A0%"));
    if ((1 - chance) * plays < 0.5) {
        return Words::tr("over %1").arg(shortNumberText(std::max(0.0, 100 - open), 1) + QStringLiteral("\u00A0%"));
    }
    return percentText(chance * 100, chance < 0.0095 ? 1 : 0);
}

QString chanceSpreadText(const CastingChance& chance)
{
    const double low = std::max(0.0, chance.chance - kSure95 * chance.error) * 100;
    const double high = std::min(1.0, chance.chance + kSure95 * chance.error) * 100;
    const int decimals = high < 2.0 ? 1 : 0;
    return Words::tr("between %1 and %2").arg(numberText(low, decimals), percentText(high, decimals));
}

QString layerName(LayerKind kind)
{
    switch (kind) {
    case LayerKind::first: return Words::tr("First layer");
    case LayerKind::steel: return Words::tr("Steel");
    case LayerKind::second: return Words::tr("Second layer");
    case LayerKind::filler: return Words::tr("Foam");
    case LayerKind::rim: return Words::tr("Beside the foam: rim, ribs, edges");
    case LayerKind::whole: return Words::tr("All of it");
    }
    return {};
}

QString batchesText(double first, double last)
{
    const int from = static_cast<int>(std::floor(first + kNoise)) + 1;
    const int to = std::max(from, static_cast<int>(std::ceil(last - kNoise)));
    if (from == to) {
        return last - first > 1 - 1e-6 ? Words::tr("batch %1").arg(from) : Words::tr("part of batch %1").arg(from);
    }
    return to == from + 1 ? Words::tr("batches %1 and %2").arg(from).arg(to)
                          : Words::tr("batches %1 to %2").arg(from).arg(to);
}

QString changeName(const TriedChange& tried)
{
    const QString number = shortNumberText(tried.value, 1);
    switch (tried.change) {
    case PlayChange::none: return Words::tr("As it is");
    case PlayChange::coolerWater: return Words::tr("Water of %1 °C").arg(number);
    case PlayChange::iceWater: return Words::tr("Ice for a fifth of the water: %1 K cooler").arg(number);
    case PlayChange::earlierStart: return Words::tr("Start at %1").arg(clockText(tried.value));
    case PlayChange::splitDays: return Words::tr("Shared out to %1 days").arg(number);
    case PlayChange::otherOrder: return Words::tr("Another order");
    case PlayChange::oneMoreHand: return Words::tr("%1 people").arg(number);
    case PlayChange::largerMixer: return Words::tr("Mixer of %1 l").arg(number);
    }
    return {};
}

}  // namespace yardcast::ui
