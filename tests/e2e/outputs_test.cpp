#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>

#include <QByteArray>
#include <QXmlStreamReader>

#include <nlohmann/json.hpp>

#include "tests/e2e/cli_process.h"

namespace yardcast::e2e {
namespace {

using Json = nlohmann::json;
using testing::HasSubstr;
using testing::StartsWith;
using Row = std::vector<std::string>;

/// RFC 4180, strictly: CRLF after every record, quotes only around whole fields.
std::vector<Row> parsedCsv(const std::string& text)
{
    std::vector<Row> rows;
    Row row;
    std::size_t i = 0;
    while (i < text.size()) {
        std::string field;
        if (text[i] == '"') {
            for (++i; i < text.size(); ++i) {
                if (text[i] == '"' && i + 1 < text.size() && text[i + 1] == '"') {
                    field += '"';
                    ++i;
                } else if (text[i] == '"') {
                    break;
                } else {
                    field += text[i];
                }
            }
            ++i;
        } else {
            while (i < text.size() && text[i] != ',' && text[i] != '\r') {
                if (text[i] == '"' || text[i] == '\n') ADD_FAILURE() << "bare quote or newline";
                field += text[i++];
            }
        }
        row.push_back(field);
        if (i < text.size() && text[i] == ',') {
            ++i;
            if (i == text.size()) ADD_FAILURE() << "ends in a comma";
        } else {
            EXPECT_EQ(text.substr(i, 2), "\r\n");
            i += 2;
            rows.push_back(std::move(row));
            row.clear();
        }
    }
    return rows;
}

std::size_t column(const std::vector<Row>& rows, const std::string& name)
{
    for (std::size_t i = 0; i < rows[0].size(); ++i) {
        if (rows[0][i] == name) return i;
    }
    ADD_FAILURE() << "no column " << name;
    return 0;
}

TEST(List, CsvAddsUpToTheTotal)
{
    for (const std::string& path : samplePaths()) {
        const Outcome csv = run({"list", path, "--csv"});
        ASSERT_EQ(csv.code, 0) << csv.err;
        const std::vector<Row> rows = parsedCsv(csv.out);
        const Json shopping = Json::parse(run({"assess", path, "--json", "--no-remedies"}).out).at("shopping");
        ASSERT_GE(rows.size(), shopping.at("lines").size() + 1);
        const std::size_t price = column(rows, "price");
        const std::size_t packs = column(rows, "packs");
        const std::size_t packPrice = column(rows, "pack_price");
        std::int64_t total = 0;
        for (std::size_t i = 1; i < rows.size(); ++i) {
            ASSERT_EQ(rows[i].size(), rows[0].size());
            for (const std::size_t money : {price, packPrice}) {
                EXPECT_THAT(rows[i][money], testing::MatchesRegex("([0-9]+[.][0-9][0-9])?"));
            }
            if (!rows[i][price].empty()) total += std::llround(std::stod(rows[i][price]) * 100);
            if (!rows[i][packPrice].empty()) {
                EXPECT_EQ(std::llround(std::stod(rows[i][packPrice]) * 100) * std::stoi(rows[i][packs]),
                          std::llround(std::stod(rows[i][price]) * 100));
            }
        }
        EXPECT_EQ(total, shopping.at("total_minor").get<std::int64_t>());
    }
}

TEST(List, IsGroupedByAisleAndNamesThePrices)
{
    const Outcome list = run({"list", samplePaths()[0]});
    ASSERT_EQ(list.code, 0) << list.err;
    const auto concrete = list.out.find("\nConcrete\n");
    const auto boards = list.out.find("\nBoards and foam\n");
    const auto safety = list.out.find("\nSafety\n");
    ASSERT_NE(concrete, std::string::npos);
    ASSERT_NE(boards, std::string::npos);
    ASSERT_NE(safety, std::string::npos);
    EXPECT_LT(concrete, boards);
    EXPECT_LT(boards, safety);
    EXPECT_THAT(list.out, HasSubstr("invented"));
    EXPECT_THAT(list.out, HasSubstr("Total "));
}

TEST(List, AnotherPriceBookCounts)
{
    const Folder folder;
    const std::string plan = folder.write("x.yardplan", smallPlan());
    const std::string prices = folder.write("x.yardprices", R"({"yardprices": 1, "title": "Ours", "currency": "EUR",
        "items": [{"item": "dry_mix", "name": "Sack, \"fine\", grey", "unit": "kg", "group": "concrete",
                   "packs": [{"size": 25, "price": 1000.00}]}]})");
    const Outcome csv = run({"list", plan, "--csv", "--prices", prices});
    ASSERT_EQ(csv.code, 0) << csv.err;
    const std::vector<Row> rows = parsedCsv(csv.out);
    bool seen = false;
    for (const Row& row : rows) {
        if (row[column(rows, "item")] != "dry_mix") continue;
        seen = true;
        EXPECT_EQ(row[column(rows, "name")], "Sack, \"fine\", grey");
        EXPECT_EQ(row[column(rows, "pack_price")], "1000.00");
    }
    EXPECT_TRUE(seen);
}

TEST(Tables, FiguresHaveADecimalPointInAnyLocale)
{
    for (const std::string& path : samplePaths()) {
        const Outcome outcome = run({"assess", path});
        ASSERT_EQ(outcome.code, 0) << outcome.err;
        EXPECT_THAT(outcome.out, testing::ContainsRegex("[0-9]\\.[0-9] kg"));
        EXPECT_THAT(outcome.out, testing::Not(testing::ContainsRegex("[0-9],[0-9]")));
    }
}

TEST(Print, WritesAPdfWithoutADisplay)
{
    const Folder folder;
    const std::string pdf = folder.path("pack.pdf");
    const Outcome outcome = run({"print", samplePaths()[0], "-o", pdf});
    ASSERT_TRUE(outcome.ended);
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_EQ(outcome.out + outcome.err, "");
    const std::string text = readText(pdf);
    EXPECT_THAT(text, StartsWith("%PDF-"));
    EXPECT_THAT(text, HasSubstr("%%EOF"));
    EXPECT_GT(text.size(), 5000u);
}

TEST(Print, UnknownSheetsAndPlacesThatCannotBeWrittenAreRefused)
{
    const Folder folder;
    const Outcome sheet = run({"print", samplePaths()[0], "-o", folder.path("x.pdf"), "--sheets", "poster"});
    EXPECT_EQ(sheet.code, 2);
    EXPECT_THAT(sheet.err, HasSubstr("poster"));
    EXPECT_FALSE(std::filesystem::exists(folder.path("x.pdf")));
    const Outcome place = run({"print", samplePaths()[0], "-o", folder.path("no/such/folder/x.pdf")});
    EXPECT_EQ(place.code, 2);
    EXPECT_NE(place.err, "");
}

TEST(Print, NeverWritesOverThePlanItIsMadeFrom)
{
    const Folder folder;
    const std::string plan = folder.write("kitchen.yardplan", smallPlan());
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"print", plan, "-o", plan}, {"draw", plan, "--view", "plan", "-o", plan}}) {
        const Outcome outcome = run(arguments);
        EXPECT_EQ(outcome.code, 2);
        EXPECT_THAT(outcome.err, HasSubstr("the plan itself"));
        EXPECT_EQ(readText(plan), smallPlan());
    }
}

