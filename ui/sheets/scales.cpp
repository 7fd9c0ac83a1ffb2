#include "ui/sheets/scales.h"

namespace yardcast::ui {

const std::vector<int>& reductionScales()
{
    static const std::vector<int> scales = [] {
        std::vector<int> all;
        for (int decade = 1; decade <= 100'000'000; decade *= 10) {
            all.insert(all.end(), {decade, 2 * decade, 5 * decade});
        }
        return all;
    }();
    return scales;
}

QString scaleText(int of)
{
    return QStringLiteral("1:%1").arg(of);
}

}  // namespace yardcast::ui
