#include "ui/wording/figures.h"

#include <algorithm>
#include <cmath>

#include <QLocale>

#include "core/purchase/currency.h"
#include "ui/wording/names.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

const QString kNoBreakSpace(QChar(0x00A0));
const QString kNoNumber(QChar(0x2013));

QLocale plainLocale()
{
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    return locale;
}

QString withUnit(const QString& number, const QString& unit)
{
    return number + kNoBreakSpace + unit;
}

/// One decimal where the figure is small, none where it is large.
QString oneDecimalUnder100(double value, const QString& unit)
{
    if (!std::isfinite(value)) return kNoNumber;
    return withUnit(numberText(value, std::abs(value) < 99.95 ? 1 : 0), unit);
}

}  // namespace

QString numberText(double value, int decimals)
{
    if (!std::isfinite(value)) return kNoNumber;
    if (std::abs(value) >= 1e12) return plainLocale().toString(value, 'g', 6);
    const double scale = std::pow(10.0, decimals);
    const double rounded = std::round(value * scale) / scale;
    return plainLocale().toString(rounded == 0.0 ? 0.0 : rounded, 'f', decimals);
}

QString shortNumberText(double value, int decimals)
{
    QString text = numberText(value, decimals);
    const QString point = plainLocale().decimalPoint();
    if (!text.contains(point)) return text;
    while (text.endsWith(QLatin1Char('0'))) text.chop(1);
    if (text.endsWith(point)) text.chop(point.size());
    return text;
}

QString massText(double kg)
{
    return oneDecimalUnder100(kg, QStringLiteral("kg"));
}

QString lengthText(double mm)
{
    if (!std::isfinite(mm)) return kNoNumber;
    return withUnit(shortNumberText(mm, 1), QStringLiteral("mm"));
}

QString sizeText(double widthMm, double depthMm)
{
    const QString times = kNoBreakSpace + QChar(0x00D7) + kNoBreakSpace;
    return withUnit(shortNumberText(widthMm, 1) + times + shortNumberText(depthMm, 1), QStringLiteral("mm"));
}

QString volumeText(double litres)
{
    return oneDecimalUnder100(litres, QStringLiteral("l"));
}

QString areaText(double m2)
{
    if (!std::isfinite(m2)) return kNoNumber;
    return withUnit(numberText(m2, 2), QStringLiteral("m") + QChar(0x00B2));
}

QString metresText(double metres)
{
    if (!std::isfinite(metres)) return kNoNumber;
    return withUnit(numberText(metres, 1), QStringLiteral("m"));
}

QString percentText(double percent, int decimals)
{
    if (!std::isfinite(percent)) return kNoNumber;
    return withUnit(numberText(percent, decimals), QStringLiteral("%"));
}

QString plainMoneyText(std::int64_t minor, const std::string& currency)
{
    return QString::fromStdString(plainMoney(minor, currency));
}

QString clockText(double hourOfDay)
{
    if (!std::isfinite(hourOfDay)) return QString(QChar(0x2013));
    const int minutes = static_cast<int>(std::lround(std::fmod(std::fmod(hourOfDay, 24.0) + 24.0, 24.0) * 60)) % (24 * 60);
    return QStringLiteral("%1:%2").arg(minutes / 60, 2, 10, QLatin1Char('0')).arg(minutes % 60, 2, 10, QLatin1Char('0'));
}

QString moneyText(std::int64_t minor, const std::string& currency)
{
    const QString text = plainMoneyText(minor, currency).replace(QLatin1Char('.'), plainLocale().decimalPoint());
    if (currency.empty() || currency == kNoCurrency) return text;
    return withUnit(text, QString::fromStdString(currency));
}

QString moneyText(double amount, const std::string& currency)
{
    return moneyText(toMinor(amount, currency), currency);
}

QString amountText(double amount, const std::string& unit)
{
    if (!std::isfinite(amount)) return kNoNumber;
    if (unit == "piece") {
        const auto count = static_cast<int>(std::clamp(std::ceil(amount - 1e-6), 0.0, 1e9));
        return count == 1 ? Words::tr("1 piece")
                          : Words::tr("%1 pieces").arg(count);
    }
    // Sizes of packs (a board of 3.125 m2) are written out; what was computed is rounded.
    const bool isRound = std::abs(amount) < 1e6 && std::abs(amount * 1000 - std::round(amount * 1000)) < 1e-6;
    const int decimals = isRound ? 3 : std::abs(amount) < 10 ? 2 : std::abs(amount) < 100 ? 1 : 0;
    return withUnit(shortNumberText(amount, decimals), unitName(unit));
}

}  // namespace yardcast::ui
