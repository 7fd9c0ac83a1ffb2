#include "ui/wording/finding_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <unordered_map>

#include <QStringList>

#include "core/handling/lifting.h"
#include "ui/wording/figures.h"
#include "ui/wording/finding_table.h"
#include "ui/wording/names.h"
#include "ui/wording/pour_names.h"
#include "ui/wording/readiness_names.h"
#include "ui/wording/remedy_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

using Values = FindingValues;

const std::unordered_map<std::string, const FindingSentence*>& sentences()
{
    static const auto table = [] {
        std::unordered_map<std::string, const FindingSentence*> all;
        for (const auto* list : {&kPurchaseSentences, &kPriceFileSentences, &kFileSentences, &kPlanSentences,
                                 &kDisciplineSentences, &kMixSentences, &kLiftingSentences, &kHandlingSentences,
                                 &kInUseSentences, &kSteelWorthSentences, &kWeatherSentences, &kPourSentences,
                                 &kReadinessSentences, &kMouldSentences}) {
            for (const FindingSentence& sentence : *list) all.emplace(sentence.code, &sentence);
        }
        return all;
    }();
    return table;
}

const FindingSentence* sentenceFor(const std::string& code)
{
    const auto found = sentences().find(code);
    return found == sentences().end() ? nullptr : found->second;
}

/// A number by the unit that ends its key.
QString byEnding(const QString& key, double value)
{
    if (key.endsWith(QLatin1String("_mm"))) return lengthText(value);
    if (key.endsWith(QLatin1String("_nm"))) {
        return shortNumberText(value, 0) + QChar(0x00A0) + QStringLiteral("Nm/m");
    }
    if (key.endsWith(QLatin1String("_kg"))) return massText(value);
    if (key.endsWith(QLatin1String("_l"))) return volumeText(value);
    if (key.endsWith(QLatin1String("_m2"))) return areaText(value);
    if (key.endsWith(QLatin1String("_percent"))) return shortNumberText(value, 1) + QChar(0x00A0) + QLatin1Char('%');
    if (key.endsWith(QLatin1String("_h"))) return shortNumberText(value, 1) + QChar(0x00A0) + QLatin1Char('h');
    if (key.endsWith(QLatin1String("_c"))) {
        return shortNumberText(value, 1) + QChar(0x00A0) + QChar(0x00B0) + QLatin1Char('C');
    }
    if (key.endsWith(QLatin1String("_min"))) return minutesText(value);
    if (key.endsWith(QLatin1String("_clock"))) return clockText(value);
    if (key.endsWith(QLatin1String("_n"))) return shortNumberText(value, 0) + QChar(0x00A0) + QLatin1Char('N');
    if (key.endsWith(QLatin1String("_kpa"))) {
        return shortNumberText(value, 1) + QChar(0x00A0) + QStringLiteral("kN/m") + QChar(0x00B2);
    }
    return shortNumberText(value, 3);
}

/// What a value looks like in the file.
QString typeWord(const std::string& word)
{
    if (word == "number") return Words::tr("a number");
    if (word == "whole_number") return Words::tr("a whole number");
    if (word == "text") return Words::tr("text in quotation marks");
    if (word == "yes_no") return Words::tr("true or false");
    if (word == "pair") return Words::tr("two numbers in brackets, [x, y]");
    if (word == "list") return Words::tr("a list in brackets, [...]");
    if (word == "object") return Words::tr("an object in braces, {...}");
    if (word == "nothing") return Words::tr("null");
    return QString::fromStdString(word);
}

/// How many people a lift takes; 0 stands for more than can get their hands on it.
QString peopleText(double count)
{
    if (count < 1.0) {
        return Words::tr("it takes more than %1 people: more than can get their hands on it").arg(kMostPeople);
    }
    return Words::tr("it takes %1 people").arg(static_cast<int>(count));
}

