#include "app/cli_weather.h"

#include <filesystem>
#include <vector>

#include "core/assess/json_tools.h"
#include "core/io/plan_file.h"
#include "core/io/temperature_log.h"
#include "core/materials/concrete_strength.h"
#include "core/materials/temperature_course.h"
#include "core/pour/cement_speed.h"
#include "core/pour/weather.h"
#include "ui/wording/finding_words.h"

namespace yardcast::cli {

namespace {

constexpr double kDatumC = -10.0;
constexpr double kQKelvin = 5000.0;
constexpr double kReferenceC = 20.0;

struct Bound {
    const char* option;
    double value;
    double least;
    double most;
};

/// False, and a complaint for each, where numbers are out of their bounds or none.
bool within(const std::vector<Bound>& bounds)
{
    bool good = true;
    for (const Bound& b : bounds) {
        if (b.value >= b.least && b.value <= b.most) continue;
        complain(std::string(b.option) + ": a number from " + Json(b.least).dump() + " to " + Json(b.most).dump() +
                 " is wanted.");
        good = false;
    }
    return good;
}

int printed(const Json& json) { return print(json.dump(2) + "\n") ? kDone : kUnusable; }

}  // namespace

int weather(const Job& job)
{
    if (!within({{"--air", job.airC, -40, 60}, {"--concrete", job.concreteC, -40, 95},
                 {"--humidity", job.humidityPercent, 0, 100}, {"--wind", job.windKmh, 0, 250}})) {
        return kUnusable;
    }
    const double rate = evaporationKgM2H(job.concreteC, job.airC, job.humidityPercent / 100, job.windKmh);
    return printed({{"evaporation_kg_m2_h", rounded(rate)},
                    {"limit_kg_m2_h", kEvaporationLimit},
                    {"limit_low_bleed_kg_m2_h", kEvaporationLimitLowBleed},
                    {"over_limit", rate >= kEvaporationLimit},
                    {"over_low_bleed_limit", rate >= kEvaporationLimitLowBleed},
                    {"uncertain_percent", kEvaporationUncertainPercent},
                    {"working_minutes", rounded(workingMinutes(Pouring{}.workingMinutes, job.concreteC))},
                    {"working_minutes_at_20_c", Pouring{}.workingMinutes},
                    {"source", "Uno (1998), ACI Materials Journal 95-M34; limits: ACI 305R (from memory). Real rates "
                               "differ from the formula by some 40 %."}});
}

int gain(const Job& job)
{
    const auto concrete = concreteProperties(job.strengthClass);
    if (!concrete) {
        complain("--class: no strength class is called \"" + job.strengthClass + "\"; one such as C25/30 is wanted.");
        return kUnusable;
    }
    const FileText file = readFile(std::filesystem::path(job.logPath));
    if (!file.text) {
        complain(job.logPath + ": cannot be read: " + file.error);
        return kUnusable;
    }
    const TemperatureLog log = readTemperatureLog(*file.text);
    for (const Finding& problem : log.problems) {
        complain(job.logPath + ": " + ui::findingText(problem).toStdString() + " " +
                 ui::findingHelp(problem).toStdString());
    }
    if (!log.problems.empty()) return kUnusable;

    std::vector<TemperatureReading> readings;
    for (const MeasuredTemperature& row : log.rows) readings.push_back({row.h, row.c});
    const double endH = readings.back().h;
    const CementSpeed speed = job.cementSpeed == "S" ? CementSpeed::slow
        : job.cementSpeed == "R"                     ? CementSpeed::rapid
                                                     : CementSpeed::normal;
    const StrengthAtAge at =
        strengthAtEquivalentAge(*concrete, cementS(speed), equivalentAgeDays(readings, endH));
    return printed({{"class", job.strengthClass},
                    {"speed", job.cementSpeed},
                    {"rows", log.rows.size()},
                    {"hours", rounded(endH)},
                    {"hours_from", log.fromClock ? "the first row" : "the pour"},
                    {"equivalent_age_d", rounded(at.ageDays)},
                    {"share", rounded(at.share)},
                    {"mean_strength_mpa", rounded(at.fcmMpa)},
                    {"mean_tension_mpa", rounded(at.fctmMpa)},
                    {"maturity_c_h", rounded(nurseSaulMaturity(readings, endH, kDatumC))},
                    {"maturity_datum_c", kDatumC},
                    {"equivalent_age_c1074_h", rounded(equivalentAgeH(readings, endH, kQKelvin, kReferenceC))},
                    {"c1074_q_k", kQKelvin},
                    {"c1074_reference_c", kReferenceC},
                    {"source", "EN 1992-1-1 eq. B.10, 3.1 and 3.2 (age at 20 deg C, likely strength of the class, not a "
                               "safe one); maturity by ASTM C1074. A row holds until the next."}});
}

}  // namespace yardcast::cli
