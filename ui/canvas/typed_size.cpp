#include "ui/canvas/typed_size.h"

#include <algorithm>

#include <QCoreApplication>
#include <QStringList>

#include "ui/look/number_text.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("TypedSize", text); }

bool isTimes(QChar c) { return c == u'x' || c == u'X' || c == u'\u00d7' || c == u'*' || c == u';'; }

/// Figures with their units: "185 cm" is one piece, "1850 620" are two.
QStringList pieces(QStringView text)
{
    QStringList found;
    QString piece;
    const auto close = [&] {
        if (!piece.trimmed().isEmpty()) found.append(piece.trimmed());
        piece.clear();
    };
    for (qsizetype i = 0; i < text.size(); ++i) {
        const QChar c = text[i];
        if (isTimes(c)) {
            close();
            continue;
        }
        const bool startsFigure = c.isDigit() || c == u'-' || c == u'+' || c == u'\u2212';
        const bool afterSpace = i > 0 && text[i - 1].isSpace();
        const bool afterUnit = i > 0 && text[i - 1].isLetter();
        if (startsFigure && (afterSpace || afterUnit)) close();
        piece.append(c);
    }
    close();
    return found;
}

/// "1 850" is a grouped 1850 to many, and 1 mm by 850 mm to nobody.
bool looksGrouped(QStringView text, const QStringList& figures)
{
    if (figures.size() != 2 || std::any_of(text.begin(), text.end(), isTimes)) return false;
    return figures[0].size() == 1 && figures[1].size() == 3 && figures[0][0].isDigit() && figures[1].back().isDigit();
}

bool hasUnit(const QString& piece) { return !piece.isEmpty() && piece.back().isLetter(); }

}  // namespace

TypedSizeReading readTypedSize(QStringView text)
{
    TypedSizeReading reading;
    QStringList figures = pieces(text);
    if (figures.isEmpty()) {
        reading.fault = numberFaultText(NumberFault::empty);
        return reading;
    }
    if (figures.size() > 2) {
        reading.fault = tr("One or two figures are understood, such as 1850 or 1850 x 620.");
        return reading;
    }
    if (looksGrouped(text, figures)) {
        reading.fault = tr("Thousands are written without a space: %1. Two figures take an x between them: %2 x %3.")
                            .arg(figures[0] + figures[1], figures[0], figures[1]);
        return reading;
    }
    if (figures.size() == 2 && !hasUnit(figures[0]) && hasUnit(figures[1])) {
        QString unit;
        for (qsizetype i = figures[1].size(); i > 0 && figures[1][i - 1].isLetter(); --i) {
            unit.prepend(figures[1][i - 1]);
        }
        figures[0] += unit;
    }
    double values[2] = {0.0, 0.0};
    for (qsizetype i = 0; i < figures.size(); ++i) {
        const NumberReading number = parseLengthMm(figures[i]);
        if (!number) {
            reading.fault = figures.size() == 1 ? numberFaultText(*number.fault)
                                                : tr("%1: %2").arg(figures[i], numberFaultText(*number.fault));
            return reading;
        }
        values[i] = number.value;
    }
    reading.size.firstMm = values[0];
    if (figures.size() == 2) reading.size.secondMm = values[1];
    return reading;
}

}  // namespace yardcast::ui
