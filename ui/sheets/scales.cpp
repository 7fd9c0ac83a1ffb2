#include "ui/sheets/scales.h"

namespace yardcast::ui {

const std::vector<int>& reductionScales()
{
    static const std::vector<int> scales{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000};
    return scales;
}

QString scaleText(int of)
{
    return QStringLiteral("1:%1").arg(of);
}

}  // namespace yardcast::ui
