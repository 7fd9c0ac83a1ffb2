#pragma once

#include "app/cli_context.h"

/// Files for other programs: drawings as DXF, bodies as STL. Return exit codes.
namespace yardcast::cli {

/// Whether the result is to be a DXF file, by the ending of its name.
bool wantsDxf(const Job& job);
int drawDxf(const Job& job);
int model(const Job& job);

}  // namespace yardcast::cli
