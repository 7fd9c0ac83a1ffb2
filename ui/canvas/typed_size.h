#pragma once

#include <optional>

#include <QString>
#include <QStringView>

namespace yardcast::ui {

/// Sizes typed at the pointer: one or two figures in mm.
struct TypedSize {
    double firstMm = 0.0;
    std::optional<double> secondMm;
    friend bool operator==(const TypedSize&, const TypedSize&) = default;
};

/// What was typed, or why it makes no size, as a sentence for the person who typed.
struct TypedSizeReading {
    TypedSize size;
    QString fault;
    explicit operator bool() const { return fault.isEmpty(); }
};

/// "1850", "1850 620", "1850x620", "185 cm", "1.85 m", "1,85 m x 62 cm". A unit given only once, at the end, holds for
/// both figures ("185 x 62 cm"). Decimal comma or point, no grouping.
TypedSizeReading readTypedSize(QStringView text);

}  // namespace yardcast::ui
