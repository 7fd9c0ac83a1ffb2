#pragma once

#include <optional>

#include <QString>
#include <QWidget>

#include "core/plan/finding.h"

class QLabel;

namespace yardcast::ui {

class FindingLine;
class LiveAssessment;

/// The line at the bottom: at left where the pointer is and what to do now, at right the gravest finding in words.
class MeasureLine : public QWidget {
    Q_OBJECT

public:
    MeasureLine(const LiveAssessment& live, QWidget* parent = nullptr);

    void setMeasureText(const QString& text);
    void setHint(const QString& text);
    QString findingSentence() const;

signals:
    void findingChosen(const Finding& finding);

protected:
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void takeAssessment();
    void breakHint();

    const LiveAssessment& live_;
    QLabel* measure_;
    QLabel* hint_;
    FindingLine* gravest_;
    QString hintText_;
    QString sentence_;
    std::optional<Finding> finding_;
};

}  // namespace yardcast::ui
