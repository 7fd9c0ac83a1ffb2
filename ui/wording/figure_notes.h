#pragma once

#include <string>
#include <vector>

#include <QString>

namespace yardcast::ui {

/// What stands behind a figure on a card or a sheet.
struct FigureNote {
    QString title;       ///< "Concrete to mix"
    QString formula;     ///< in words and signs
    QString source;      ///< published source with clause, or "common practice, no source", or "from memory"
    QString assumption;  ///< what was taken for granted and how sure the figure is
};

/// By code: "concrete_volume", "mass", "people", "team_limit", "bags", "litres_per_bag", "extra_cement", "silica_fume",
/// "plasticiser", "fibres", "water", "water_cement", "water_binder", "batches", "steel_mass", "mesh_area",
/// "bar_length", "bar_cut", "steel_worth", "board_area", "silicone", "foam", "release_agent", "sheeting", "sealer", "batten_gap", "front_timber",
/// "packs", "cut_sheets", "store_cuts", "money", "contingency", "centroid", "strength_use", "strength_tension",
/// "strength_deflection", "strength_section", "best_start", "evaporation", "working_time", "frost", "curing",
/// "earliest_hour", "strength_gain", "season_month", "pour_days", "cold_joint", "poured". An unknown code gives an empty
/// note.
FigureNote figureNote(const std::string& code);
std::vector<std::string> figureCodes();

}  // namespace yardcast::ui
