#pragma once

#include <optional>

#include <QString>
#include <QStringView>

namespace yardcast::ui {

/// Why a typed number was refused.
enum class NumberFault {
    empty,
    notANumber,
    twoMarks,      ///< more than one decimal mark: thousands are not marked
    looksGrouped,  ///< "1.850" as a bare length: 1850, or 1.85 mm? Nobody types thousandths of a millimetre
    unknownUnit,
    tooLarge
};

/// A typed number: its value, or why not.
struct NumberReading {
    double value = 0.0;
    std::optional<NumberFault> fault;

    explicit operator bool() const { return !fault; }
};

/// A number with decimal comma or decimal point, without grouping or exponent; spaces around it do not matter.
/// Refuses what is beyond 1e9 in size.
NumberReading parseNumber(QStringView text);

/// A length in mm: a bare number is mm; "mm", "cm" or "m" may follow, with or without a space ("185 cm", "1,85m").
NumberReading parseLengthMm(QStringView text);

/// The fault as a sentence for the person who typed.
QString numberFaultText(NumberFault fault);

/// With at most `mostDecimals` decimals, trailing zeros dropped, the locale's decimal mark, no grouping, and a true
/// minus sign. What comes out is read back by parseNumber.
QString formatNumber(double value, int mostDecimals = 3);

/// With exactly `decimals` decimals, otherwise as formatNumber.
QString formatFixed(double value, int decimals);

}  // namespace yardcast::ui
