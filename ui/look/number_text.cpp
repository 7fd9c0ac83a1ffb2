#include "ui/look/number_text.h"

#include <charconv>
#include <cmath>
#include <string>

#include <QCoreApplication>
#include <QLocale>

namespace yardcast::ui {

namespace {

constexpr double kMost = 1e9;
constexpr QChar kMinus(0x2212);

NumberReading refuse(NumberFault fault) { return {0.0, fault}; }

/// What the digits say about grouping: how many stand before and after the mark.
struct Digits {
    std::string ascii;
    int before = 0;
    int after = 0;
    bool marked = false;
    bool leadingZero = false;
};

std::optional<NumberFault> readDigits(QStringView text, Digits& digits)
{
    qsizetype i = 0;
    if (text[0] == QLatin1Char('-') || text[0] == kMinus || text[0] == QLatin1Char('+')) {
        if (text[0] != QLatin1Char('+')) digits.ascii += '-';
        ++i;
    }
    bool second = false;
    for (; i < text.size(); ++i) {
        const QChar c = text[i];
        if (c.isDigit()) {
            if (!digits.marked && digits.before == 0) digits.leadingZero = c.digitValue() == 0;
            (digits.marked ? digits.after : digits.before) += 1;
            digits.ascii += static_cast<char>('0' + c.digitValue());
        } else if (c == QLatin1Char('.') || c == QLatin1Char(',')) {
            second = second || digits.marked;
            digits.marked = true;
            digits.ascii += '.';
        } else {
            return NumberFault::notANumber;
        }
    }
    if (digits.before + digits.after == 0) return NumberFault::notANumber;
    if (second) return NumberFault::twoMarks;
    return std::nullopt;
}

NumberReading read(QStringView text, Digits& digits)
{
    const QStringView trimmed = text.trimmed();
    if (trimmed.isEmpty()) return refuse(NumberFault::empty);
    if (const auto fault = readDigits(trimmed, digits)) return refuse(*fault);
    double value = 0.0;
    const char* end = digits.ascii.data() + digits.ascii.size();
    const auto [stop, error] = std::from_chars(digits.ascii.data(), end, value, std::chars_format::fixed);
    if (error == std::errc::result_out_of_range || std::abs(value) > kMost) return refuse(NumberFault::tooLarge);
    if (error != std::errc() || stop != end) return refuse(NumberFault::notANumber);
    return {value == 0.0 ? 0.0 : value, std::nullopt};
}

}  // namespace

NumberReading parseNumber(QStringView text)
{
    Digits digits;
    return read(text, digits);
}

NumberReading parseLengthMm(QStringView text)
{
    QStringView figure = text.trimmed();
    qsizetype end = figure.size();
    while (end > 0 && figure[end - 1].isLetter()) --end;
    const QString unit = figure.sliced(end).toString().toLower();
    figure.truncate(end);

    double factor = 1.0;
    if (unit == QLatin1String("cm")) {
        factor = 10.0;
    } else if (unit == QLatin1String("m")) {
        factor = 1000.0;
    } else if (!unit.isEmpty() && unit != QLatin1String("mm")) {
        return refuse(figure.trimmed().isEmpty() ? NumberFault::notANumber : NumberFault::unknownUnit);
    }
    Digits digits;
    NumberReading reading = read(figure, digits);
    if (reading.fault == NumberFault::empty && !unit.isEmpty()) return refuse(NumberFault::notANumber);
    if (!reading) return reading;
    if (unit.isEmpty() && digits.after == 3 && digits.before >= 1 && digits.before <= 3 && !digits.leadingZero) {
        return refuse(NumberFault::looksGrouped);
    }
    reading.value *= factor;
    if (std::abs(reading.value) > kMost) return refuse(NumberFault::tooLarge);
    return reading;
}

QString numberFaultText(NumberFault fault)
{
    const auto tr = [](const char* text) { return QCoreApplication::translate("NumberText", text); };
    switch (fault) {
    case NumberFault::empty: return tr("A number is needed here.");
    case NumberFault::notANumber: return tr("This is not a number. Digits with one comma or point are understood.");
    case NumberFault::twoMarks: return tr("More than one comma or point. Write thousands without a mark: 1850.");
    case NumberFault::looksGrouped: return tr("Is this 1850 or 1.85? Write 1850, or add a unit: 1.85 m.");
    case NumberFault::unknownUnit: return tr("This unit is not known here. Use mm, cm or m.");
    case NumberFault::tooLarge: return tr("This number is too large.");
    }
    return {};
}

QString formatFixed(double value, int decimals)
{
    QString text = QString::number(value, 'f', decimals);
    const bool isZero = text.toDouble() == 0.0;
    if (text.startsWith(QLatin1Char('-'))) {
        if (isZero) {
            text.remove(0, 1);
        } else {
            text[0] = kMinus;
        }
    }
    return text.replace(QLatin1Char('.'), QLocale().decimalPoint());
}

QString formatNumber(double value, int mostDecimals)
{
    QString text = formatFixed(value, mostDecimals);
    if (mostDecimals <= 0) return text;
    while (text.endsWith(QLatin1Char('0'))) text.chop(1);
    if (!text.back().isDigit()) text.chop(QLocale().decimalPoint().size());
    return text;
}

}  // namespace yardcast::ui
