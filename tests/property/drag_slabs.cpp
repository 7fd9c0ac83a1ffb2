// Many slabs whose cutout is dragged, in slices: `drag_slabs FROM COUNT [REFINEMENT] >> FILE` writes a line for each
// slab and for each step and kind of figure (REFINEMENT 0, 1, 2: the mesh of a drag, at rest, for paper); `drag_slabs
// --sum FILE...` tells what they come to. 100 slabs take about half a minute of processor time.

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "tests/property/dragged_kitchen.h"

namespace {

using namespace yardcast;

int slice(std::uint32_t from, std::uint32_t count, Refinement refinement)
{
    for (std::uint32_t slab = from; slab < from + count; ++slab) {
        const random::Drag drag = random::drag(slab, refinement);
        std::printf("slab %u %.2f %s\n", slab, drag.leastAngleDeg, drag.trouble.empty() ? "-" : drag.trouble.c_str());
        for (std::size_t step = 0; step < drag.steps.size(); ++step) {
            for (const random::DragJump& jump : drag.steps[step]) {
                std::printf("step\t%u\t%zu\t%s\t%.6f\t%.6f\t%s\n", slab, step + 1, jump.kind.c_str(), jump.share,
                            jump.jump, jump.name.c_str());
            }
        }
        std::fflush(stdout);
    }
    return 0;
}

int sum(const std::vector<std::string>& files)
{
    struct Steps {
        std::vector<double> shares;
        std::vector<double> jumps;
        double worst = -1.0;
        std::string where;
    };
    std::map<std::string, Steps> kinds;
    int slabs = 0;
    int failed = 0;
    int thin = 0;
    double leastAngle = 180.0;
    for (const std::string& file : files) {
        std::ifstream in(file);
        for (std::string line; std::getline(in, line);) {
            std::istringstream words(line);
            std::string word;
            if (line.starts_with("slab ")) {
                unsigned number = 0;
                double angle = 0.0;
                words >> word >> number >> angle >> word;
                ++slabs;
                if (word != "-") ++failed;
                if (angle < 15.0) ++thin;
                leastAngle = std::min(leastAngle, angle);
            } else if (line.starts_with("step\t")) {
                std::vector<std::string> parts;
                while (std::getline(words, word, '\t')) parts.push_back(word);
                if (parts.size() < 6) continue;
                Steps& steps = kinds[parts[3]];
                steps.shares.push_back(std::strtod(parts[4].c_str(), nullptr));
                const double jump = std::strtod(parts[5].c_str(), nullptr);
                steps.jumps.push_back(jump);
                if (jump > steps.worst) {
                    steps.worst = jump;
                    steps.where = "slab " + parts[1] + " step " + parts[2] + (parts.size() > 6 ? " " + parts[6] : "");
                }
            }
        }
    }
    std::printf("%d slabs, %d failed, %d with an angle under 15 degrees (least %.2f)\n", slabs, failed, thin, leastAngle);
    for (auto& entry : kinds) {
        const std::string& kind = entry.first;
        auto& steps = entry.second;
        const auto above = [](const std::vector<double>& values, double limit) {
            return static_cast<int>(std::count_if(values.begin(), values.end(), [limit](double v) { return v > limit; }));
        };
        const std::size_t count = steps.shares.size();
        std::nth_element(steps.shares.begin(), steps.shares.begin() + count / 2, steps.shares.end());
        std::printf("%-12s %zu steps, changed by a median %.3f %%, by more than 2 %% in %d; jumps above 1 %%: %d, 2 %%: %d "
                    "(%.2f %%), 3 %%: %d, 5 %%: %d; worst %.2f %% (%s)\n", kind.c_str(), count,
                    100 * steps.shares[count / 2], above(steps.shares, 0.02), above(steps.jumps, 0.01),
                    above(steps.jumps, 0.02), 100.0 * above(steps.jumps, 0.02) / double(count),
                    above(steps.jumps, 0.03), above(steps.jumps, 0.05), 100 * steps.worst, steps.where.c_str());
    }
    return failed + thin > 0 ? 1 : 0;
}

}  // namespace

int main(int argc, char** argv)
{
    if (argc >= 3 && std::string(argv[1]) == "--sum") return sum({argv + 2, argv + argc});
    if (argc < 3) {
        std::fprintf(stderr, "drag_slabs FROM COUNT [REFINEMENT], or drag_slabs --sum FILE...\n");
        return 2;
    }
    const auto refinement = static_cast<Refinement>(argc > 3 ? std::clamp(std::atoi(argv[3]), 0, 2) : 0);
    return slice(std::uint32_t(std::atoi(argv[1])), std::uint32_t(std::atoi(argv[2])), refinement);
}
