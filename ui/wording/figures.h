#pragma once

#include <cstdint>
#include <string>

#include <QString>

/// Figures as text for the screen and for paper. The decimal sign is that of QLocale's default (the command line sets
/// the C locale); thousands are never grouped, and a unit follows after a no-break space.
namespace yardcast::ui {

/// Rounded to `decimals`, never "-0".
QString numberText(double value, int decimals);
/// At most `decimals`, trailing zeros dropped: for sizes and amounts as a person would write them.
QString shortNumberText(double value, int decimals = 2);
/// "56.3 kg" under 100, "214 kg" from there; "–" for what is no number.
QString massText(double kg);
/// Whole millimetres where it is whole, else one decimal: "1850 mm", "62.5 mm".
QString lengthText(double mm);
/// "1850 × 620 mm".
QString sizeText(double widthMm, double depthMm);
/// "24.2 l" under 100, "298 l" from there.
QString volumeText(double litres);
QString areaText(double m2);
/// "2.4 m".
QString metresText(double metres);
QString percentText(double percent, int decimals = 0);
/// An hour of the day as "07:30".
QString clockText(double hourOfDay);
/// Whole minor units with the minor digits of the currency (ISO 4217) and its code: "321.40 EUR". For "XXX" (no
/// currency) no code follows.
QString moneyText(std::int64_t minor, const std::string& currency);
/// The number alone, with a decimal point whatever the locale: "321.40".
QString plainMoneyText(std::int64_t minor, const std::string& currency);
/// The same as moneyText from whole units.
QString moneyText(double amount, const std::string& currency);
/// An amount in a unit of the price book: "187.5 kg", "3 pieces", "1.2 m²".
QString amountText(double amount, const std::string& unit);

}  // namespace yardcast::ui