TEST(List, SaysWhichPartsItLeavesOut)
{
    const Folder folder;
    std::string text = smallPlan();
    const std::string sound = "\"thickness_mm\": 40";
    ASSERT_NE(text.find(sound), std::string::npos);
    text.replace(text.find(sound), sound.size(), "\"thickness_mm\": -40");
    const std::string whole = folder.write("whole.yardplan", smallPlan());
    EXPECT_THAT(run({"list", whole}).out, testing::Not(HasSubstr("Left out")));
    const std::string broken = folder.write("broken.yardplan", text);
    const Outcome outcome = run({"list", broken});
    EXPECT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_THAT(outcome.out, HasSubstr("Left out"));
    EXPECT_THAT(run({"assess", broken}).out, HasSubstr("Left out"));
}

TEST(Draw, WritesAnSvgThatIsXml)
{
    const Folder folder;
    const std::string svg = folder.path("plan.svg");
    const Outcome outcome = run({"draw", samplePaths()[0], "--view", "plan", "-o", svg});
    ASSERT_TRUE(outcome.ended);
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_EQ(outcome.out + outcome.err, "");
    QXmlStreamReader xml(QByteArray::fromStdString(readText(svg)));
    int elements = 0;
    QString root;
    while (!xml.atEnd()) {
        if (xml.readNext() != QXmlStreamReader::StartElement) continue;
        if (elements++ == 0) root = xml.name().toString();
    }
    EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
    EXPECT_EQ(root, QStringLiteral("svg"));
    EXPECT_GT(elements, 20);
}

