#include "app/cli_exports.h"

#include <algorithm>
#include <cctype>
#include <filesystem>

#include "core/io/plan_file.h"
#include "ui/wording/open_formats.h"

namespace yardcast::cli {

namespace {

/// Header and count.
constexpr std::size_t kEmptyStlBytes = 84;

bool endsWith(const std::string& path, const std::string& ending)
{
    if (path.size() < ending.size()) return false;
    return std::equal(ending.begin(), ending.end(), path.end() - std::ptrdiff_t(ending.size()),
                      [](char a, char b) { return a == std::tolower(static_cast<unsigned char>(b)); });
}

std::vector<CastingPtr> castingsIn(const Assessment& assessment)
{
    std::vector<CastingPtr> castings;
    for (const PlacedCasting& placed : assessment.castings) castings.push_back(placed.casting);
    return castings;
}

int written(const Job& job, const std::string& bytes)
{
    const std::string error = writeFileAtomically(std::filesystem::path(job.outPath), bytes);
    if (error.empty()) return kDone;
    complain(job.outPath + ": cannot be written: " + error);
    return kUnusable;
}

}  // namespace

bool wantsDxf(const Job& job) { return endsWith(job.outPath, ".dxf"); }

int drawDxf(const Job& job)
{
    if (job.view != "plan" && job.view != "mould") {
        complain("there is no view \"" + job.view + "\" as DXF. There are: plan, mould. As SVG there are more.");
        return kUnusable;
    }
    const std::optional<Loaded> loaded = load(job);
    if (!loaded || !knowsPart(*loaded, job.part)) return kUnusable;
    if (job.view == "mould") return written(job, ui::mouldDxf(loaded->assessment->moulds, job.part));
    return written(job, ui::planDxf(loaded->plan, castingsIn(*loaded->assessment), job.part));
}

int model(const Job& job)
{
    if (wouldOverwritePlan(job)) return kUnusable;
    if (!endsWith(job.outPath, ".stl")) {
        complain(job.outPath + ": a model is an STL file; give -o a name that ends in .stl.");
        return kUnusable;
    }
    const std::optional<Loaded> loaded = load(job);
    if (!loaded || !knowsPart(*loaded, job.part)) return kUnusable;
    if (job.formers) {
        const std::string bytes = ui::formersStl(loaded->assessment->moulds, job.part);
        if (bytes.size() > kEmptyStlBytes) return written(job, bytes);
        complain("there is no cutout, so there are no formers.");
        return kUnusable;
    }
    return written(job, ui::kitchenStl(loaded->plan, castingsIn(*loaded->assessment), job.part));
}

}  // namespace yardcast::cli
