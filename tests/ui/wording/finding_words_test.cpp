#include <set>

#include <QDirIterator>
#include <QFile>
#include <QLocale>
#include <QRegularExpression>
#include <QTest>

#include "ui/wording/figures.h"
#include "ui/wording/finding_table.h"
#include "ui/wording/finding_words.h"
#include "ui/wording/pour_names.h"
#include "ui/wording/remedy_table.h"

namespace yardcast::ui {

namespace {

const std::vector<const std::vector<FindingSentence>*> kTables{&kPurchaseSentences, &kPriceFileSentences,
                                                               &kFileSentences, &kPlanSentences,
                                                               &kDisciplineSentences, &kMixSentences,
                                                               &kLiftingSentences, &kHandlingSentences, &kInUseSentences,
                                                               &kSteelWorthSentences, &kWeatherSentences,
                                                               &kPourSentences, &kMouldSentences};

QString sourcesOfCore()
{
    QString all;
    QDirIterator files(QStringLiteral(YARDCAST_SOURCE_DIR "/core"), {QStringLiteral("*.cpp"), QStringLiteral("*.h")},
                       QDir::Files, QDirIterator::Subdirectories);
    while (files.hasNext()) {
        QFile file(files.next());
        if (file.open(QIODevice::ReadOnly)) all += QString::fromUtf8(file.readAll()) + QLatin1Char('\n');
    }
    return all;
}

std::set<QString> found(const QString& text, const QString& pattern)
{
    std::set<QString> words;
    auto matches = QRegularExpression(pattern).globalMatch(text);
    while (matches.hasNext()) {
        const auto match = matches.next();
        for (int i = 1; i <= match.lastCapturedIndex(); ++i) {
            if (!match.captured(i).isEmpty()) words.insert(match.captured(i));
        }
    }
    return words;
}

/// The codes of findings in the sources of core, by the ways in which a finding is made there.
std::set<QString> codesInCore(const QString& sources)
{
    const QString word = QStringLiteral("\"([a-z]+(?:_[a-z]+)*)\"");
    std::set<QString> codes;
    const QStringList makers{
        word + QStringLiteral(",\\s*Severity::"),
        QStringLiteral("addUnusable\\(") + word,
        QStringLiteral("(?<!remedy)\\.code = ") + word,
        QStringLiteral("Finding \\w+\\{") + word,
        QStringLiteral("Finding \\w+\\{\\w+ \\? ") + word + QStringLiteral(" : ") + word,
        QStringLiteral("findings_?\\.push_back\\(\\{\\s*") + word,
        QStringLiteral("\\bfinding\\(\\w+, ") + word,
        QStringLiteral("\\bnote\\(") + word,
        QStringLiteral("\\bsay\\(") + word,
        QStringLiteral("\\b(?:problem|problems_?|reader)\\.(?:add|problem)\\(") + word,
        QStringLiteral("\\b(?:problem|complain|report|add)\\(") + word + QStringLiteral(", (?!\")"),
    };
    for (const QString& maker : makers) codes.merge(found(sources, maker));
    return codes;
}

}  // namespace

class FindingWordsTest : public QObject {
    Q_OBJECT

private slots:
    void init() { QLocale::setDefault(QLocale::c()); }

    void everyCodeOfCoreHasASentence()
    {
        const std::vector<std::string> worded = wordedFindingCodes();
        std::set<QString> known;
        for (const std::string& code : worded) known.insert(QString::fromStdString(code));
        const std::set<QString> codes = codesInCore(sourcesOfCore());
        QVERIFY2(codes.size() > 20, "the sources of core were not found, or findings are made in another way");
        QStringList missing;
        for (const QString& code : codes) {
            if (!known.count(code)) missing << code;
        }
        QVERIFY2(missing.isEmpty(), qPrintable(missing.join(QStringLiteral(", "))));
    }

    void noSentenceIsForACodeThatNobodyUses()
    {
        const QString sources = sourcesOfCore();
        QStringList idle;
        for (const auto* table : kTables) {
            for (const FindingSentence& sentence : *table) {
                const QString quoted = QLatin1Char('"') + QString::fromLatin1(sentence.code) + QLatin1Char('"');
                if (!sources.contains(quoted)) idle << QString::fromLatin1(sentence.code);
            }
        }
        QVERIFY2(idle.isEmpty(), qPrintable(idle.join(QStringLiteral(", "))));
    }

    void everyPlaceInASentenceIsAValueThatCoreGives()
    {
        const QString sources = sourcesOfCore();
        const std::set<QString> own{QStringLiteral("subject"), QStringLiteral("other"), QStringLiteral("subjects"),
                                    QStringLiteral("each")};
        QStringList unknown;
        for (const auto* table : kTables) {
            for (const FindingSentence& sentence : *table) {
                const QString all = QString::fromUtf8(sentence.text) + QString::fromUtf8(sentence.help);
                for (const QString& place : found(all, QStringLiteral("\\{(\\w+)(?::\\w+)?\\}"))) {
                    const QString quoted = QLatin1Char('"') + place + QLatin1Char('"');
                    if (!own.count(place) && !sources.contains(quoted)) {
                        unknown << QString::fromLatin1(sentence.code) + QLatin1Char('.') + place;
                    }
                }
            }
        }
        QVERIFY2(unknown.isEmpty(), qPrintable(unknown.join(QStringLiteral(", "))));
    }

