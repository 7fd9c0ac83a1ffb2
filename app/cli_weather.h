#pragma once

#include "app/cli_context.h"

/// Quick answers on the day, without a plan.
namespace yardcast::cli {

/// Evaporation from fresh concrete as JSON.
int weather(const Job& job);
/// Age and strength at the end of a logger's table as JSON.
int gain(const Job& job);

}  // namespace yardcast::cli
