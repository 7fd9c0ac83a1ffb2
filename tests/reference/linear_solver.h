#pragma once

#include <optional>
#include <string>

/// A general solver of integer programs, cbc or glpsol, run as a process on programs that the tests write.
namespace yardcast::reference {

/// True when one of them can be run.
bool integerSolverIsThere();
inline constexpr const char* kNoIntegerSolver =
    "neither cbc nor glpsol is installed (Debian packages coinor-cbc, glpk-utils)";

/// The least value of a program in the LP format that both read. Nothing where it was not proven the least in time.
std::optional<double> leastOf(const std::string& program);

}  // namespace yardcast::reference
