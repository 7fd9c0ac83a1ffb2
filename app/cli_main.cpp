#include <algorithm>
#include <functional>
#include <string>
#include <vector>

#include <CLI/CLI.hpp>
#include <QCoreApplication>
#include <QLocale>

#include "app/cli_commands.h"
#include "app/cli_context.h"
#include "app/cli_cuts.h"
#include "app/cli_exports.h"
#include "app/cli_weather.h"

namespace {

using namespace yardcast::cli;

struct Command {
    const char* name;
    const char* what;
    std::function<int(const Job&)> run;
    std::function<void(CLI::App&, Job&)> options;
};

void takesPlan(CLI::App& command, Job& job)
{
    command.add_option("PLAN", job.planPath, "The plan, a .yardplan file")->required();
    command.add_option("--prices", job.pricesPath, "A price book, a .yardprices file; without it invented examples");
}

std::vector<Command> commands()
{
    return {
        {"assess", "Everything computed from the plan",  assess,
         [](CLI::App& command, Job& job) {
             takesPlan(command, job);
             command.add_flag("--json", job.json, "One JSON object instead of tables");
             command.add_flag("--no-remedies", job.noRemedies,
                              "With --json: do not try edits that may clear the findings of strength (faster)");
         }},
        {"check", "The findings; exit code 1 when one of them is a stop", check, takesPlan},
        {"list", "The shopping list", list,
         [](CLI::App& command, Job& job) {
             takesPlan(command, job);
             command.add_flag("--csv", job.csv, "Comma-separated values (RFC 4180)");
         }},
        {"print", "Sheets to print, as PDF", printSheets,
         [](CLI::App& command, Job& job) {
             takesPlan(command, job);
             command.add_option("-o,--output", job.outPath, "The PDF to write")->required();
             command.add_option("--sheets", job.sheets, "Which sheets, by name, with commas between; without it all but the templates");
             command.add_option("--part", job.part,
                                "Of sheets mould and template: only this part, casting, cutout or piece");
         }},
        {"draw", "A drawing, as SVG, or as DXF where -o ends in .dxf", draw,
         [](CLI::App& command, Job& job) {
             takesPlan(command, job);
             command.add_option("--view", job.view, "Which drawing: plan, strength, steel, mould, lift")->required();
             command.add_option("--part", job.part, "Only the part with this id");
             command.add_option("-o,--output", job.outPath, "The SVG or DXF to write")->required();
         }},
        {"model", "The kitchen as bodies for any viewer, as STL", model,
         [](CLI::App& command, Job& job) {
             takesPlan(command, job);
             command.add_option("--part", job.part, "Only the part with this id");
             command.add_flag("--formers", job.formers, "The blocks that make the cutouts in the moulds instead");
             command.add_option("-o,--output", job.outPath, "The STL to write")->required();
         }},
        {"best", "The lightest or cheapest form of a counter that holds in every case", best,
         [](CLI::App& command, Job& job) {
             takesPlan(command, job);
             command.add_option("--part", job.part, "The counter")->required();
             command.add_option("--for", job.goal, "lightest or cheapest")
                 ->required()
                 ->check(CLI::IsMember({"lightest", "cheapest"}));
             command.add_option("-o,--output", job.outPath, "A plan file to write it to");
         }},
        {"saw", "What is cut from which sheet and length: at the store, then at home", saw,
         [](CLI::App& command, Job& job) {
             takesPlan(command, job);
             command.add_flag("--json", job.json, "One JSON object instead of tables");
             command.add_flag("--csv", job.csv, "Comma-separated values (RFC 4180), a row a piece");
         }},
        {"cut", "Cuts of any list of bars or sheets, without a plan, as JSON", cut,
         [](CLI::App& command, Job& job) {
             command.add_option("LIST", job.listPath, "The list, a JSON file")->required();
         }},
        {"weather", "Evaporation from fresh concrete and its working time, as JSON", weather,
         [](CLI::App& command, Job& job) {
             command.add_option("--air", job.airC, "Air, deg C")->required();
             command.add_option("--concrete", job.concreteC, "Fresh concrete, deg C")->required();
             command.add_option("--humidity", job.humidityPercent, "Relative humidity, percent")->required();
             command.add_option("--wind", job.windKmh, "Wind over the concrete, km/h")->required();
         }},
        {"gain", "Age and strength after the temperatures of a logger, as JSON", gain,
         [](CLI::App& command, Job& job) {
             command.add_option("--class", job.strengthClass, "Strength class, such as C25/30")->required();
             command.add_option("--speed", job.cementSpeed, "Speed of the cement: S, N or R")
                 ->required()
                 ->check(CLI::IsMember({"S", "N", "R"}));
             command.add_option("--log", job.logPath, "A table of hours and deg C; a row holds until the next")
                 ->required();
         }},
        {"schema", "The JSON Schema of the plan file", schema, [](CLI::App&, Job&) {}},
    };
}

/// The word that should be a command, when it is none.
std::string unknownCommand(int argc, char** argv, const std::vector<Command>& known)
{
    if (argc < 2 || argv[1][0] == '-') return {};
    const bool isKnown = std::any_of(known.begin(), known.end(),
                                     [&](const Command& command) { return std::string(argv[1]) == command.name; });
    return isKnown ? std::string() : std::string(argv[1]);
}

std::string commandList(const std::vector<Command>& known)
{
    std::string list;
    for (const Command& command : known) list += (list.empty() ? "" : ", ") + std::string(command.name);
    return list;
}

}  // namespace

int main(int argc, char** argv)
{
    QLocale::setDefault(QLocale::c());
    const std::vector<Command> known = commands();
    if (const std::string word = unknownCommand(argc, argv, known); !word.empty()) {
        complain("there is no command \"" + word + "\". There are: " + commandList(known) + ".");
        return kUnusable;
    }

    Job job;
    int code = kDone;
    CLI::App app("Yardcast: from the plan of an outdoor kitchen to everything that the casting needs.", "yardcast-cli");
    app.set_version_flag("--version", "yardcast-cli " YARDCAST_VERSION);
    app.require_subcommand(1);
    for (const Command& command : known) {
        CLI::App* sub = app.add_subcommand(command.name, command.what);
        command.options(*sub, job);
        sub->callback([&job, &code, &command] { code = command.run(job); });
    }
    try {
        app.parse(argc, argv);
    } catch (const CLI::Success& success) {
        app.exit(success);
        return kDone;
    } catch (const CLI::ParseError& error) {
        complain(std::string(error.what()) + " (commands: " + commandList(known) + "; --help says more)");
        return kUnusable;
    }
    return code;
}
