#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kOwnLimit = WORDS("This plan's own limit.");
constexpr const char* kEstimate = WORDS("Estimate, common practice, no source.");
constexpr const char* kFormat = WORDS("The price book's format, version 1.");
constexpr const char* kCutList = WORDS("The format of lists of cuts.");

}  // namespace

const std::vector<FindingSentence> kPurchaseSentences{
    {"over_budget",
     WORDS("The shopping list comes to {total:money}: {amount:money} more than the limit of {limit:money}."), kOwnLimit,
     WORDS("Make a part smaller or thinner, use boards and bars you have (\"owned\"), or raise the limit.")},
    {"budget_tight",
     WORDS("The shopping list comes to {total:money} and leaves {amount:money} of the limit of {limit:money}: less "
           "than a tenth."),
     WORDS("Common practice keeps 10 to 15 % in hand, no source."),
     WORDS("Keep something in hand for a spare bag, a broken disc and a second trip.")},
    {"saves_against_quote",
     WORDS("The materials come to {total:money}: {amount:money} less than the quote of {quote:money}. Your own hours, "
           "hired tools and licensed trades are not in it."),
     WORDS("This plan's quote."), ""},
    {"dearer_than_quote",
     WORDS("The materials alone come to {total:money}: {amount:money} more than the quote of {quote:money}."),
     WORDS("This plan's quote."), WORDS("Check the prices, or take the quote.")},
    {"no_price", WORDS("There is no price for {item:item}: the {amount:amount} needed are not in the total."),
     WORDS("The price book and this plan's own prices."), WORDS("Add a price of your own for \"{item}\" to the plan.")},
    {"longer_than_stock",
     WORDS("{subject}: a piece of {piece_mm} is needed, but {item:item} comes in lengths up to {stock_mm}."),
     WORDS("The price book and this plan's own prices."),
     WORDS("Divide the piece, lap two bars, or add a longer length to your own prices.")},
    {"bag_price_reckoned",
     WORDS("There is no price for a dry bag of {bag_kg}: it was reckoned from the price of a bag of {from_kg}."),
     kEstimate, WORDS("Add your own price for a bag of {bag_kg} of \"dry_mix\" to the plan.")},
    {"currency_differs",
     WORDS("The price book is in {book} and the plan in {plan}: nothing is converted, and no price of the book is "
           "used."),
     WORDS("No exchange rate is known here."),
     WORDS("Use a price book in {plan}, or set the plan's currency to {book}.")},
    {"example_prices", WORDS("The prices are invented examples: the total says how the sum is made up, not what your "
                             "store asks."),
     WORDS("The example price book that comes with the program."),
     WORDS("Type in the prices of your own store, or load a price book.")},
    {"owned_unknown",
     WORDS("The plan says that some \"{item}\" is already there, but nothing on the list is called so."),
     WORDS("The item keys of the price book."), WORDS("Use the item's key from the price book.")},
    {"piece_larger_than_sheet", WORDS("{item}: {count} pieces find no sheet that is large enough; the largest, {piece}, is "
                                      "{length_mm} by {width_mm}."),
     WORDS("The sheets of the price book, less trimming and saw cuts."),
     WORDS("Add a larger sheet to the price book, or part the casting by a joint.")},
    {"price_unknown", WORDS("The plan has its own price for \"{item}\", but nothing on the list is called so."),
     WORDS("The item keys of the price book."), WORDS("Use the item's key from the price book.")},
};

const std::vector<FindingSentence> kPriceFileSentences{
    {"prices_not_json", WORDS("The price book cannot be read as JSON at line {line}, column {column}."),
     WORDS("RFC 8259."), WORDS("Correct the text there, or export the price book again.")},
    {"prices_too_large", WORDS("The price book is larger than {expected} bytes."), kFormat,
     WORDS("Choose the right file.")},
    {"prices_newer", WORDS("The price book is of a newer version than {expected}."), kFormat,
     WORDS("Use a newer version of this program.")},
    {"prices_missing", WORDS("In the price book something is missing here; right would be: {expected}."), kFormat,
     WORDS("Add it.")},
    {"prices_wrong", WORDS("In the price book the value here cannot be used; right would be: {expected}."), kFormat,
     WORDS("Correct it.")},
    {"prices_twice", WORDS("In the price book the item \"{expected}\" occurs twice."), kFormat,
     WORDS("Join its packs in one item.")},
    {"cuts_missing", WORDS("In the list of cuts something is missing here; right would be: {expected}."), kCutList,
     WORDS("Add it.")},
    {"cuts_wrong", WORDS("In the list of cuts the value here cannot be used; right would be: {expected}."), kCutList,
     WORDS("Correct it.")},
    {"cuts_too_many", WORDS("The list of cuts has more than {limit} pieces, or more than {kinds_limit} different ones."),
     kCutList, WORDS("Divide it.")},
};

}  // namespace yardcast::ui