/// "lift_limit_kg" -> "lift limit"; a bare index is a coordinate or a member of a list.
QString keyWord(const std::string& key)
{
    const QString text = QString::fromStdString(key);
    bool isIndex = false;
    const int index = text.toInt(&isIndex);
    if (isIndex) return index == 0 ? Words::tr("its first number") : Words::tr("its second number");
    QStringList words = text.split(QLatin1Char('_'));
    static const QStringList units{QStringLiteral("mm"),  QStringLiteral("kg"), QStringLiteral("l"),
                                   QStringLiteral("c"),   QStringLiteral("h"),  QStringLiteral("percent"),
                                   QStringLiteral("deg"), QStringLiteral("kmh"), QStringLiteral("kpa"),
                                   QStringLiteral("n"),   QStringLiteral("mpa")};
    if (key == "bed_n_mm3") return Words::tr("the stiffness of the bed");
    if (words.size() > 1 && units.contains(words.last())) words.removeLast();
    return words.join(QLatin1Char(' '));
}

/// A number with the unit that stands beside it in the finding, by the words of validation.
QString inUnit(double value, const std::string& unit)
{
    const QString number = shortNumberText(value, 2);
    if (unit == "mm") return lengthText(value);
    if (unit == "percent") return number + QChar(0x00A0) + QLatin1Char('%');
    if (unit == "c") return number + QChar(0x00A0) + QChar(0x00B0) + QLatin1Char('C');
    if (unit == "deg") return number + QChar(0x00B0);
    if (unit == "kmh") return number + QChar(0x00A0) + QStringLiteral("km/h");
    if (unit == "kg_m3") return number + QChar(0x00A0) + QStringLiteral("kg/m") + QChar(0x00B3);
    if (unit == "n") return number + QChar(0x00A0) + QLatin1Char('N');
    if (unit == "kpa") return number + QChar(0x00A0) + QStringLiteral("kN/m") + QChar(0x00B2);
    if (unit == "mpa") return number + QChar(0x00A0) + QStringLiteral("MPa");
    if (unit == "n_mm3") return number + QChar(0x00A0) + QStringLiteral("N/mm") + QChar(0x00B3);
    if (unit == "minutes") return number + QChar(0x00A0) + QStringLiteral("min");
    if (unit == "kg" || unit == "l" || unit == "h") return number + QChar(0x00A0) + QString::fromStdString(unit);
    return number;
}

QString rimlessWord(const std::string& what)
{
    if (what == "filler") return Words::tr("the filler has no depth");
    if (what == "ribs") return Words::tr("the ribs have no depth");
    if (what == "cutout_rim") return Words::tr("the rim of a cutout has no depth");
    return QString::fromStdString(what);
}

/// What is done to a casting, by the word of its case.
QString handledWord(const std::string& word)
{
    if (word == "suction") return Words::tr("when it is broken loose flat from the mould base");
    if (word == "tilt") return Words::tr("when it is tilted up");
    if (word == "carried_flat") return Words::tr("when it is carried flat");
    if (word == "carried_on_edge") return Words::tr("when it is carried on edge");
    if (word == "set_down") return Words::tr("when it is set down on two rests");
    if (word == "corner_late") return Words::tr("when one of its corners comes down late");
    return QString::fromStdString(word);
}

/// How sure a crack is: past the strength without any safety, it is more likely than not.
QString crackWord(const Values& values)
{
    const auto number = [&](const char* key) { return numberAt(values, key).value_or(0.0); };
    const bool likely = number("tension_mpa") > number("characteristic_mpa");
    return likely ? Words::tr("is likely to crack") : Words::tr("may crack");
}

/// What lies on a counter when it uses most of its strength.
QString loadWord(const Values& values)
{
    const auto number = [&](const char* key) { return numberAt(values, key).value_or(0.0); };
    const std::string load = wordAt(values, "load");
    if (load == "person") {
        return Words::tr("where somebody of %1 sits or leans on its weakest place").arg(massText(number("person_kg")));
    }
    if (load == "even") {
        return Words::tr("under %1 kN/m² all over").arg(shortNumberText(number("even_kpa"), 2));
    }
    return Words::tr("where it lies");
}

