#pragma once

#include <memory>
#include <vector>

#include <QMimeData>
#include <QStringList>

#include "core/plan/plan.h"

/// Parts on the clipboard, so that copy and paste work between windows and through a text editor.
namespace yardcast::ui {

inline constexpr auto kPartsMime = "application/x-yardcast-parts";

/// The named parts (those that exist, in the order of the plan) as `kPartsMime` and as plain text; null for none.
std::unique_ptr<QMimeData> partsToMime(const Plan& plan, const QStringList& ids);
/// Empty when the data hold no parts.
std::vector<Part> partsFromMime(const QMimeData* data);
/// Cheap: does not read text that cannot be parts.
bool mayHoldParts(const QMimeData* data);

}  // namespace yardcast::ui
