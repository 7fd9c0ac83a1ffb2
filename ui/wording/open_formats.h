#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/mould/mould.h"
#include "core/plan/plan.h"

/// The contents of files that other programs read, with our words in them.
namespace yardcast::ui {

/// The plan from above as DXF (see `planDrawing`); `partId` empty: all of it.
std::string planDxf(const Plan& plan, const std::vector<CastingPtr>& castings, const std::string& partId = {});
/// The moulds as one stands in front of them, DXF (see `mouldDrawing`).
std::string mouldDxf(const std::vector<MouldPtr>& moulds, const std::string& partId = {});
/// The formers of cutouts as bodies, STL (see `formersModel`).
std::string formersStl(const std::vector<MouldPtr>& moulds, const std::string& partId = {});
/// The kitchen as bodies, STL (see `kitchenModel`).
std::string kitchenStl(const Plan& plan, const std::vector<CastingPtr>& castings, const std::string& partId = {});

}  // namespace yardcast::ui
