#include "ui/window/measure_line.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPixmap>
#include <QToolButton>

#include "ui/document/plan_document.h"
#include "ui/live/live_assessment.h"
#include "ui/look/severity_mark.h"
#include "ui/look/theme.h"
#include "ui/wording/finding_words.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr int kMarkPx = 16;
constexpr double kGravestShare = 0.46;

QIcon markOf(Severity severity, const Ink& ink, qreal ratio)
{
    QPixmap picture(QSize(kMarkPx, kMarkPx) * ratio);
    picture.setDevicePixelRatio(ratio);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    paintSeverityMark(painter, QRectF(0, 0, kMarkPx, kMarkPx), severity, ink);
    return QIcon(picture);
}

}  // namespace

MeasureLine::MeasureLine(const PlanDocument& document, const LiveAssessment& live, QWidget* parent)
    : QWidget(parent), document_(document), live_(live), measure_(new QLabel(this)), hint_(new QLabel(this)),
      gravest_(new QToolButton(this))
{
    measure_->setFont(figureFont(font()));
    measure_->setTextFormat(Qt::PlainText);
    measure_->setAccessibleName(tr("Where the pointer is"));
    hint_->setTextFormat(Qt::PlainText);
    hint_->setForegroundRole(QPalette::PlaceholderText);
    hint_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    gravest_->setAutoRaise(true);
    gravest_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    gravest_->setIconSize({kMarkPx, kMarkPx});
    gravest_->setFocusPolicy(Qt::TabFocus);
    gravest_->setMinimumHeight(kTargetPx);
    connect(gravest_, &QToolButton::clicked, this, [this] {
        if (finding_) emit findingChosen(*finding_);
    });

    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(3 * kStepPx, 0, kStepPx, 0);
    row->setSpacing(4 * kStepPx);
    row->addWidget(measure_);
    row->addWidget(hint_, 1);
    row->addWidget(gravest_);
    setMinimumHeight(kTargetPx + kStepPx);
    connect(&live, &LiveAssessment::assessed, this, &MeasureLine::takeAssessment);
    takeAssessment();
}

void MeasureLine::setMeasureText(const QString& text)
{
    measure_->setText(text);
    measure_->setVisible(!text.isEmpty());
    layOutTexts();
}

void MeasureLine::setHint(const QString& text)
{
    hintText_ = text;
    layOutTexts();
}

QString MeasureLine::findingSentence() const { return sentence_; }

void MeasureLine::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) takeAssessment();
    QWidget::changeEvent(event);
}

void MeasureLine::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    layOutTexts();
}

void MeasureLine::takeAssessment()
{
    const AssessmentPtr& assessment = live_.assessment();
    finding_.reset();
    sentence_.clear();
    if (assessment && !assessment->findings.empty()) {
        finding_ = assessment->findings.front();
        sentence_ = tr("%1: %2").arg(severityName(finding_->severity), findingText(*finding_, live_.plan().get()));
        const Ink ink = inkOf(palette());
        gravest_->setIcon(markOf(finding_->severity, ink, devicePixelRatioF()));
        QPalette colours = gravest_->palette();
        const QColor colour = colourOf(finding_->severity, ink);
        colours.setColor(QPalette::ButtonText, colour);
        colours.setColor(QPalette::WindowText, colour);
        if (gravest_->palette() != colours) gravest_->setPalette(colours);
    }
    gravest_->setVisible(finding_.has_value());
    layOutTexts();
}

void MeasureLine::layOutTexts()
{
    const int room = int(width() * kGravestShare);
    const int forText = room - kMarkPx - 6 * kStepPx;
    gravest_->setMaximumWidth(room);
    gravest_->setText(gravest_->fontMetrics().elidedText(sentence_, Qt::ElideRight, forText));
    gravest_->setToolTip(sentence_.isEmpty() ? QString() : tr("%1\nClick to see where.").arg(sentence_));
    gravest_->setAccessibleName(sentence_);
    hint_->setToolTip(hintText_);
    hint_->setText(hint_->fontMetrics().elidedText(hintText_, Qt::ElideRight, qMax(0, hint_->width())));
}

}  // namespace yardcast::ui
