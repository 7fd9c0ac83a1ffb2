#include "ui/panels/findings_card.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QHash>
#include <QHeaderView>
#include <QLabel>
#include <QPainter>
#include <QToolButton>

#include "core/remedy/attempts.h"
#include "core/structure/strength.h"
#include "ui/document/plan_document.h"
#include "ui/document/selection.h"
#include "ui/live/live_assessment.h"
#include "ui/live/strength_choice.h"
#include "ui/look/severity_mark.h"
#include "ui/look/theme.h"
#include "ui/panels/counted.h"
#include "ui/panels/line_view.h"
#include "ui/panels/remedy_edit.h"
#include "ui/panels/remedy_list.h"
#include "ui/wording/finding_words.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr Severity kGravestFirst[] = {Severity::stop, Severity::caution, Severity::note};

QIcon markIcon(Severity severity, const Ink& ink, double pixelRatio)
{
    constexpr int side = 16;
    QPixmap pixmap(QSize(side, side) * pixelRatio);
    pixmap.setDevicePixelRatio(pixelRatio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paintSeverityMark(painter, QRectF(0, 0, side, side), severity, ink);
    return QIcon(pixmap);
}

/// A filter whose sign follows the palette.
class FilterButton : public QToolButton {
public:
    FilterButton(Severity severity, QWidget* parent) : QToolButton(parent), severity_(severity)
    {
        setCheckable(true);
        setChecked(true);
        setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
        setIconSize(QSize(16, 16));
        drawMark();
    }

protected:
    void changeEvent(QEvent* event) override
    {
        QToolButton::changeEvent(event);
        if (event->type() == QEvent::PaletteChange) drawMark();
    }

private:
    void drawMark() { setIcon(markIcon(severity_, inkOf(palette()), devicePixelRatioF())); }
    Severity severity_;
};

}  // namespace

FindingsCard::FindingsCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : LiveCard(QStringLiteral("findingsCard"), document, selection, live, parent)
{
    setEmptyText(tr("Nothing to say about this plan."));
    auto* filters = new QWidget(this);
    auto* row = new QHBoxLayout(filters);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(kStepPx);
    for (const Severity severity : kGravestFirst) {
        auto* filter = new FilterButton(severity, filters);
        filter->setObjectName(QStringLiteral("filter%1").arg(static_cast<int>(severity)));
        connect(filter, &QToolButton::toggled, this, &FindingsCard::refillTables);
        row->addWidget(filter);
        filters_[static_cast<std::size_t>(severity)] = filter;
    }
    row->addStretch(1);
    addToolRow(filters);

    list_ = addTable(tr("Findings"), {{tr("Finding"), false}});
    list_->header()->hide();
    list_->lineModel().setWrapsNames(true);
    explanation_ = new QLabel(this);
    explanation_->setObjectName(QStringLiteral("explanation"));
    explanation_->setWordWrap(true);
    explanation_->setTextFormat(Qt::RichText);
    explanation_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    explanation_->setContentsMargins(kStepPx, kStepPx, kStepPx, kStepPx);
    explanation_->hide();
    // What can be done comes first: the reasons are for who wants to know them.
    remedies_ = new RemedyList(this);
    addFootnote(remedies_);
    addFootnote(explanation_);
    connect(remedies_, &RemedyList::taken, this, &FindingsCard::take);
}

bool FindingsCard::isShown(Severity severity) const
{
    return filters_[static_cast<std::size_t>(severity)]->isChecked();
}

void FindingsCard::setShown(Severity severity, bool shown)
{
    filters_[static_cast<std::size_t>(severity)]->setChecked(shown);
}

CardSummary FindingsCard::summarise(const Plan& plan, const Assessment& assessment) const
{
    CardSummary summary;
    const int count = static_cast<int>(assessment.findings.size());
    summary.empty = count == 0;
    if (summary.empty) return summary;
    QStringList words;
    const auto say = [&](Severity severity, const QString& one, const QString& many) {
        const int of = assessment.count(severity);
        if (of > 0) words.append(counted(of, one, many));
    };
    say(Severity::stop, tr("1 stop"), tr("%1 stops"));
    say(Severity::caution, tr("1 caution"), tr("%1 cautions"));
    say(Severity::note, tr("1 note"), tr("%1 notes"));
    summary.big = {.code = QStringLiteral("open"), .text = QString::number(count), .unit = words.join(tr(", "))};
    for (int i = 0; i < qMin(3, count); ++i) {
        const Finding& finding = assessment.findings[i];
        summary.lines.append({.code = QStringLiteral("finding:%1").arg(i),
                              .text = findingText(finding, &plan),
                              .mark = finding.severity});
    }
    // Opened, the list says the same.
    if (isOpened()) summary.lines.clear();
    return summary;
}

