#pragma once

#include <array>
#include <string>
#include <unordered_map>
#include <vector>

/// The general finite element solver calculix-ccx, run as a process on input decks that the tests write.
namespace yardcast::reference {

/// What ccx printed: displacements by node (mm), stresses by element and integration point
/// (xx, yy, zz, xy, xz, yz; MPa). Of the last step only.
struct CcxResults {
    std::unordered_map<int, std::array<double, 3>> displacement;
    std::unordered_map<int, std::vector<std::array<double, 6>>> stress;
};

struct CcxRun {
    std::string trouble;  ///< empty when ccx finished and printed results
    double seconds = 0.0;  ///< of the process, start to end, by the wall clock
    CcxResults results;
};

/// True when a program of that name can be run.
bool ccxIsThere();
inline constexpr const char* kNoCcx = "calculix-ccx is not installed (Debian package calculix-ccx)";

/// Runs the deck in a folder of its own that is taken away again, on one thread. ccx leaves with status 0 whatever
/// happens, so its words are read: "Job finished", no "*ERROR", and results in the .dat file.
CcxRun runCcx(const std::string& deck);

/// The results in the text of a .dat file.
CcxResults readDat(const std::string& text);

/// Builds decks line by line; numbers do not depend on the locale.
class DeckText {
public:
    DeckText& operator<<(const std::string& text);
    DeckText& operator<<(const char* text);
    DeckText& operator<<(int number);
    DeckText& operator<<(double number);
    const std::string& text() const { return text_; }

private:
    std::string text_;
};

}  // namespace yardcast::reference
