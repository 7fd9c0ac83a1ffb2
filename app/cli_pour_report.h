#pragma once

#include <QString>

#include "app/cli_context.h"

namespace yardcast::cli {

/// The pour plan as a table, one row a casting, with the chance of a cold joint where it was played; empty without one.
QString pourTable(const Loaded& loaded);
/// From which hour each casting may be stripped, tilted and carried, with what is said beside it; how long it is kept moist
/// and how fast it dries; what each grip bears. Empty where there is nothing to say.
QString hoursTable(const Loaded& loaded);
QString curingTable(const Loaded& loaded);
QString holdsTable(const Loaded& loaded);
/// Share of the strength by age for each mix, and the months of the season; empty without.
QString gainTable(const Loaded& loaded);
QString seasonTable(const Loaded& loaded);

}  // namespace yardcast::cli