void FindingsCard::fillTables(const Plan& plan, const Assessment& assessment)
{
    QHash<QString, int> seen;
    QList<Line> lines;
    for (int i = 0; i < static_cast<int>(assessment.findings.size()); ++i) {
        const Finding& finding = assessment.findings[i];
        if (!isShown(finding.severity)) continue;
        QString key = QString::fromStdString(finding.code);
        for (const std::string& subject : finding.subjects) key += QLatin1Char('/') + QString::fromStdString(subject);
        key += QLatin1Char('#') + QString::number(seen[key]++);
        const QString source = findingSource(finding);
        lines.append(
            {.key = key, .cells = {findingText(finding, &plan)}, .tip = source, .mark = finding.severity, .source = i});
    }
    for (const Severity severity : kGravestFirst) {
        filters_[static_cast<std::size_t>(severity)]->setText(
            tr("%1 %2").arg(severityName(severity)).arg(assessment.count(severity)));
    }
    list_->lineModel().setLines(std::move(lines));
    explain(list_->currentRow());
}

void FindingsCard::explain(int row)
{
    const PlanPtr& plan = shownPlan();
    if (row < 0 || !plan || !shownAssessment()) {
        explanation_->hide();
        remedies_->setRemedies({});
        return;
    }
    const int index = list_->lineModel().line(row).source;
    const Finding& finding = shownAssessment()->findings[index];
    QString text;
    const auto paragraph = [&](const QString& name, const QString& words) {
        if (words.isEmpty()) return;
        text += QStringLiteral("<p style='margin-top:2px;margin-bottom:2px'><b>%1</b> %2</p>")
                    .arg(name.toHtmlEscaped(), words.toHtmlEscaped());
    };
    QStringList where;
    for (const std::string& subject : finding.subjects) where.append(subjectName(plan.get(), subject));
    paragraph(tr("Where:"), where.join(tr(", ")));
    paragraph(tr("Why:"), findingSource(finding));
    paragraph(tr("What helps:"), findingHelp(finding));
    if (finding.remedies.empty() && isWorthTrying(finding)) {
        const QString words = live().isTryingRemedies()
            ? tr("Edits that may help are being tried by the solver.")
            : tr("The solver tried single edits (thickness, rim, ribs, supports, cutout, handling): none of them clears "
                 "this or helps much. A joint, a smaller cutout or a wider strip may.");
        if (live().isTryingRemedies() || live().strengthState() == StrengthState::working) {
            text += QStringLiteral("<p style='margin-top:2px;margin-bottom:2px'><i>%1</i></p>").arg(words.toHtmlEscaped());
        }
    }
    if (explanation_->text() != text) explanation_->setText(text);
    explanation_->setVisible(!text.isEmpty());
    remedies_->setRemedies(finding.remedies);
}

void FindingsCard::take(const Remedy& remedy)
{
    // The moment before the ink changes: the button can be pressed, and what it does is of yesterday.
    if (isStale()) return;
    if (const auto problem = takeRemedy(document(), remedy)) {
        explanation_->setText(findingText(*problem) + QLatin1Char(' ') + findingHelp(*problem));
    }
}

bool FindingsCard::isStale() const { return LiveCard::isStale() || live().strengthState() == StrengthState::older; }

void FindingsCard::staleChanged(bool stale) { remedies_->setOutdated(stale); }

QList<FigureValue> FindingsCard::valuesBehind(const QString&, const Plan&, const Assessment&) const { return {}; }

void FindingsCard::visitSubjects(const LineView&, const Line& line, const Assessment& assessment,
                                 const std::function<void(const std::string&)>& visit) const
{
    if (line.source < 0) return;
    for (const std::string& subject : assessment.findings[line.source].subjects) visit(subject);
}

void FindingsCard::lineBecameCurrent(const LineView&, int row)
{
    explain(row);
    if (row < 0 || !shownAssessment()) return;
    // Card and drawing of strength show what the finding speaks about.
    const Finding& finding = shownAssessment()->findings[list_->lineModel().line(row).source];
    if (const auto which = strengthCaseOf(wordAt(finding.values, "case"))) live().strengthChoice().setWhich(which);
}

void FindingsCard::figureClicked(const QString& code, const QWidget&)
{
    const QString prefix = QStringLiteral("finding:");
    if (code.startsWith(prefix)) {
        showFinding(code.sliced(prefix.size()).toInt());
    } else {
        setOpened(!isOpened());
    }
}

void FindingsCard::showFinding(int index)
{
    setOpened(true);
    if (!shownAssessment() || index < 0 || index >= static_cast<int>(shownAssessment()->findings.size())) return;
    setShown(shownAssessment()->findings[index].severity, true);
    const QList<Line>& lines = list_->lineModel().lines();
    for (int row = 0; row < lines.size(); ++row) {
        if (lines[row].source != index) continue;
        list_->setCurrentIndex(list_->lineModel().index(row, 0));
        emit list_->lineChosen(row);
        list_->setFocus();
    }
}

}  // namespace yardcast::ui
