#pragma once

#include <set>
#include <string>

#include <QStringList>

#include "core/assess/assessment.h"

namespace yardcast::ui {

/// The parts a subject of a line or finding stands for: the part itself, that of a casting, or all parts cast from a
/// mix. Only parts that the plan has.
QStringList partsOfSubject(const Plan& plan, const Assessment& assessment, const std::string& subject);

/// Everything that may be named where the part has a share: its id, those of its castings, and its mix.
std::set<std::string> subjectsOfPart(const Plan& plan, const Assessment& assessment, const std::string& part);

}  // namespace yardcast::ui
