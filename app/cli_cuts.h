#pragma once

#include "app/cli_context.h"

/// The commands that cut stock.
namespace yardcast::cli {

/// Cuts of any list, without a plan, as JSON.
int cut(const Job& job);
/// What of a plan is cut from which sheet and length: at the store, then at home.
int saw(const Job& job);

}  // namespace yardcast::cli
