#include "ui/window/measure_line.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>

#include "ui/live/live_assessment.h"
#include "ui/look/theme.h"
#include "ui/window/finding_line.h"
#include "ui/window/two_lines.h"
#include "ui/wording/finding_words.h"

namespace yardcast::ui {

namespace {

constexpr double kFindingShare = 0.52;

}  // namespace

MeasureLine::MeasureLine(const LiveAssessment& live, QWidget* parent)
    : QWidget(parent), live_(live), measure_(new QLabel(this)), hint_(new QLabel(this)),
      gravest_(new FindingLine(this))
{
    measure_->setFont(figureFont(font()));
    measure_->setTextFormat(Qt::PlainText);
    measure_->setAccessibleName(tr("Where the pointer is"));
    hint_->setTextFormat(Qt::PlainText);
    hint_->setForegroundRole(QPalette::PlaceholderText);
    hint_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    connect(gravest_, &FindingLine::clicked, this, [this] {
        if (finding_) emit findingChosen(*finding_);
    });

    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(3 * kStepPx, 0, kStepPx, 0);
    row->setSpacing(4 * kStepPx);
    row->addWidget(measure_);
    row->addWidget(hint_, 1);
    row->addWidget(gravest_);
    hint_->installEventFilter(this);
    measure_->hide();
    // Of one height whatever it says, so that the sheet does not jump.
    setFixedHeight(2 * fontMetrics().lineSpacing() + 2 * kStepPx);
    connect(&live, &LiveAssessment::assessed, this, &MeasureLine::takeAssessment);
    takeAssessment();
}

void MeasureLine::setMeasureText(const QString& text)
{
    measure_->setText(text);
    measure_->setVisible(!text.isEmpty());
}

void MeasureLine::setHint(const QString& text)
{
    hintText_ = text;
    hint_->setToolTip(text);
    breakHint();
}

QString MeasureLine::findingSentence() const { return sentence_; }

void MeasureLine::resizeEvent(QResizeEvent* event)
{
    gravest_->setMaximumWidth(int(width() * kFindingShare));
    QWidget::resizeEvent(event);
}

bool MeasureLine::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == hint_ && event->type() == QEvent::Resize) breakHint();
    return QWidget::eventFilter(watched, event);
}

void MeasureLine::takeAssessment()
{
    const AssessmentPtr& assessment = live_.assessment();
    finding_.reset();
    sentence_.clear();
    if (assessment && !assessment->findings.empty()) {
        finding_ = assessment->findings.front();
        sentence_ = findingText(*finding_, live_.plan().get());
        gravest_->setFinding(finding_->severity, sentence_);
    }
    gravest_->setVisible(finding_.has_value());
}

void MeasureLine::breakHint() { hint_->setText(brokenInTwo(hintText_, hint_->font(), hint_->width()).join("\n")); }

}  // namespace yardcast::ui
