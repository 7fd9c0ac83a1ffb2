#pragma once

#include <QString>

#include "app/cli_context.h"

namespace yardcast::cli {

/// The pour plan as a table, one row a casting, with the chance of a cold joint where it was played; empty without one.
QString pourTable(const Loaded& loaded);

}  // namespace yardcast::cli
