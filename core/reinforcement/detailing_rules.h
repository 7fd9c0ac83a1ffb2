#pragma once

#include "core/plan/assumptions.h"

/// Rules of EN 1992-1-1:2004 for how steel lies in a slab: cover, spacing, anchorage, laps, least steel. mm, MPa.
namespace yardcast {

/// Table 4.4N, cmin,dur of reinforcing steel by exposure and structural class S1 to S6 (seen as restated in public
/// copies). Other classes are taken as the nearest.
double leastCoverForLifeMm(Exposure exposure, int structuralClass);
/// Table 4.3N starts at S4 for 50 years.
inline constexpr int kUsualStructuralClass = 4;

/// 4.4.1: what covers steel from rust for its life.
struct CoverAsked {
    double leastMm = 0.0;    ///< cmin: of the bar, Table 4.4N, 10 mm
    double nominalMm = 0.0;  ///< cnom: with the deviation allowed for, 10 mm
};
/// For bond (the bar's diameter; 5 mm more where aggregate is above 32 mm), durability and 10 mm.
CoverAsked coverAsked(Exposure exposure, double diameterMm, double aggregateMm,
                      int structuralClass = kUsualStructuralClass, double deviationMm = 10.0);

/// 8.2(2): clear distance between bars, the largest of the bar, aggregate + 5 mm and 20 mm.
double leastClearMm(double diameterMm, double aggregateMm);
/// 9.3.1.1(3), from memory: main bars 3h up to 400 mm, others 3.5h up to 450 mm.
double mostSpacingMm(double depthMm, bool mainBars);

/// 9.2.1.1(1) with 9.3.1.1(1): least steel in tension, mm2 per mm of width.
double leastSteelMm2Mm(double effectiveDepthMm, double fctmMpa, double fykMpa);
/// 9.2.1.1(3): most steel outside laps, mm2 per mm: 0.04 Ac.
double mostSteelMm2Mm(double depthMm);

/// 8.4.2: fbd = 2.25 eta1 eta2 fctd, fctd = fctk,0.05 / gamma_c; `good` bond as 8.4.2(2) has it: bars in slabs up to
/// 250 mm deep always have it.
double bondStrengthMpa(double fctk005Mpa, double diameterMm, bool good = true, double gammaConcrete = 1.5);

/// A bar in tension that has to hold in the concrete.
struct BarInConcrete {
    double diameterMm = 8.0;
    double stressMpa = 500.0 / 1.15;  ///< sigma_sd
    double coverMm = 20.0;            ///< the least, to whichever side
    double clearMm = 1000.0;          ///< to the next bar
    bool good = true;
    bool bent = false;                ///< its end is bent, a standard hook or a loop (8.1)
};
/// 8.4.3: lb,rqd.
double basicAnchorageMm(const BarInConcrete& bar, double fctk005Mpa);
/// 8.4.4: lbd, alpha1 = alpha3 = alpha4 = alpha5 = 1, alpha2 by cover. At least 0.3 lb,rqd, 10 bars and 100 mm.
double anchorageMm(const BarInConcrete& bar, double fctk005Mpa);
/// 8.7.3: l0 where `lappedShare` of the bars lap at one place (0.5, 1.0). At least 0.3 alpha6 lb,rqd, 15 bars, 200 mm.
double lapMm(const BarInConcrete& bar, double fctk005Mpa, double lappedShare);
/// 8.7.5.2, Table 8.4 (from memory): laps of welded mesh whose sheets lie on one another, for wires across: 150 mm up
/// to 6 mm, 250 up to 8.5, 350 above; and two pitches, common practice.
double meshLapMm(double barMm, double pitchMm);

/// Table 7.1N: crack width allowed for looks and life, mm.
double mostCrackWidthMm(Exposure exposure);

}  // namespace yardcast
