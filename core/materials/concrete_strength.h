#pragma once

#include <optional>
#include <string>

/// Strength and stiffness of concrete after EN 1992-1-1:2004, at 28 days and younger. MPa, hours, days, deg C. A mix
/// from bags is only called a class: no figure here is surer than the cubes nobody broke.
namespace yardcast {

/// Table 3.1, unrounded; means (m) and lower fractiles (k, 5 %).
struct ConcreteProperties {
    double fckMpa = 0.0;
    double fcmMpa = 0.0;      ///< fck + 8
    double fctmMpa = 0.0;     ///< 0.30 fck^(2/3) up to C50/60, 2.12 ln(1 + fcm/10) above
    double fctk005Mpa = 0.0;  ///< 0.7 fctm
    double ecmMpa = 0.0;      ///< 22 000 (fcm/10)^0.3: quartzite aggregate; limestone a tenth less, basalt a fifth more

    friend bool operator==(const ConcreteProperties&, const ConcreteProperties&) = default;
};
/// Any fck; all zero where it is not above zero.
ConcreteProperties concreteProperties(double fckMpa);
/// By the name of a class ("C25/30"); nothing for other words.
std::optional<ConcreteProperties> concreteProperties(const std::string& name);

/// The same concrete where it reaches only this share of its mean compressive strength at 28 days: tension falls with
/// the share and stiffness with its power of 0.3, as eq. 3.4 and 3.5 have it of concrete that is too young. A share of 1
/// and above changes nothing.
ConcreteProperties weakened(const ConcreteProperties& concrete, double share);

/// The s of eq. 3.2 by speed of the cement: class R (42.5 R, 52.5 N, 52.5 R), N (32.5 R, 42.5 N), S (32.5 N).
inline constexpr double kRapidCementS = 0.20;
inline constexpr double kNormalCementS = 0.25;
inline constexpr double kSlowCementS = 0.38;

/// Eq. 3.2: share of the 28-day mean strength at an age in days at 20 deg C. 0 at no age; above 1 after 28 days.
double strengthShare(double ageDays, double s);
/// The age at which eq. 3.2 has this share of the 28-day mean strength; infinity where it never has. Days.
double ageOfShareDays(double share, double s);

/// Eq. B.10: days at 20 deg C that `hours` at a constant temperature are worth (0.9981 a day at 20 deg C, as the
/// equation gives it). The equation is for 0 to 80 deg C: below 0 nothing is counted, above 80 as at 80.
double equivalentAgeDays(double hours, double meanC);

/// Concrete at an age.
struct StrengthAtAge {
    double ageDays = 0.0;     ///< equivalent age at 20 deg C, eq. B.10
    double share = 0.0;       ///< eq. 3.2
    double fcmMpa = 0.0;      ///< eq. 3.1
    double fctmMpa = 0.0;     ///< eq. 3.4: share^a fctm, a = 1 before 28 days, 2/3 after
    double fctk005Mpa = 0.0;  ///< 0.7 fctm(t), by the fractile of Table 3.1
    double elasticMpa = 0.0;  ///< eq. 3.5; with fcm(t) it goes to nothing at no age
    /// 3.1.2(5): fcm(t) - 8 between 3 and 28 days, fck from 28 days on. Empty at 3 days and before: the clause asks for
    /// tests there and gives no fck(t), so what is stripped on day two has a likely strength and no characteristic one.
    std::optional<double> fckMpa;
};
/// At an equivalent age in days at 20 deg C. Means are what is likely, not what is safe: the safety stands in the factor
/// that the user of these figures puts on them. A share before about one day is an extrapolation of eq. 3.2.
StrengthAtAge strengthAtEquivalentAge(const ConcreteProperties& concrete, double s, double ageDays);
/// `ageH` hours at one temperature; through a course of temperatures see temperature_course.h.
StrengthAtAge strengthAtAge(const ConcreteProperties& concrete, double s, double ageH, double meanC);

/// Eq. 3.23: how much more tension a bent section of depth h bears than a pulled one, max(1.6 - h/1000; 1). The
/// equation is for the mean; by 3.1.8(1) it serves the characteristic value as well.
double flexuralFactor(double depthMm);

}  // namespace yardcast
