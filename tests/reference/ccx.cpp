#include "tests/reference/ccx.h"

#include <gtest/gtest.h>

#include <charconv>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string_view>

#include <stdlib.h>  // mkdtemp

namespace yardcast::reference {

namespace {

std::string contentsOf(const std::filesystem::path& file)
{
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// A folder that lives as long as this.
class ScratchFolder {
public:
    ScratchFolder()
    {
        std::string name = (std::filesystem::path(testing::TempDir()) / "yardcast-ccx-XXXXXX").string();
        if (mkdtemp(name.data())) path_ = name;
    }
    ~ScratchFolder()
    {
        std::error_code ignored;
        if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
    }
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;
    const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

std::string quoted(const std::string& path)
{
    std::string out = "'";
    for (const char c : path) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return out + "'";
}

/// Reads the numbers at the start of a line, up to the first word that is none (shells have their name at the end).
/// False where the line has words only.
bool numbersOf(std::string_view line, std::vector<double>& numbers)
{
    numbers.clear();
    const char* at = line.data();
    const char* end = at + line.size();
    while (true) {
        while (at != end && (*at == ' ' || *at == '\t' || *at == '\r')) ++at;
        if (at == end) return true;
        double number = 0.0;
        const auto [after, error] = std::from_chars(at, end, number);
        if (error != std::errc()) return !numbers.empty();
        at = after;
        // Fortran drops the letter of an exponent of three digits ("1.0-105"): nothing, for our purposes.
        if (at != end && (*at == '-' || *at == '+')) {
            number = 0.0;
            while (at != end && *at != ' ') ++at;
        }
        numbers.push_back(number);
    }
}

}  // namespace

bool ccxIsThere()
{
    static const bool there = std::system("command -v ccx >/dev/null 2>&1") == 0;
    return there;
}

CcxResults readDat(const std::string& text)
{
    enum class Block { none, displacement, stress };
    CcxResults results;
    Block block = Block::none;
    std::vector<double> numbers;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        const std::string_view line = std::string_view(text).substr(at, end - at);
        at = end + 1;
        if (line.find("displacements (") != line.npos) {
            block = Block::displacement;
            results.displacement.clear();
        } else if (line.find("stresses (") != line.npos) {
            block = Block::stress;
            results.stress.clear();
        } else if (!numbersOf(line, numbers)) {
            block = Block::none;
        } else if (block == Block::displacement && numbers.size() == 4) {
            results.displacement[static_cast<int>(numbers[0])] = {numbers[1], numbers[2], numbers[3]};
        } else if (block == Block::stress && numbers.size() == 8) {
            results.stress[static_cast<int>(numbers[0])].push_back(
                {numbers[2], numbers[3], numbers[4], numbers[5], numbers[6], numbers[7]});
        }
    }
    return results;
}

CcxRun runCcx(const std::string& deck)
{
    CcxRun run;
    const ScratchFolder folder;
    if (folder.path().empty()) {
        run.trouble = "no temporary folder";
        return run;
    }
    {
        std::ofstream out(folder.path() / "job.inp", std::ios::binary);
        out << deck;
        if (!out.flush()) {
            run.trouble = "the deck could not be written";
            return run;
        }
    }
    const std::string command =
        "cd " + quoted(folder.path().string()) + " && OMP_NUM_THREADS=1 ccx -i job >job.out 2>&1";
    const auto start = std::chrono::steady_clock::now();
    const int status = std::system(command.c_str());
    run.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    const std::string words = contentsOf(folder.path() / "job.out");
    if (status != 0) {
        run.trouble = "ccx ended with status " + std::to_string(status) + ":\n" + words;
    } else if (words.find("Job finished") == words.npos || words.find("*ERROR") != words.npos) {
        run.trouble = "ccx did not finish well:\n" + words;
    } else {
        run.results = readDat(contentsOf(folder.path() / "job.dat"));
        if (run.results.displacement.empty()) run.trouble = "ccx printed no displacements:\n" + words;
    }
    return run;
}

DeckText& DeckText::operator<<(const std::string& text)
{
    text_ += text;
    return *this;
}

DeckText& DeckText::operator<<(const char* text)
{
    text_ += text;
    return *this;
}

DeckText& DeckText::operator<<(int number)
{
    text_ += std::to_string(number);
    return *this;
}

DeckText& DeckText::operator<<(double number)
{
    // ccx reads at most 20 characters a field.
    char buffer[32];
    const auto end = std::to_chars(buffer, buffer + sizeof buffer, number, std::chars_format::scientific, 11).ptr;
    text_.append(buffer, end);
    return *this;
}

}  // namespace yardcast::reference
