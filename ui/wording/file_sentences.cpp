#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kJson = WORDS("RFC 8259 (JSON).");
constexpr const char* kFormat = WORDS("The plan file's format, version 1.");

}  // namespace

const std::vector<FindingSentence> kFileSentences{
    {"json_syntax", WORDS("The text is no JSON at line {line}, column {column}."), kJson,
     WORDS("Look there for a missing comma, bracket or quotation mark.")},
    {"file_empty", WORDS("There is nothing in the text: no plan, no list."), kJson,
     WORDS("Take a copy of it, or begin anew; a program that could not write to the end leaves such a file.")},
    {"not_utf8", WORDS("At line {line}, column {column} there is a byte that is no UTF-8."), WORDS("RFC 3629 (UTF-8)."),
     WORDS("Save the file as UTF-8.")},
    {"number_not_finite", WORDS("At line {line}, column {column} there is a number too large to compute with."), kJson,
     WORDS("Write a length in mm.")},
    {"too_large", WORDS("The file has {bytes} bytes; more than {limit_bytes} are not read."), kFormat,
     WORDS("Choose the right file.")},
    {"too_deep", WORDS("Brackets are nested more than {limit} deep."), kFormat, WORDS("Choose the right file.")},
    {"too_many_values", WORDS("The file holds more than {limit} values."), kFormat, WORDS("Choose the right file.")},
    {"key_twice", WORDS("The key \"{key}\" stands twice in one object."), kJson, WORDS("Remove one of the two.")},
    {"not_a_plan", WORDS("This is no plan: a plan is a JSON object that begins with \"yardplan\": 1."), kFormat,
     WORDS("Choose a .yardplan file.")},
    {"newer_version", WORDS("The plan is of version {version}; this program knows up to {known_version}."), kFormat,
     WORDS("Use a newer version of this program.")},
    {"missing_key", WORDS("The key \"{key}\" is missing."), kFormat, WORDS("Add it: {expected:type}.")},
    {"wrong_type", WORDS("The value here is {found:type}, which cannot be used."), kFormat,
     WORDS("Right would be {expected:type}.")},
    {"unknown_word", WORDS("The word \"{found}\" is not known here."), kFormat,
     WORDS("Right would be one of: {expected}.")},
    {"id_empty", WORDS("The id is empty."), kFormat, WORDS("Give it an id of its own, such as \"C1\".")},
    {"id_twice", WORDS("The id \"{id}\" is used twice."), kFormat, WORDS("Give each an id of its own.")},
    {"patch_fails", WORDS("The change no longer fits the plan."), WORDS("RFC 6902 (JSON Patch)."),
     WORDS("Wait until it has been worked out for the plan as it is now.")},
    {"more_problems", WORDS("{count} more problems are not listed."), kFormat, WORDS("Mend those above first.")},
};

}  // namespace yardcast::ui