TEST(Draw, WritesADxfWhereTheNameAsksForIt)
{
    const Folder folder;
    const std::string dxf = folder.path("plan.DXF");
    const Outcome outcome = run({"draw", samplePaths()[0], "--view", "plan", "-o", dxf});
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    EXPECT_EQ(outcome.out + outcome.err, "");
    const std::string text = readText(dxf);
    for (const char* piece : {"  0\nSECTION\n  2\nHEADER\n", "$INSUNITS\n 70\n4\n", "Rims and ribs", "  0\nEOF\n"})
        EXPECT_NE(text.find(piece), std::string::npos) << piece;
    const std::string moulds = folder.path("moulds.dxf");
    ASSERT_EQ(run({"draw", samplePaths()[0], "--view", "mould", "-o", moulds}).code, 0);
    EXPECT_THAT(readText(moulds), HasSubstr("MIRRORED"));
    EXPECT_THAT(readText(moulds), HasSubstr("Base boards"));
    EXPECT_EQ(run({"draw", samplePaths()[0], "--view", "lift", "-o", dxf}).code, 2);
    EXPECT_EQ(run({"draw", samplePaths()[0], "--view", "plan", "--part", "nobody", "-o", dxf}).code, 2);
    EXPECT_TRUE(readText(dxf) == text);
}

TEST(Saw, SaysWhatOldBasesBecomeAndAssessWeighsFewerMoulds)
{
    const std::string large = samplePaths()[2];
    EXPECT_THAT(run({"saw", large}).out, testing::ContainsRegex("Day [0-9]+: saw the old base [A-Z0-9a-z.-]+ of "));
    const Json mould = Json::parse(run({"assess", large, "--json", "--no-remedies"}).out).at("mould");
    ASSERT_FALSE(mould.at("sharing").empty());
    const Json& option = mould.at("sharing").at(0).at("options").at(0);
    for (const char* key : {"moulds", "uses", "worn", "days", "more_days", "saves", "saves_m2"})
        EXPECT_TRUE(option.contains(key)) << key;
    EXPECT_FALSE(mould.at("later_boards").at("cuts").empty());
}

TEST(Model, WritesTheKitchenOrOnePartAsStl)
{
    const Folder folder;
    const std::string all = folder.path("kitchen.stl");
    const std::string one = folder.path("one.stl");
    const Outcome outcome = run({"model", samplePaths()[0], "-o", all});
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    const auto triangles = [](const std::string& bytes) { return (bytes.size() - 84) / 50.0; };
    const std::string bytes = readText(all);
    EXPECT_THAT(bytes, StartsWith("Yardcast"));
    EXPECT_EQ(triangles(bytes), std::floor(triangles(bytes)));
    const Json first = Json::parse(run({"assess", samplePaths()[0], "--json", "--no-remedies"}).out).at("castings").at(0);
    ASSERT_EQ(run({"model", samplePaths()[0], "--part", first.at("part"), "-o", one}).code, 0);
    EXPECT_LT(triangles(readText(one)), triangles(bytes));
    const std::string formers = folder.path("formers.stl");
    ASSERT_EQ(run({"model", samplePaths()[0], "--formers", "-o", formers}).code, 0);
    EXPECT_GE(triangles(readText(formers)), 12);
    EXPECT_EQ(run({"model", samplePaths()[0], "-o", folder.path("kitchen.obj")}).code, 2);
    EXPECT_EQ(run({"model", samplePaths()[0], "-o", folder.path("no/such/kitchen.stl")}).code, 2);
}

/// All text of a drawing, its no-break spaces as spaces.
std::string svgText(const std::string& path)
{
    QXmlStreamReader xml(QByteArray::fromStdString(readText(path)));
    QString text;
    while (!xml.atEnd()) {
        if (xml.readNext() == QXmlStreamReader::Characters) text += xml.text().toString() + QLatin1Char(' ');
    }
    EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
    return text.replace(QChar(0x00A0), QLatin1Char(' ')).simplified().toStdString();
}