/// "a field of 35 mm, rim 55 mm deep and 60 mm wide, ribs over its rests"
QString formText(const Values& values)
{
    const auto number = [&](const char* key) { return numberAt(values, key).value_or(0.0); };
    QStringList parts{Words::tr("a field of %1").arg(lengthText(number("thickness_mm")))};
    if (number("rim_depth_mm") > 0.0) {
        parts << Words::tr("rim %1 deep and %2 wide")
                     .arg(lengthText(number("rim_depth_mm")), lengthText(number("rim_width_mm")));
    } else {
        parts << Words::tr("no rim");
    }
    if (number("cutout_rims") > 0.0) parts << Words::tr("rims about its cutouts");
    if (number("ribs") > 0.0) parts << Words::tr("ribs over its rests");
    if (number("supports") > 0.0) parts << Words::tr("one more support");
    if (!(number("mesh") > 0.0)) parts << Words::tr("without its mesh");
    if (number("shortened_mm") > 0.0) {
        parts << Words::tr("what bears it shortened by %1").arg(lengthText(number("shortened_mm")));
    }
    if (number("shortened_mm") < 0.0) {
        parts << Words::tr("what bears it made %1 taller").arg(lengthText(-number("shortened_mm")));
    }
    return parts.join(QStringLiteral(", "));
}

/// What is done with a joint or a core, in words beside its number.
QString liftingWord(const QString& format, double number)
{
    const int count = static_cast<int>(std::lround(number));
    if (format == QLatin1String("joints")) {
        return count == 1 ? Words::tr("one joint") : Words::tr("%1 joints").arg(count);
    }
    if (format == QLatin1String("ofthem")) return count == 1 ? Words::tr("it") : Words::tr("each of the %1").arg(count);
    if (format == QLatin1String("bearing")) {
        return count != 0 ? Words::tr("Every joint lies over a support.")
                          : Words::tr("A joint that lies over no support needs one under it.");
    }
    if (format == QLatin1String("still")) {
        return count != 0 ? QString() : Words::tr(", still more than those who lift it can lift");
    }
    return {};
}

/// Moulds, uses and days in words beside their number.
QString mouldWord(const QString& format, double number)
{
    const int count = static_cast<int>(std::lround(number));
    if (format == QLatin1String("moulds")) {
        return count == 1 ? Words::tr("one mould") : Words::tr("%1 moulds").arg(count);
    }
    if (format == QLatin1String("times")) {
        return count == 1 ? Words::tr("once") : count == 2 ? Words::tr("twice") : Words::tr("%1 times").arg(count);
    }
    if (format == QLatin1String("moredays")) {
        if (count == 0) return Words::tr("as many days as now");
        if (count > 0) return count == 1 ? Words::tr("one day more") : Words::tr("%1 days more").arg(count);
        return count == -1 ? Words::tr("one day less") : Words::tr("%1 days less").arg(-count);
    }
    return {};
}

