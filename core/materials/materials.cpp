#include "core/materials/materials.h"

#include <array>
#include <numbers>
#include <string_view>

namespace yardcast {

namespace {

struct NamedClass {
    std::string_view name;
    ConcreteClass strength;
};

// EN 1992-1-1 Table 3.1, first two rows.
constexpr std::array kClasses{
    NamedClass{"C12/15", {12, 15}}, NamedClass{"C16/20", {16, 20}}, NamedClass{"C20/25", {20, 25}},
    NamedClass{"C25/30", {25, 30}}, NamedClass{"C30/37", {30, 37}}, NamedClass{"C35/45", {35, 45}},
    NamedClass{"C40/50", {40, 50}}, NamedClass{"C45/55", {45, 55}}, NamedClass{"C50/60", {50, 60}},
    NamedClass{"C55/67", {55, 67}}, NamedClass{"C60/75", {60, 75}}, NamedClass{"C70/85", {70, 85}},
    NamedClass{"C80/95", {80, 95}}, NamedClass{"C90/105", {90, 105}},
};

struct NamedDensity {
    std::string_view name;
    double density;
};

constexpr std::array kFibres{
    NamedDensity{"AR glass", 2.68}, NamedDensity{"PP", 0.91},    NamedDensity{"PVA", 1.3},
    NamedDensity{"basalt", 2.7},    NamedDensity{"steel", 7.85},
};
constexpr double kOtherFibreKgL = 2.6;

constexpr std::array kTimbers{
    NamedDensity{"larch", 590}, NamedDensity{"oak", 710},   NamedDensity{"spruce", 460},
    NamedDensity{"pine", 520},  NamedDensity{"fir", 450},   NamedDensity{"douglas", 530},
    NamedDensity{"cedar", 380}, NamedDensity{"robinia", 740}, NamedDensity{"chestnut", 590},
    NamedDensity{"ash", 700},   NamedDensity{"teak", 660},
};
constexpr double kOtherTimberKgM3 = 550;

template <std::size_t N>
double lookUp(const std::array<NamedDensity, N>& table, std::string_view name, double other)
{
    for (const NamedDensity& row : table) {
        if (row.name == name) return row.density;
    }
    return other;
}

}  // namespace

double barAreaMm2(double diameterMm) { return std::numbers::pi / 4 * diameterMm * diameterMm; }

double barMassKgM(double diameterMm) { return barAreaMm2(diameterMm) * 1e-6 * kSteelKgM3; }

std::optional<ConcreteClass> concreteClass(const std::string& name)
{
    for (const NamedClass& row : kClasses) {
        if (row.name == name) return row.strength;
    }
    return std::nullopt;
}

ClassReading readClass(const std::string& text)
{
    if (concreteClass(text)) return {text, true, {text}};
    std::vector<double> numbers;
    bool inNumber = false;
    for (const char c : text) {
        const bool digit = c >= '0' && c <= '9';
        if (digit && !inNumber) numbers.push_back(0.0);
        if (digit) numbers.back() = numbers.back() * 10 + (c - '0');
        inNumber = digit;
    }
    ClassReading reading{std::string(kClasses.front().name), false, {}};
    if (numbers.empty()) return reading;
    const double first = numbers.front();
    const double second = numbers.size() > 1 ? numbers[1] : first;
    for (const NamedClass& row : kClasses) {
        if (numbers.size() > 1 && row.strength.fckMpa == first && row.strength.fckCubeMpa == second)
            return {std::string(row.name), false, {std::string(row.name)}};
        if (row.strength.fckMpa == first || row.strength.fckCubeMpa == second)
            reading.canMean.emplace_back(row.name);
    }
    if (!reading.canMean.empty()) reading.taken = reading.canMean.front();
    return reading;
}

double fibreKgL(const std::string& kind) { return lookUp(kFibres, kind, kOtherFibreKgL); }

double timberKgM3(const std::string& species) { return lookUp(kTimbers, species, kOtherTimberKgM3); }

}  // namespace yardcast