    void everyRemedyHasASentence()
    {
        const QString sources = sourcesOfCore();
        const auto codes = found(
            sources, QStringLiteral("remedy\\.code = \"([a-z_]+)\"|\\bRemedy [a-z]+\\{\"([a-z_]+)\"|\\battempt\\(\"([a-z_]+)\""));
        QVERIFY(!codes.empty());
        for (const QString& code : codes) {
            Remedy remedy;
            remedy.code = code.toStdString();
            QVERIFY2(remedyText(remedy) != code, qPrintable(code));
        }
        for (const RemedySentence& sentence : kRemedySentences) {
            QVERIFY2(codes.count(QString::fromLatin1(sentence.code)), sentence.code);
        }
    }

    void everyRemedyOfAPourIsOneThatCoreGives()
    {
        const QString sources = sourcesOfCore();
        std::set<QString> worded;
        for (const RemedySentence& sentence : kPourRemedySentences) {
            const QString code = QString::fromLatin1(sentence.code);
            worded.insert(code);
            QVERIFY2(sources.contains(QLatin1Char('"') + code + QLatin1Char('"')), sentence.code);
        }
        for (const QString& code : found(sources, QStringLiteral("\"((?:pour|play)_[a-z_]+)\",? ?\\{?\""))) {
            QVERIFY2(worded.count(code), qPrintable(code));
        }
    }

    void hoursAndChancesAreWrittenInWords()
    {
        QCOMPARE(clockText(7.5), QStringLiteral("07:30"));
        QCOMPARE(clockText(13.999), QStringLiteral("14:00"));
        QCOMPARE(clockText(25.25), QStringLiteral("01:15"));
        QCOMPARE(chanceText(0.234, 2000), QStringLiteral("23\u00A0%"));
        QCOMPARE(chanceText(0.004, 2000), QStringLiteral("0.4\u00A0%"));
        QCOMPARE(chanceText(0.0, 2000), QStringLiteral("under 0.2\u00A0%"));
        QCOMPARE(chanceText(1.0, 2000), QStringLiteral("over 99.8\u00A0%"));
    }

    void everySentenceHasASource()
    {
        std::set<std::string> seen;
        for (const auto* table : kTables) {
            for (const FindingSentence& sentence : *table) {
                QVERIFY2(*sentence.text != '\0' && *sentence.source != '\0', sentence.code);
                QVERIFY2(seen.insert(sentence.code).second, sentence.code);
            }
        }
    }

    void valuesAreFilledInWithTheirUnits()
    {
        Finding finding;
        finding.code = "heavy";
        finding.subjects = {"C1"};
        finding.values = {{"mass_kg", 92.4}, {"limit_kg", 33.33}, {"people", 8.0}, {"crew", 2.0}};
        QCOMPARE(findingText(finding).replace(QChar(0x00A0), QLatin1Char(' ')),
                 QStringLiteral("C1: a mass of 92.4 kg. The 2 who lift it can lift 33.3 kg (it takes 8 people)."));
        finding.values["people"] = 0.0;
        QVERIFY(findingText(finding).contains(QStringLiteral("more than 8 people")));
        QVERIFY(findingSource(finding).contains(QStringLiteral("HSE L23")));
        finding.subjects = {"C1.1", "C1.2", "C1"};
        finding.values["count"] = 2.0;
        QVERIFY(findingText(finding).startsWith(QStringLiteral("C1.1, C1.2, each: a mass")));
        finding.subjects = {"S1", "S2", "S3", "S4", "S5"};
        finding.values["count"] = 5.0;
        QVERIFY(findingText(finding).startsWith(QStringLiteral("S1 and 4 more like it, each: a mass")));
        QVERIFY(!findingHelp(finding).isEmpty());
    }

    void aNumberOutOfRangeSaysWhatWouldBeRight()
    {
        Finding finding;
        finding.code = "number_out_of_range";
        finding.subjects = {"C1"};
        finding.values = {{"key", std::string("thickness_mm")}, {"value", -40.0}, {"least", 10.0}, {"most", 500.0},
                          {"unit", std::string("mm")}};
        QCOMPARE(findingText(finding).replace(QChar(0x00A0), QLatin1Char(' ')),
                 QStringLiteral("C1: thickness is -40 mm; it has to be from 10 mm to 500 mm."));
    }

    void moneyIsInTheCurrencyOfThePlan()
    {
        Finding finding;
        finding.code = "over_budget";
        finding.values = {{"total", 344.0}, {"amount", 24.0}, {"limit", 320.0}, {"currency", std::string("EUR")}};
        QCOMPARE(findingText(finding).replace(QChar(0x00A0), QLatin1Char(' ')),
                 QStringLiteral("The shopping list comes to 344.00 EUR: 24.00 EUR more than the limit of 320.00 EUR."));
    }

    void anUnknownCodeGivesItself()
    {
        Finding finding;
        finding.code = "no_such_code";
        QCOMPARE(findingText(finding), QStringLiteral("no_such_code"));
        QVERIFY(findingSource(finding).isEmpty());
    }
};

}  // namespace yardcast::ui

QTEST_APPLESS_MAIN(yardcast::ui::FindingWordsTest)
#include "finding_words_test.moc"
