#pragma once

#include <string>

#include "core/materials/concrete_strength.h"
#include "core/plan/mix.h"

/// The concrete of a mix that strength counts with: its class, and what the water leaves of it.
namespace yardcast {

struct MixConcrete {
    std::string name;              ///< the class; where the plan names none, the lowest its word can mean
    /// Of the mean strength of the class what is likely: 1 without a trial batch that was wetter than planned, else
    /// f(w/c as weighed) / f(w/c as planned), f being `strengthByRatioMpa`.
    double likelyShare = 1.0;
    /// Of the same what is safe to believe before anybody tests: not more than f(w/c) over the mean of the class.
    double cautiousShare = 1.0;
    double waterBinder = 0.0;      ///< the w/c meant: as weighed where a trial batch shows more water than planned
    double supportedMpa = 0.0;     ///< f of it; both 0 where the mix is not usable
    ConcreteProperties likely;
    ConcreteProperties cautious;
};
MixConcrete concreteOf(const Mix& mix);

/// The compressive strength that a cautious person counts on is this share of the mean: fck / fcm of EN 1992-1-1 3.1.2,
/// whose band of 8 MPa is taken to shrink with the age (our choice: the clause gives none for young concrete).
double cautiousOfMean(const ConcreteProperties& concrete);
/// Days at 20 deg C until the mean compressive strength, or cautiously what is counted on of it, is `stripMpa`; infinity
/// where it never is.
double likelyStripDays(const MixConcrete& concrete, double s, double stripMpa);
double cautiousStripDays(const MixConcrete& concrete, double s, double stripMpa);

}  // namespace yardcast
