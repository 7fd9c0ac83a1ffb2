#include "tests/e2e/cli_process.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <random>
#include <stdexcept>

#include <QProcess>
#include <QProcessEnvironment>
#include <QStringList>

namespace yardcast::e2e {

namespace {

/// Of a sample as it is, and nothing but what it prints: the same each time.
bool isRepeatable(const std::vector<std::string>& arguments)
{
    if (arguments.size() < 2 || std::find(arguments.begin(), arguments.end(), "-o") != arguments.end()) return false;
    const std::vector<std::string> samples = samplePaths();
    return std::find(samples.begin(), samples.end(), arguments[1]) != samples.end() &&
           std::none_of(arguments.begin() + 2, arguments.end(), [](const std::string& one) { return one[0] != '-'; });
}

Outcome runAnew(const std::vector<std::string>& arguments)
{
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    for (const char* display : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) {
        environment.remove(QString::fromLatin1(display));
    }
    environment.insert(QStringLiteral("LC_ALL"), QStringLiteral("de_DE.UTF-8"));
    process.setProcessEnvironment(environment);
    QStringList list;
    for (const std::string& argument : arguments) list << QString::fromStdString(argument);
    process.start(QStringLiteral(YARDCAST_CLI), list);
    process.closeWriteChannel();
    Outcome outcome;
    if (!process.waitForFinished(60000)) {
        process.kill();
        process.waitForFinished();
        return outcome;
    }
    outcome.ended = process.exitStatus() == QProcess::NormalExit;
    outcome.code = process.exitCode();
    outcome.out = process.readAllStandardOutput().toStdString();
    outcome.err = process.readAllStandardError().toStdString();
    return outcome;
}

}  // namespace

Outcome run(const std::vector<std::string>& arguments)
{
    // Several tests read the same answer, which takes the program seconds under the sanitizers.
    static std::map<std::vector<std::string>, Outcome> known;
    if (!isRepeatable(arguments)) return runAnew(arguments);
    const auto found = known.find(arguments);
    return found != known.end() ? found->second : known.emplace(arguments, runAnew(arguments)).first->second;
}

std::vector<std::string> samplePaths()
{
    std::vector<std::string> paths;
    for (const auto& entry : std::filesystem::directory_iterator(YARDCAST_SOURCE_DIR "/sample-projects")) {
        if (entry.path().extension() == ".yardplan") paths.push_back(entry.path().string());
    }
    std::sort(paths.begin(), paths.end());
    if (paths.size() < 3) throw std::runtime_error("the sample plans are missing");
    return paths;
}

std::string readText(const std::string& path)
{
    std::ifstream file(path, std::ios::binary);
    if (!file) throw std::runtime_error("cannot read " + path);
    return {std::istreambuf_iterator<char>(file), {}};
}

Folder::Folder()
{
    std::random_device device;
    path_ = (std::filesystem::temp_directory_path() / ("yardcast-e2e-" + std::to_string(device()))).string();
    std::filesystem::create_directories(path_);
}

Folder::~Folder()
{
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

std::string Folder::write(const std::string& name, const std::string& text) const
{
    const std::string target = path(name);
    std::ofstream file(target, std::ios::binary);
    file << text;
    if (!file.flush()) throw std::runtime_error("cannot write " + target);
    return target;
}

std::string smallPlan()
{
    return R"({
  "yardplan": 1, "title": "Small", "currency": "EUR",
  "site": {},
  "conditions": {"air_c": 20, "humidity_percent": 60, "wind_kmh": 5, "concrete_c": 20},
  "crew": {"people": 2, "lift_limit_kg": 25},
  "mixes": [{"id": "worktop",
    "bag": {"mass_kg": 25, "yield_l": 12.0, "water_l": 2.6, "cement_kg": 5.5, "max_aggregate_mm": 4},
    "strength_class": "C25/30", "cement_speed": "N",
    "extra_cement_percent": 4, "silica_fume_percent": 8, "plasticiser_percent": 1.0,
    "fibres": [{"kind": "AR glass", "kg_per_m3": 3}], "max_water_cement": 0.50, "allowance_percent": 10}],
  "parts": [
    {"id": "C1", "kind": "counter", "at": [0, 0], "turn_deg": 0, "top_mm": 490,
     "outline": [[0, 0], [600, 0], [600, 500], [0, 500]], "thickness_mm": 40, "mix": "worktop", "cast": "face_down"},
    {"id": "S1", "kind": "support", "at": [150, 20], "turn_deg": 90, "length_mm": 460, "width_mm": 60, "base_mm": 0,
     "height_mm": 450, "mix": "worktop", "cast": "flat"},
    {"id": "S2", "kind": "support", "at": [510, 20], "turn_deg": 90, "length_mm": 460, "width_mm": 60, "base_mm": 0,
     "height_mm": 450, "mix": "worktop", "cast": "flat"}
  ]
})";
}

}  // namespace yardcast::e2e
