#include "tests/samples/sample_files.h"

#include <stdexcept>

#include "core/io/plan_file.h"

namespace yardcast::test {

std::string textOf(const std::string& path)
{
    FileText file = readFile(std::string(YARDCAST_SOURCE_DIR "/") + path);
    if (!file.text) throw std::runtime_error(path + ": " + file.error);
    return std::move(*file.text);
}

std::string sampleText(const std::string& name) { return textOf("sample-projects/" + name + ".yardplan"); }

Plan sample(const std::string& name)
{
    PlanReading reading = readPlan(sampleText(name));
    if (!reading.plan) throw std::runtime_error(name + ": " + reading.problems.at(0).code);
    return std::move(*reading.plan);
}

}  // namespace yardcast::test
