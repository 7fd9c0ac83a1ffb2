#pragma once

#include "app/cli_context.h"

/// One function a command of yardcast-cli; each gives the exit code.
namespace yardcast::cli {

int assess(const Job& job);
int check(const Job& job);
int list(const Job& job);
int best(const Job& job);
int schema(const Job& job);
/// These two need fonts and painting, but no display.
int printSheets(const Job& job);
int draw(const Job& job);

}  // namespace yardcast::cli
