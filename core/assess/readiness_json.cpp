#include "core/assess/readiness_json.h"

#include <cmath>

namespace yardcast {

namespace {

Json hourJson(double h) { return std::isfinite(h) ? Json(rounded(h)) : Json(); }

Json hourJson(const std::optional<double>& h) { return h ? hourJson(*h) : Json(); }

Json listJson(const std::vector<double>& values)
{
    Json list = Json::array();
    for (const double value : values) list.push_back(rounded(value));
    return list;
}

Json wayJson(const EarliestHour& hour)
{
    return {{"way", handlingWayWord(hour.way)},
            {"possible", hour.possible},
            {"likely_h", hourJson(hour.likelyH)},
            {"cautious_h", hourJson(hour.cautiousH)},
            {"likely_age_d", hourJson(hour.likelyDays)},
            {"cautious_age_d", hourJson(hour.cautiousDays)},
            {"by_compression", hour.byCompression},
            {"stretched", hour.stretched()},
            {"tension_mpa", rounded(hour.tensionMpa)},
            {"where", hour.tensionMpa > 0.0 ? Json(placeWords(hour.place)) : Json()}};
}

}  // namespace

Json hoursJson(const std::vector<CastingHoursPtr>& hours)
{
    Json list = Json::array();
    for (const CastingHoursPtr& casting : hours) {
        if (!casting) continue;
        Json ways = Json::array();
        for (const EarliestHour& hour : casting->ways) ways.push_back(wayJson(hour));
        list.push_back({{"casting", casting->casting},
                        {"part", casting->part},
                        {"mix", casting->mix},
                        {"plan_h", rounded(casting->planH)},
                        {"carry", handlingWayWord(casting->carry)},
                        {"ways", ways},
                        {"why_not", casting->whyNot.empty() ? Json() : Json(casting->whyNot)}});
    }
    return list;
}

Json gainJson(const std::vector<GainCurve>& gain)
{
    Json list = Json::array();
    for (const GainCurve& curve : gain) {
        list.push_back({{"mix", curve.mix},
                        {"h", listJson(curve.h)},
                        {"share", listJson(curve.share)},
                        {"mean_mpa", listJson(curve.meanMpa)},
                        {"strip_h", hourJson(curve.stripH)},
                        {"tilt_h", hourJson(curve.tiltH)},
                        {"carry_h", hourJson(curve.carryH)}});
    }
    return list;
}

Json seasonJson(const std::vector<SeasonMonth>& season)
{
    Json list = Json::array();
    for (const SeasonMonth& month : season) {
        list.push_back({{"month", month.month},
                        {"rank", month.rank},
                        {"carry_h", hourJson(month.carryH)},
                        {"curing_d", hourJson(month.curingDays)},
                        {"evaporation_kg_m2_h", rounded(month.evaporationKgM2H)},
                        {"limit_kg_m2_h", rounded(month.limitKgM2H)},
                        {"best_start_h", rounded(month.bestStartH)},
                        {"frost", month.frost}});
    }
    return list;
}

}  // namespace yardcast