TEST(Draw, SteelSaysItsMarksAndHowFarFromTheMouldBaseItLies)
{
    const Folder folder;
    const std::string svg = folder.path("steel.svg");
    for (const std::string& path : samplePaths()) {
        const Outcome whole = run({"draw", path, "--view", "steel", "-o", svg});
        ASSERT_EQ(whole.code, 0) << whole.err;
        EXPECT_THAT(svgText(svg), HasSubstr("as it stands"));
        const Json steel = Json::parse(run({"assess", path, "--json", "--no-remedies"}).out).at("steel");
        const Json& layout = steel.at("layouts").at(0);
        const std::string part = layout.at("part");
        const Outcome one = run({"draw", path, "--view", "steel", "--part", part, "-o", svg});
        ASSERT_EQ(one.code, 0) << one.err;
        const std::string text = svgText(svg);
        EXPECT_THAT(text, HasSubstr("mesh 1"));
        EXPECT_THAT(text, HasSubstr("bar 1"));
        EXPECT_THAT(text, HasSubstr("above the mould base"));
        EXPECT_THAT(text, HasSubstr("as it stands"));
    }
}

TEST(Draw, LiftSaysWhatIsLiftedByWhom)
{
    const Folder folder;
    const std::string svg = folder.path("lift.svg");
    const std::string plan = folder.write("small.yardplan", smallPlan());
    const Json lift = Json::parse(run({"assess", plan, "--json", "--no-remedies"}).out).at("handling").at(0);
    double sum = 0.0;
    for (const Json& load : lift.at("loads")) sum += load.at("kg").get<double>();
    EXPECT_GE(lift.at("loads").size(), 2U);
    EXPECT_NEAR(sum, lift.at("mass_kg").get<double>(), 1e-3) << "each figure is written to a millionth";
    const std::string casting = lift.at("casting");
    ASSERT_EQ(run({"draw", plan, "--view", "lift", "-o", svg}).code, 0);
    EXPECT_THAT(svgText(svg), HasSubstr("as it stands"));
    const Outcome one = run({"draw", plan, "--view", "lift", "--part", casting.substr(0, casting.find('.')), "-o", svg});
    ASSERT_EQ(one.code, 0) << one.err;
    EXPECT_THAT(svgText(svg), HasSubstr("bears at most"));
}

TEST(Draw, StrengthSaysCaseAgeAndUse)
{
    const Folder folder;
    const std::string svg = folder.path("strength.svg");
    const std::string plan = folder.write("small.yardplan", smallPlan());
    for (const std::vector<std::string>& part : {std::vector<std::string>{}, {"--part", "C1"}}) {
        std::vector<std::string> arguments{"draw", plan, "--view", "strength", "-o", svg};
        arguments.insert(arguments.end(), part.begin(), part.end());
        const Outcome outcome = run(arguments);
        ASSERT_EQ(outcome.code, 0) << outcome.err;
        const std::string text = svgText(svg);
        EXPECT_THAT(text, HasSubstr("use "));
        EXPECT_THAT(text, testing::ContainsRegex("at [0-9]+ (h|days)"));
        EXPECT_THAT(text, HasSubstr("outside the code's scope"));
    }
}

TEST(Draw, APartWithoutSteelSaysSo)
{
    const Folder folder;
    const std::string svg = folder.path("steel.svg");
    const std::string plan = folder.write("small.yardplan", smallPlan());
    ASSERT_EQ(run({"draw", plan, "--view", "steel", "--part", "S1", "-o", svg}).code, 0);
    EXPECT_THAT(svgText(svg), HasSubstr("no mesh and no bars"));
}

TEST(Draw, UnknownViewsAndPartsAreRefused)
{
    const Folder folder;
    const Outcome view = run({"draw", samplePaths()[0], "--view", "inside out", "-o", folder.path("x.svg")});
    EXPECT_EQ(view.code, 2);
    EXPECT_THAT(view.err, HasSubstr("plan"));
    const Outcome part =
        run({"draw", samplePaths()[0], "--view", "plan", "--part", "Z99", "-o", folder.path("x.svg")});
    EXPECT_EQ(part.code, 2);
    EXPECT_THAT(part.err, HasSubstr("Z99"));
    EXPECT_FALSE(std::filesystem::exists(folder.path("x.svg")));
}

TEST(Draw, AFileInTheWayIsReplacedOnlyByAWholeOne)
{
    const Folder folder;
    const std::string svg = folder.write("plan.svg", "old");
    EXPECT_EQ(run({"draw", folder.path("none.yardplan"), "--view", "plan", "-o", svg}).code, 2);
    EXPECT_EQ(readText(svg), "old");
    EXPECT_EQ(run({"draw", samplePaths()[0], "--view", "plan", "-o", svg}).code, 0);
    EXPECT_NE(readText(svg), "old");
}

}  // namespace
}  // namespace yardcast::e2e
