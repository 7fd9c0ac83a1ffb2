#include "ui/look/use_ramp.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "ui/look/ink.h"

namespace yardcast::ui {

namespace {

constexpr int kSteps = 256;
constexpr double kPaleLightness = 0.945;
constexpr double kDarkLightness = 0.285;

double encoded(double linear)
{
    const double value = std::clamp(linear, 0.0, 1.0);
    return value <= 0.0031308 ? 12.92 * value : 1.055 * std::pow(value, 1.0 / 2.4) - 0.055;
}

/// Oklab (B. Ottosson, 2020; coefficients from memory) to sRGB.
QColor fromOklab(double lightness, double a, double b)
{
    const double l = std::pow(lightness + 0.3963377774 * a + 0.2158037573 * b, 3.0);
    const double m = std::pow(lightness - 0.1055613458 * a - 0.0638541728 * b, 3.0);
    const double s = std::pow(lightness - 0.0894841775 * a - 1.2914855480 * b, 3.0);
    const double red = 4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s;
    const double green = -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s;
    const double blue = -0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s;
    return QColor::fromRgbF(float(encoded(red)), float(encoded(green)), float(encoded(blue)));
}

/// Pale straw over clay to aubergine: lightness falls evenly, the hue only helps.
QColor made(double share)
{
    const double lightness = kPaleLightness + (kDarkLightness - kPaleLightness) * share;
    const double hue = (98.0 - 118.0 * share) * std::numbers::pi / 180.0;
    const double chroma = 0.045 + 0.30 * share * (1.0 - share) + 0.035 * share;
    return fromOklab(lightness, chroma * std::cos(hue), chroma * std::sin(hue));
}

const std::array<QColor, kSteps>& table()
{
    static const std::array<QColor, kSteps> colours = [] {
        std::array<QColor, kSteps> all;
        for (int i = 0; i < kSteps; ++i) all[std::size_t(i)] = made(double(i) / (kSteps - 1));
        return all;
    }();
    return colours;
}

}  // namespace

QColor useColour(double percent)
{
    // What is no number is shown as nothing used: its figure says that it is none.
    const double share = percent > 0.0 ? std::min(percent / 100.0, 1.0) : 0.0;
    return table()[std::size_t(std::lround(share * (kSteps - 1)))];
}

QColor inkOnUse(double percent)
{
    // In the middle of the ramp only the ends of the scale are far enough away.
    static const QColor dark("#050607");
    static const QColor pale(Qt::white);
    const QColor under = useColour(percent);
    return contrastRatio(dark, under) >= contrastRatio(pale, under) ? dark : pale;
}

}  // namespace yardcast::ui
