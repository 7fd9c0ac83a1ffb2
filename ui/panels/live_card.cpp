#include "ui/panels/live_card.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QScopedValueRollback>
#include <QScreen>
#include <QStackedWidget>
#include <QTabBar>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/document/plan_document.h"
#include "ui/document/selection.h"
#include "ui/live/live_assessment.h"
#include "ui/look/theme.h"
#include "ui/panels/figure_button.h"
#include "ui/panels/line_view.h"
#include "ui/panels/subjects.h"

namespace yardcast::ui {

namespace {
/// The assessment mostly arrives within a frame; ink that changes for less than this only flickers.
constexpr int kStaleAfterMs = 120;
constexpr int kMostLines = 3;
}  // namespace

LiveCard::LiveCard(const QString& name, PlanDocument& document, Selection& selection, LiveAssessment& live,
                   QWidget* parent)
    : QWidget(parent), document_(document), selection_(selection), live_(live)
{
    setObjectName(name);
    setMinimumWidth(240);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(2 * kStepPx, kStepPx, kStepPx, kStepPx);
    column->setSpacing(0);

    summary_ = new QWidget(this);
    auto* summaryColumn = new QVBoxLayout(summary_);
    summaryColumn->setContentsMargins(0, 0, 0, 0);
    summaryColumn->setSpacing(0);
    auto* top = new QHBoxLayout;
    top->setSpacing(kStepPx);
    big_ = new FigureButton(FigureButton::Look::big, summary_);
    big_->setObjectName(QStringLiteral("bigFigure"));
    opener_ = new QToolButton(summary_);
    opener_->setObjectName(QStringLiteral("opener"));
    opener_->setAutoRaise(true);
    opener_->setArrowType(Qt::DownArrow);
    opener_->setToolTip(tr("Open the table"));
    opener_->setAccessibleName(tr("Table"));
    top->addWidget(big_, 1);
    top->addWidget(opener_, 0, Qt::AlignTop);
    summaryColumn->addLayout(top);
    for (int i = 0; i < kMostLines; ++i) {
        auto* line = new FigureButton(FigureButton::Look::line, summary_);
        line->setObjectName(QStringLiteral("line%1").arg(i + 1));
        summaryColumn->addWidget(line);
        lines_.append(line);
    }
    column->addWidget(summary_);

    empty_ = new QLabel(this);
    empty_->setObjectName(QStringLiteral("emptyText"));
    empty_->setWordWrap(true);
    empty_->setForegroundRole(QPalette::PlaceholderText);
    empty_->setContentsMargins(kStepPx, kStepPx, kStepPx, 2 * kStepPx);
    empty_->hide();
    column->addWidget(empty_);

    details_ = new QWidget(this);
    detailsColumn_ = new QVBoxLayout(details_);
    detailsColumn_->setContentsMargins(0, kStepPx, kStepPx, kStepPx);
    detailsColumn_->setSpacing(kStepPx);
    tabs_ = new QTabBar(details_);
    tabs_->setDrawBase(false);
    tabs_->setExpanding(true);
    tabs_->setUsesScrollButtons(false);
    tabs_->hide();
    tables_ = new QStackedWidget(details_);
    tables_->setMinimumHeight(4 * kTargetPx);
    detailsColumn_->addWidget(tabs_);
    detailsColumn_->addWidget(tables_, 1);
    details_->hide();
    column->addWidget(details_, 1);
    column->addStretch(0);

    for (FigureButton* figure : lines_ + QList<FigureButton*>{big_}) {
        connect(figure, &FigureButton::clicked, this, [this, figure] {
            if (assessment_ && !figure->code().isEmpty()) figureClicked(figure->code(), *figure);
        });
    }
    connect(opener_, &QToolButton::clicked, this, [this] { setOpened(!opened_); });
    connect(tabs_, &QTabBar::currentChanged, tables_, &QStackedWidget::setCurrentIndex);
    connect(&live, &LiveAssessment::assessed, this, &LiveCard::refresh);
    connect(&document, &PlanDocument::planChanged, this, &LiveCard::planChanged);
    connect(&selection, &Selection::hoveredChanged, this, &LiveCard::markPointedAt);
    connect(&selection, &Selection::chosenChanged, this, &LiveCard::markPointedAt);
    staleTimer_.setSingleShot(true);
    staleTimer_.setInterval(kStaleAfterMs);
    connect(&staleTimer_, &QTimer::timeout, this, [this] { showStale(isStale()); });
}

void LiveCard::setEmptyText(const QString& text) { empty_->setText(text); }

LineView* LiveCard::addTable(const QString& title, const QList<LineColumn>& columns)
{
    auto* view = new LineView(new LineModel(columns), tables_);
    view->setAccessibleName(title);
    view->header()->setToolTip(tr("A click on a line shows its parts; a double click or Space, how it comes about."));
    tabs_->addTab(title);
    tabs_->setVisible(tabs_->count() > 1);
    tables_->addWidget(view);
    views_.append(view);
    watch(view);
    return view;
}

void LiveCard::addToolRow(QWidget* widget) { detailsColumn_->insertWidget(0, widget); }

void LiveCard::addBelowTabs(QWidget* widget)
{
    detailsColumn_->insertWidget(detailsColumn_->indexOf(tabs_) + 1, widget);
}

void LiveCard::addFootnote(QWidget* widget) { detailsColumn_->addWidget(widget); }

void LiveCard::refillTables()
{
    if (assessment_ && !details_->isHidden()) fill();
}

void LiveCard::fill()
{
    {
        // Until all rows are in, those of the old assessment stand beside the new one.
        const QScopedValueRollback guard(filling_, true);
        fillTables(*plan_, *assessment_);
    }
    markPointedAt();
}

void LiveCard::watch(LineView* view)
{
    const auto partsAt = [this, view](int row) {
        return row < 0 ? QStringList() : partsOf(*view, view->lineModel().line(row));
    };
    connect(view, &LineView::currentLineChanged, this,
            [this, view, partsAt](int row) {
                if (filling_) return;
                selection_.setHighlighted(partsAt(row));
                lineBecameCurrent(*view, row);
            });
    connect(view, &LineView::lineChosen, this, [this, partsAt](int row) {
        const QStringList parts = partsAt(row);
        if (parts.isEmpty()) return;
        selection_.setHighlighted(parts);
        if (parts.size() == 1) selection_.setParts(parts);
        emit partsAsked(parts);
    });
    connect(view, &LineView::lineAsked, this, [this, view](int row) {
        if (!assessment_) return;
        const LineNote note = noteOf(*view, view->lineModel().line(row), *plan_, *assessment_);
        if (!note.code.isEmpty()) showNote(note.code, note.values, view->globalRectOf(row));
    });
    connect(view, &LineView::focusLeft, this, [this] { selection_.setHighlighted({}); });
}

void LiveCard::setOpened(bool opened)
{
    if (opened_ == opened) return;
    opened_ = opened;
    opener_->setArrowType(opened ? Qt::UpArrow : Qt::DownArrow);
    opener_->setToolTip(opened ? tr("Close the table") : tr("Open the table"));
    refresh();
    emit openedChanged(opened);
}

void LiveCard::refresh()
{
    if (!isVisible() || !live_.assessment()) return;
    assessment_ = live_.assessment();
    plan_ = live_.plan();
    const CardSummary summary = summarise(*plan_, *assessment_);
    if (summary_->isHidden() != summary.empty) summary_->setVisible(!summary.empty);
    if (empty_->isHidden() == summary.empty) empty_->setVisible(summary.empty);
    const bool showsTables = opened_ && !summary.empty;
    if (details_->isHidden() == showsTables) details_->setVisible(showsTables);
    big_->setFigure(summary.big.code, summary.big.text, summary.big.unit, summary.big.mark);
    for (int i = 0; i < kMostLines; ++i) {
        const bool there = i < summary.lines.size();
        if (there) {
            const CardSummary::Figure& line = summary.lines[i];
            lines_[i]->setFigure(line.code, line.text, {}, line.mark);
        }
        if (lines_[i]->isHidden() == there) lines_[i]->setVisible(there);
    }
    if (showsTables) fill();
    if (isStale()) {
        waitForNew();
    } else {
        staleTimer_.stop();
        showStale(false);
    }
}

bool LiveCard::isStale() const { return !live_.isCurrent(); }

void LiveCard::planChanged()
{
    if (isVisible() && !live_.isCurrent()) waitForNew();
}

void LiveCard::waitForNew()
{
    if (staleTimer_.interval() == 0) {
        showStale(true);
    } else if (!staleTimer_.isActive()) {
        staleTimer_.start();
    }
}

void LiveCard::showStale(bool stale)
{
    big_->setStale(stale);
    for (FigureButton* line : std::as_const(lines_)) line->setStale(stale);
    staleChanged(stale);
}

QStringList LiveCard::partsOf(const LineView& view, const Line& line) const
{
    QStringList parts;
    if (!assessment_) return parts;
    visitSubjects(view, line, *assessment_, [&](const std::string& subject) {
        for (const QString& part : partsOfSubject(*document_.plan(), *assessment_, subject)) {
            if (!parts.contains(part)) parts.append(part);
        }
    });
    return parts;
}

void LiveCard::markPointedAt()
{
    if (!isVisible() || !opened_ || !assessment_) return;
    std::set<std::string> subjects;
    QStringList parts = selection_.parts();
    if (!selection_.hovered().isEmpty()) parts.append(selection_.hovered());
    for (const QString& part : std::as_const(parts)) {
        subjects.merge(subjectsOfPart(*plan_, *assessment_, part.toStdString()));
    }
    for (LineView* view : std::as_const(views_)) {
        if (subjects.empty()) {
            view->lineModel().setPointedAt(nullptr);
            continue;
        }
        view->lineModel().setPointedAt([&](const Line& line) {
            bool found = false;
            visitSubjects(*view, line, *assessment_,
                          [&](const std::string& subject) { found = found || subjects.contains(subject); });
            return found;
        });
    }
}

void LiveCard::staleChanged(bool) {}

void LiveCard::lineBecameCurrent(const LineView&, int) {}

void LiveCard::figureClicked(const QString& code, const QWidget& beside)
{
    const QRect place(beside.mapToGlobal(QPoint(0, 0)), beside.size());
    showNote(code, valuesBehind(code, *plan_, *assessment_), place);
}

LiveCard::LineNote LiveCard::noteOf(const LineView&, const Line&, const Plan&, const Assessment&) const { return {}; }

void LiveCard::showNote(const QString& code, const QList<FigureValue>& values, const QRect& beside)
{
    emit figureAsked(code);
    auto* note = new FigurePopover(code, values, this);
    note->showBeside(beside, *screen());
}

void LiveCard::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    refresh();
    planChanged();
}

void LiveCard::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    staleTimer_.stop();
}

}  // namespace yardcast::ui
