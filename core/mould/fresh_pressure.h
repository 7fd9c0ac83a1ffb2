#pragma once

#include <optional>
#include <string>

/// Pressure of fresh concrete on a form, kPa, and what a board makes of it.
namespace yardcast {

/// Fresh concrete, kN/m3: EN 1991-1-1 Table A.1 (24, and 1 more unhardened).
inline constexpr double kFreshKnM3 = 25.0;

/// gamma h.
double hydrostaticKpa(double heightMm, double gammaKnM3 = kFreshKnM3);

/// Consistency classes of DIN 18218:2010.
enum class FreshClass { f1, f2, f3, f4, f5, f6, scc };
/// "F1" ... "F6", "SCC".
const char* freshClassWord(FreshClass which);
/// Greatest lateral pressure of a wall or column that rises by `riseMPerH`: DIN 18218:2010, end of setting after 5 h,
/// 25 kN/m3, from memory. F1 5v + 21, F2 10v + 19, F3 14v + 18, F4 17v + 17, each times K1 and at least 25;
/// F5 25 + 30 v K1, F6 25 + 38 v K1, SCC 25 + 33 v K1, at least 30. `settingFactor` is K1.
double din18218Kpa(FreshClass which, double riseMPerH, double settingFactor = 1.0);

/// CIRIA report 108: D (C1 sqrt R + C2 K sqrt(H - C1 sqrt R)), K = (36 / (T + 16))^2, at most D H; D H where
/// C1 sqrt R > H.
struct Ciria108 {
    double gammaKnM3 = kFreshKnM3;
    double heightM = 0.0;
    double riseMPerH = 0.0;
    double concreteC = 20.0;
    double shape = 1.0;    ///< C1: wall 1.0, column 1.5
    double mix = 0.3;      ///< C2: 0.3 plain, 0.45 retarded or blended, 0.6 heavily so
};
double ciria108Kpa(const Ciria108& in);

/// ACI 347: Cw Cc (7.2 + 785 R / (T + 17.8)), at least 30 Cw, at most rho g h. Limits from memory; for columns, and for
/// walls that rise by less than 2.1 m/h and are no higher than 4.2 m.
double aci347Kpa(double riseMPerH, double concreteC, double heightM, double weight = 1.0, double chemistry = 1.0,
                 double gammaKnM3 = kFreshKnM3);

/// A strip of board 1 mm wide, bending over supports `spanMm` apart under an even pressure: as a simple span, which is
/// on the safe side for boards that run on over brackets. 5 q s^4 / (384 E I), q s^2 / 8 / W.
struct BoardBending {
    double bowMm = 0.0;
    double stressMpa = 0.0;
};
BoardBending boardBending(double pressureKpa, double spanMm, double thicknessMm, double elasticMpa);
/// The span at which the board bows by `bowMm`.
double spanForBowMm(double pressureKpa, double bowMm, double thicknessMm, double elasticMpa);

}  // namespace yardcast