QString valueText(const Values& values, const QString& key, const QString& format)
{
    if (format == QLatin1String("hours")) return bearsFromText(values);
    const auto found = values.find(key.toStdString());
    if (found == values.end()) return QStringLiteral("?");
    if (const auto* word = std::get_if<std::string>(&found->second)) {
        if (format == QLatin1String("item")) return itemWord(*word);
        if (format == QLatin1String("load")) return loadWord(values);
        if (format == QLatin1String("type")) return typeWord(*word);
        if (format == QLatin1String("key")) return keyWord(*word);
        if (format == QLatin1String("rimless")) return rimlessWord(*word);
        if (format == QLatin1String("handled")) return handledWord(*word);
        if (format == QLatin1String("handledway")) return handledWayText(*word);
        if (format == QLatin1String("early")) return tooEarlyText(values);
        if (format == QLatin1String("unitofmix")) return *word == "m3" ? Words::tr("a cubic metre") : Words::tr("a bag");
        return QString::fromStdString(*word);
    }
    const double number = std::get<double>(found->second);
    if (format == QLatin1String("money")) return moneyText(number, wordAt(values, "currency"));
    if (format == QLatin1String("amount")) return amountText(number, wordAt(values, "unit"));
    if (format == QLatin1String("unit")) return inUnit(number, wordAt(values, "unit"));
    if (format == QLatin1String("people")) return peopleText(number);
    if (format == QLatin1String("sure")) return crackWord(values);
    if (format == QLatin1String("way")) {
        return number < 0.0 ? Words::tr("%1 towards the counter's left end").arg(lengthText(-number))
                            : Words::tr("%1 towards the counter's right end").arg(lengthText(number));
    }
    if (format == QLatin1String("form")) return formText(values);
    if (format == QLatin1String("clock")) return clockText(number);
    if (format == QLatin1String("wait")) return waitText(number);
    if (format == QLatin1String("line")) return number > 0.0 ? Words::tr("Line %1: ").arg(numberText(number, 0)) : QString();
    if (format == QLatin1String("rate")) {
        return Words::tr("%1 kg/m² an hour").arg(numberText(number, 2));
    }
    if (const QString word = mouldWord(format, number); !word.isNull()) return word;
    if (const QString word = liftingWord(format, number); !word.isNull() || format == QLatin1String("still")) return word;
    bool hasDecimals = false;
    const int decimals = format.toInt(&hasDecimals);
    return hasDecimals ? numberText(number, decimals) : byEnding(key, number);
}

QString allSubjects(const std::vector<std::string>& subjects, const Plan* plan)
{
    QStringList names;
    for (const std::string& id : subjects) names << subjectName(plan, id);
    return names.join(QStringLiteral(", "));
}

/// The castings that a finding speaks of at once; the rest of its subjects are their parts.
QString alikeSubjects(const Values& values, const std::vector<std::string>& subjects, const Plan* plan)
{
    constexpr std::size_t kMostNamed = 3;
    const double count = numberAt(values, "count").value_or(1.0);
    const std::size_t alike = std::min(subjects.size(), static_cast<std::size_t>(std::max(1.0, count)));
    const std::size_t named = alike <= kMostNamed ? alike : 1;
    const QString names = allSubjects({subjects.begin(), subjects.begin() + static_cast<std::ptrdiff_t>(named)}, plan);
    if (named == alike) return alike > 1 ? Words::tr("%1, each").arg(names) : names;
    return Words::tr("%1 and %2 more like it, each").arg(names).arg(alike - named);
}

QString placeText(const QString& place, const Values& values, const std::vector<std::string>& subjects,
                  const Plan* plan)
{
    if (place == QLatin1String("subject")) {
        return subjects.empty() ? Words::tr("The plan") : subjectName(plan, subjects[0]);
    }
    if (place == QLatin1String("other")) return subjects.size() < 2 ? QString() : subjectName(plan, subjects[1]);
    if (place == QLatin1String("each")) return alikeSubjects(values, subjects, plan);
    if (place == QLatin1String("subjects")) return allSubjects(subjects, plan);
    return valueText(values, place.section(QLatin1Char(':'), 0, 0), place.section(QLatin1Char(':'), 1));
}

QString filled(const QString& sentence, const Values& values, const std::vector<std::string>& subjects,
               const Plan* plan)
{
    QString text;
    qsizetype from = 0;
    for (;;) {
        const qsizetype open = sentence.indexOf(QLatin1Char('{'), from);
        const qsizetype close = open < 0 ? -1 : sentence.indexOf(QLatin1Char('}'), open);
        if (close < 0) break;
        text += QStringView(sentence).mid(from, open - from);
        text += placeText(sentence.mid(open + 1, close - open - 1), values, subjects, plan);
        from = close + 1;
    }
    return text + sentence.mid(from);
}

}  // namespace

QString findingText(const Finding& finding, const Plan* plan)
{
    const FindingSentence* sentence = sentenceFor(finding.code);
    if (!sentence) return QString::fromStdString(finding.code);
    return filled(Words::tr(sentence->text), finding.values, finding.subjects, plan);
}

