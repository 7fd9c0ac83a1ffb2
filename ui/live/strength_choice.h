#pragma once

#include <optional>

#include <QObject>

#include "core/structure/strength.h"

namespace yardcast::ui {

/// Which case of strength is looked at: one for card and drawing alike.
class StrengthChoice : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    /// Nothing: of each casting its worst.
    const std::optional<StrengthCase>& which() const { return which_; }
    void setWhich(std::optional<StrengthCase> which);
    /// What is shown of a casting; null where it has no such case, or none at all.
    const CaseResult* of(const CastingStrength& strength) const;

signals:
    void changed();

private:
    std::optional<StrengthCase> which_;
};

/// Whether the case is one of handling (else of use, `CaseChoice::inUse`).
bool isHandling(StrengthCase which);

}  // namespace yardcast::ui
