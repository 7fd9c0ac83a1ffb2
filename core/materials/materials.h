#pragma once

#include <optional>
#include <string>
#include <vector>

/// Properties of materials, each with its source.
namespace yardcast {

/// EN 1991-1-1:2002 Table A.1: normal weight concrete 24 kN/m3, 1 kN/m3 more when unhardened. In kg/m3 with the
/// standard's own rounding (10 m/s2): 2400 and 2500. Bagged mixes weigh some 2250 to 2350: the figure is on the
/// heavy, safe side for lifting.
inline constexpr double kHardenedConcreteKgM3 = 2400.0;
inline constexpr double kFreshConcreteKgM3 = 2500.0;
/// EN 10080: 7850 kg/m3.
inline constexpr double kSteelKgM3 = 7850.0;
/// From memory (usual handbook values): cement 3.15, silica fume 2.2 kg/l. Plasticiser 1.07 kg/l, 65 % of it water.
inline constexpr double kCementKgL = 3.15;
inline constexpr double kSilicaFumeKgL = 2.2;
inline constexpr double kPlasticiserKgL = 1.07;
inline constexpr double kPlasticiserWaterShare = 0.65;
/// Iron oxide: 4.1 (yellow) to 5.0 (red); from memory.
inline constexpr double kPigmentKgL = 4.6;

/// pi/4 d2, mm2.
double barAreaMm2(double diameterMm);
/// EN 10080 nominal mass, kg/m.
double barMassKgM(double diameterMm);

/// EN 1992-1-1 Table 3.1 by name ("C25/30"); nothing for other words.
struct ConcreteClass {
    double fckMpa;
    double fckCubeMpa;
};
std::optional<ConcreteClass> concreteClass(const std::string& name);
/// What a text is taken for that should name a strength class.
struct ClassReading {
    std::string taken;                   ///< the text itself where it is a class; else the lowest it can mean
    bool exact = true;                   ///< it is the name of a class
    std::vector<std::string> canMean;    ///< classes of the table with its numbers, lowest first; may be empty
};
/// By the numbers in the text: both of a class ("c25-30"), else one of them, for "30" stands on bags for cylinders as
/// well as for cubes ("C30": C25/30 or C30/37). Without any such class the lowest of the table is taken: unsafe it must
/// not be.
ClassReading readClass(const std::string& text);

/// kg/l of a fibre by its kind's name ("AR glass" 2.68, "PP" 0.91, "PVA" 1.3, "basalt" 2.7, "steel" 7.85);
/// 2.6 for others. From memory.
double fibreKgL(const std::string& kind);
/// Timber density kg/m3 by species at about 15 % moisture; 550 for others. From memory.
double timberKgM3(const std::string& species);

}  // namespace yardcast
