#include "tests/reference/linear_solver.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

#include <stdlib.h>  // mkdtemp

namespace yardcast::reference {

namespace {

bool isThere(const char* program)
{
    return std::system((std::string("command -v ") + program + " >/dev/null 2>&1").c_str()) == 0;
}

/// "... objective value 453.00000000" as cbc, or "Objective:  price = 453 (MINimum)" after "Status: INTEGER OPTIMAL" as
/// glpsol.
std::optional<double> valueIn(const std::string& answer, bool byCbc)
{
    const std::string proven = byCbc ? "Optimal" : "INTEGER OPTIMAL";
    const std::string before = byCbc ? "objective value" : "Objective:";
    const std::size_t place = answer.find(before);
    if (answer.find(proven) == std::string::npos || place == std::string::npos) return std::nullopt;
    const std::size_t digits = answer.find_first_of("0123456789", place + before.size());
    if (digits == std::string::npos) return std::nullopt;
    std::istringstream in(answer.substr(digits));
    in.imbue(std::locale::classic());
    double value = 0.0;
    if (!(in >> value)) return std::nullopt;
    return value;
}

}  // namespace

bool integerSolverIsThere()
{
    return isThere("cbc") || isThere("glpsol");
}

std::optional<double> leastOf(const std::string& program)
{
    std::string name = (std::filesystem::path(testing::TempDir()) / "yardcast-lp-XXXXXX").string();
    if (!mkdtemp(name.data())) return std::nullopt;
    const std::filesystem::path folder = name;
    std::ofstream(folder / "program.lp") << program;
    const bool byCbc = isThere("cbc");
    const std::string run = byCbc ? "cbc program.lp ratio 0 sec 30 solve solu answer.txt"
                                  : "glpsol --lp program.lp --tmlim 30 -o answer.txt";
    const int status = std::system(("cd '" + folder.string() + "' && LC_ALL=C " + run + " >log.txt 2>&1").c_str());
    std::ifstream in(folder / "answer.txt");
    const std::string answer{std::istreambuf_iterator<char>(in), {}};
    in.close();
    std::error_code ignored;
    std::filesystem::remove_all(folder, ignored);
    return status == 0 ? valueIn(answer, byCbc) : std::nullopt;
}

}  // namespace yardcast::reference