QString findingSource(const Finding& finding)
{
    const FindingSentence* sentence = sentenceFor(finding.code);
    return sentence ? filled(Words::tr(sentence->source), finding.values, finding.subjects, nullptr) : QString();
}

QString findingHelp(const Finding& finding)
{
    const FindingSentence* sentence = sentenceFor(finding.code);
    if (!sentence || *sentence->help == '\0') return {};
    return filled(Words::tr(sentence->help), finding.values, finding.subjects, nullptr);
}

QString remedyText(const Remedy& remedy)
{
    for (const auto* table : {&kRemedySentences, &kPourRemedySentences}) {
        for (const RemedySentence& sentence : *table) {
            if (remedy.code == sentence.code) return filled(Words::tr(sentence.text), remedy.values, {}, nullptr);
        }
    }
    return QString::fromStdString(remedy.code);
}

QString remedyEffect(const Remedy& remedy)
{
    const auto number = [&](const char* key) { return numberAt(remedy.values, key); };
    const auto kg = number("added_kg");
    const auto minor = number("added_minor");
    const auto use = number("use_percent");
    const auto chance = number("chance_after_percent");
    if (chance) {
        const int plays = static_cast<int>(number("plays").value_or(0.0));
        return Words::tr("the chance of a cold joint in it is then %1 instead of %2")
            .arg(chanceText(*chance / 100, plays),
                 chanceText(number("chance_before_percent").value_or(0.0) / 100, plays));
    }
    if (const auto any = number("any_after_percent")) {
        const int plays = static_cast<int>(number("plays").value_or(0.0));
        return Words::tr("the chance of any cold joint is then %1 instead of %2")
            .arg(chanceText(*any / 100, plays), chanceText(number("any_before_percent").value_or(0.0) / 100, plays));
    }
    if (!kg || !minor || !use) return QString::fromStdString(remedy.effect);
    const auto sign = [](double value) { return value > 0 ? QStringLiteral("+") : QString(); };
    const double tenths = std::round(*kg * 10) / 10;
    const QString mass = tenths == 0.0 ? Words::tr("no kg more") : sign(tenths) + massText(tenths);
    const auto money = static_cast<std::int64_t>(std::llround(*minor));
    const QString price = money == 0 ? Words::tr("no money more")
                                     : sign(*minor) + moneyText(money, wordAt(remedy.values, "currency"));
    if (const auto before = number("use_before_percent")) {
        return Words::tr("does not clear it by itself: in all %1, %2; greatest use then %3 instead of %4")
            .arg(mass, price, percentText(*use), percentText(*before));
    }
    if (const auto counter = number("counter_added_kg")) {
        // Of all that changes with it, the counter is what one lifts.
        const double own = std::round(*counter * 10) / 10;
        return Words::tr("the counter alone %1, in all %2, %3; greatest use then %4")
            .arg(own == 0.0 ? Words::tr("no kg more") : sign(own) + massText(own), mass, price, percentText(*use));
    }
    return Words::tr("in all %1, %2; greatest use then %3").arg(mass, price, percentText(*use));
}

std::vector<std::string> wordedFindingCodes()
{
    std::vector<std::string> codes;
    for (const auto& [code, sentence] : sentences()) codes.push_back(code);
    return codes;
}

FindingWords findingWords(const Plan& plan)
{
    // What reads the JSON does not expect no-break spaces.
    const auto plain = [](QString text) { return text.replace(QChar(0x00A0), QLatin1Char(' ')).toStdString(); };
    FindingWords words;
    words.text = [&plan, plain](const Finding& finding) { return plain(findingText(finding, &plan)); };
    words.source = [plain](const Finding& finding) { return plain(findingSource(finding)); };
    words.remedy = [plain](const Remedy& remedy) { return plain(remedyText(remedy)); };
    words.effect = [plain](const Remedy& remedy) { return plain(remedyEffect(remedy)); };
    return words;
}

}  // namespace yardcast::ui
