#pragma once

#include <QAbstractButton>

#include "core/plan/finding.h"

namespace yardcast::ui {

/// One finding as sign and sentence, in one line or two; a click asks where it is.
class FindingLine : public QAbstractButton {
    Q_OBJECT

public:
    explicit FindingLine(QWidget* parent = nullptr);

    /// The sentence without the word for its severity.
    void setFinding(Severity severity, const QString& sentence);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

private:
    Severity severity_ = Severity::note;
};

}  // namespace yardcast::ui
