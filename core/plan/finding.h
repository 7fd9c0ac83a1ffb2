#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace yardcast {

enum class Severity { note, caution, stop };

/// A number (in the unit its key names) or a word that the sentence of a finding is filled with.
using FindingValue = std::variant<double, std::string>;
using FindingValues = std::map<std::string, FindingValue>;

/// The number under a key; nothing where there is none.
inline std::optional<double> numberAt(const FindingValues& values, const std::string& key)
{
    const auto found = values.find(key);
    const auto* number = found == values.end() ? nullptr : std::get_if<double>(&found->second);
    return number ? std::optional(*number) : std::nullopt;
}
/// The word under a key; empty where there is none.
inline std::string wordAt(const FindingValues& values, const std::string& key)
{
    const auto found = values.find(key);
    const auto* word = found == values.end() ? nullptr : std::get_if<std::string>(&found->second);
    return word ? *word : std::string();
}

/// What would help. `code` and `values` make the sentence; `edit` is an RFC 6902 JSON Patch as text, or empty
/// where no edit is offered (the remedy is advice).
struct Remedy {
    std::string code;
    std::map<std::string, FindingValue> values;
    std::string edit;
    std::string effect;

    friend bool operator==(const Remedy&, const Remedy&) = default;
};

/// What the program has to say about the plan. Core states it as a code with values; `ui/wording` turns it into
/// a sentence, its source and its help, so that core decides no wording.
struct Finding {
    std::string code;                             ///< e.g. "cutout_outside"; every code has a sentence in ui/wording
    Severity severity = Severity::note;
    std::vector<std::string> subjects;            ///< ids of parts, castings, mixes; the first is the main one
    std::string pointer;                          ///< RFC 6901 JSON pointer into the plan file, or empty
    std::map<std::string, FindingValue> values;   ///< e.g. {"strip_mm", 32.0}
    std::vector<Remedy> remedies;

    friend bool operator==(const Finding&, const Finding&) = default;
};

}  // namespace yardcast
