#include "ui/look/ink.h"

#include <algorithm>
#include <cmath>

namespace yardcast::ui {

Ink lightInk()
{
    Ink ink;
    ink.dark = false;
    ink.sheet = QColor("#FBFAF5");
    ink.bench = QColor("#E4E1D8");
    ink.card = QColor("#F4F2EB");
    ink.line = QColor("#C9C5B9");
    ink.ink = QColor("#1D2226");
    ink.pencil = QColor("#5C6267");
    ink.grid = QColor("#E6E3DA");
    ink.cast = QColor("#CFCBC1");
    ink.castDots = QColor("#A9A498");
    ink.timber = QColor("#C79A6B");
    ink.foam = QColor("#DCE8E4");
    ink.steel = QColor("#2B4C7E");
    ink.appliance = QColor("#DAD9DE");
    ink.water = QColor("#1F5FA8");
    ink.power = QColor("#B0281F");
    ink.gas = QColor("#7A5A00");
    ink.ground = QColor("#B8B09F");
    ink.chosen = QColor("#0B6E6E");
    ink.hover = QColor("#5FA3A3");
    ink.caution = QColor("#8A5000");
    ink.stop = QColor("#9B1C1C");
    return ink;
}

Ink darkInk()
{
    Ink ink;
    ink.dark = true;
    ink.sheet = QColor("#23262A");
    ink.bench = QColor("#17191C");
    ink.card = QColor("#1D2024");
    ink.line = QColor("#3A3F45");
    ink.ink = QColor("#ECEAE4");
    ink.pencil = QColor("#A4AAAF");
    ink.grid = QColor("#2D3136");
    ink.cast = QColor("#4A4D4F");
    ink.castDots = QColor("#6C7072");
    ink.timber = QColor("#8F6A45");
    ink.foam = QColor("#3C4B48");
    ink.steel = QColor("#8FB0E0");
    ink.appliance = QColor("#40434A");
    ink.water = QColor("#7FB4F0");
    ink.power = QColor("#FF8B82");
    ink.gas = QColor("#E0C060");
    ink.ground = QColor("#5B554A");
    ink.chosen = QColor("#49C2C0");
    ink.hover = QColor("#2E8F8D");
    ink.caution = QColor("#F0B45A");
    ink.stop = QColor("#FF8B82");
    return ink;
}

Ink paperInk()
{
    Ink ink = lightInk();
    ink.sheet = ink.bench = ink.card = QColor(Qt::white);
    ink.line = QColor("#8C8C8C");
    ink.ink = QColor(Qt::black);
    ink.pencil = QColor("#505050");
    ink.grid = QColor("#E8E8E8");
    ink.cast = QColor("#E6E6E6");
    ink.castDots = QColor("#9A9A9A");
    ink.timber = QColor("#D2D2D2");
    ink.foam = QColor("#F6F6F6");
    ink.steel = QColor("#202020");
    ink.appliance = QColor("#F0F0F0");
    ink.water = ink.power = ink.gas = QColor("#303030");
    ink.ground = QColor("#707070");
    ink.chosen = ink.hover = QColor(Qt::black);
    ink.caution = ink.stop = QColor(Qt::black);
    return ink;
}

namespace {

double luminance(const QColor& colour)
{
    const auto linear = [](double channel) {
        return channel <= 0.03928 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) + 0.0722 * linear(colour.blueF());
}

}  // namespace

double contrastRatio(const QColor& a, const QColor& b)
{
    const double la = luminance(a);
    const double lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

}  // namespace yardcast::ui
