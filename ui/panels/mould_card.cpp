#include "ui/panels/mould_card.h"

#include <algorithm>

#include <QAction>
#include <QComboBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/document/selection.h"
#include "ui/drawing/mould_section.h"
#include "ui/live/live_assessment.h"
#include "ui/look/theme.h"
#include "ui/panels/counted.h"
#include "ui/panels/line_view.h"
#include "ui/panels/mould_view.h"
#include "ui/panels/remedy_edit.h"
#include "ui/panels/remedy_list.h"
#include "ui/wording/figures.h"
#include "ui/wording/finding_words.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/mould_steps.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

const Mould* mouldOf(const Assessment& assessment, const std::string& casting)
{
    for (const MouldPtr& mould : assessment.moulds) {
        if (mould && mould->casting == casting) return mould.get();
    }
    return nullptr;
}

QString handWord(const Mould& mould)
{
    return mould.mirrored ? MouldCard::tr("mirrored") : MouldCard::tr("not mirrored");
}

QString mouldSize(const Mould& mould)
{
    return MouldCard::tr("%1 × %2 × %3").arg(numberText(mould.widthMm, 0), numberText(mould.depthMm, 0),
                                            numberText(mould.heightMm, 0));
}

}  // namespace

MouldCard::MouldCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : LiveCard(QStringLiteral("mouldCard"), document, selection, live, parent)
{
    setEmptyText(tr("No mould to build yet. Drag a counter onto the sheet, or press C."));
    auto* box = new QWidget(this);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(kStepPx);
    auto* row = new QHBoxLayout;
    row->setSpacing(kStepPx);
    picker_ = new QComboBox(box);
    picker_->setAccessibleName(tr("Mould of"));
    picker_->setMinimumHeight(kTargetPx);
    connect(picker_, &QComboBox::activated, this, [this](int index) {
        showCasting(picker_->itemData(index).toString().toStdString());
    });
    row->addWidget(picker_, 1);
    auto* larger = new QAction(tr("Larger"), this);
    larger->setShortcut(QKeySequence(Qt::ALT | Qt::Key_Return));
    larger->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    larger->setToolTip(tr("The picture in a window of its own (%1)")
                           .arg(larger->shortcut().toString(QKeySequence::NativeText)));
    addAction(larger);
    connect(larger, &QAction::triggered, this, &MouldCard::showLarge);
    auto* button = new QToolButton(box);
    button->setDefaultAction(larger);
    button->setMinimumHeight(kTargetPx);
    row->addWidget(button);
    column->addLayout(row);

    picture_ = new MouldView(MouldView::Shows::mould, box);
    column->addWidget(picture_);
    auto* below = new QHBoxLayout;
    below->setSpacing(2 * kStepPx);
    standing_ = new MouldView(MouldView::Shows::standing, box);
    below->addWidget(standing_, 2);
    check_ = new QLabel(box);
    check_->setWordWrap(true);
    check_->setObjectName(QStringLiteral("mouldCheck"));
    below->addWidget(check_, 3);
    column->addLayout(below);
    addToolRow(box);

    steps_ = addTable(tr("Build"), {{tr("In this order"), false}, {tr("parts"), true}});
    steps_->lineModel().setWrapsNames(true);
    parts_ = addTable(tr("Parts"), {{tr("Number, part"), false},
                                    {tr("long\nmm"), true},
                                    {tr("wide\nmm"), true},
                                    {tr("thick\nmm"), true},
                                    {tr("count"), true}});
    heights_ = addTable(tr("Heights"), {{tr("Above the base"), false}, {tr("from\nmm"), true}, {tr("to\nmm"), true}});
    moulds_ = addTable(tr("Moulds"), {{tr("Mould"), false}, {tr("inside\nmm"), true}});
    fewer_ = addTable(tr("Fewer"), savingColumns());
    fewer_->installEventFilter(this);
    told_ = new QLabel(this);
    told_->setWordWrap(true);
    told_->hide();
    offered_ = new RemedyList(this);
    addFootnote(told_);
    addFootnote(offered_);
    connect(offered_, &RemedyList::taken, this, &MouldCard::take);
    connect(picture_, &MouldView::partClicked, this, [this](const QString& name) {
        const int at = parts_->lineModel().rowOf(name);
        if (at >= 0) parts_->setCurrentIndex(parts_->lineModel().index(at, 0));
    });
    connect(&selection, &Selection::chosenChanged, this, &MouldCard::followSelection);
}

void MouldCard::showLarge()
{
    if (!large_) {
        large_ = new MouldView(MouldView::Shows::mould, this);
        large_->setWindowFlag(Qt::Window);
        large_->setAutoFillBackground(true);
        large_->resize(900, 640);
        auto* close = new QAction(large_);
        close->setShortcut(Qt::Key_Escape);
        connect(close, &QAction::triggered, large_, &QWidget::hide);
        large_->addAction(close);
    }
    const AssessmentPtr& assessment = shownAssessment();
    if (!assessment || !shownPlan()) return;
    large_->setSubject(mouldSubject(*shownPlan(), *assessment, casting_));
    large_->setMarked(picture_->marked());
    large_->setWindowTitle(tr("Mould of %1").arg(subjectName(shownPlan().get(), casting_)));
    large_->show();
    large_->raise();
}

CardSummary MouldCard::summarise(const Plan&, const Assessment& assessment) const
{
    CardSummary summary;
    summary.empty = assessment.moulds.empty();
    if (summary.empty) return summary;
    int mirrored = 0;
    int same = 0;
    int twins = 0;
    for (const MouldPtr& mould : assessment.moulds) {
        mirrored += mould->mirrored ? 1 : 0;
        same += std::ranges::count(mould->twins, TwinKind::same, &Twin::kind) > 0 ? 1 : 0;
        twins += std::ranges::count(mould->twins, TwinKind::mirror, &Twin::kind) > 0 ? 1 : 0;
    }
    const int all = static_cast<int>(assessment.moulds.size());
    summary.big = {.text = QString::number(all), .unit = all == 1 ? tr("mould") : tr("moulds")};
    summary.lines.append(
        {.text = counted(mirrored, tr("1 is the mirror of what you see in the kitchen"),
                         tr("%1 are the mirror of what you see in the kitchen"))});
    if (same > 0) summary.lines.append({.text = tr("%1 castings could come out of the mould of another").arg(same)});
    if (twins > 0) {
        summary.lines.append({.text = tr("%1 have a mirror twin: mind the hand").arg(twins), .mark = Severity::note});
    }
    // Opened, the tables say the same, and the picture wants the room.
    if (isOpened()) summary.lines.clear();
    return summary;
}

void MouldCard::settleCasting(const Assessment& assessment)
{
    const Mould* shown = mouldOf(assessment, casting_);
    const QStringList& chosen = selection().parts();
    const auto isChosen = [&](const Mould& mould) { return chosen.contains(QString::fromStdString(mould.part)); };
    if (shown && (chosen.isEmpty() || isChosen(*shown))) return;
    const Mould* first = nullptr;
    for (const QString& part : chosen) {
        for (const MouldPtr& mould : assessment.moulds) {
            if (!first && QString::fromStdString(mould->part) == part) first = mould.get();
        }
    }
    if (!first && !shown && !assessment.moulds.empty()) first = assessment.moulds.front().get();
    if (first) {
        casting_ = first->casting;
        picture_->setMarked({});
    } else if (!shown) {
        casting_.clear();
    }
}

void MouldCard::fillPicker(const Plan& plan, const Assessment& assessment)
{
    const QSignalBlocker quiet(picker_);
    QStringList ids;
    for (const MouldPtr& mould : assessment.moulds) ids.append(QString::fromStdString(mould->casting));
    QStringList known;
    for (int i = 0; i < picker_->count(); ++i) known.append(picker_->itemData(i).toString());
    if (ids != known) {
        picker_->clear();
        for (const QString& id : ids) picker_->addItem(subjectName(&plan, id.toStdString()), id);
    }
    picker_->setCurrentIndex(picker_->findData(QString::fromStdString(casting_)));
}

void MouldCard::fillTables(const Plan& plan, const Assessment& assessment)
{
    settleCasting(assessment);
    fillPicker(plan, assessment);
    const std::optional<MouldSubject> subject = mouldSubject(plan, assessment, casting_);
    picture_->setSubject(subject);
    standing_->setSubject(subject);
    if (large_) large_->setSubject(subject);
    picture_->setVisible(subject.has_value());
    standing_->setVisible(subject.has_value());
    if (!subject) {
        check_->clear();
        steps_->lineModel().setLines({});
        parts_->lineModel().setLines({});
        heights_->lineModel().setLines({});
    } else {
        const Mould& mould = *subject->mould;
        const PartKind kind = subject->part->kind();
        QStringList said;
        const QString sentence = mouldCheckSentence(mould.check, kind);
        said << (sentence.isEmpty() ? tr("Nothing on it tells left from right.") : sentence);
        said << tr("The black dot is the same corner in both pictures: all figures begin there.");
        said << twinTexts(mould);
        check_->setText(said.join(QLatin1Char('\n')));
        steps_->lineModel().setLines(stepLines(*subject));
        parts_->lineModel().setLines(partLines(mould));
        QList<Line> lines;
        for (const MouldHeight& height : mouldHeights(*subject)) {
            lines.append({.key = QStringLiteral("%1/%2").arg(height.name).arg(lines.size()),
                          .cells = {height.name, shortNumberText(height.fromMm, 1), shortNumberText(height.toMm, 1)},
                          .source = static_cast<int>(lines.size())});
        }
        heights_->lineModel().setLines(std::move(lines));
    }
    moulds_->lineModel().setLines(mouldLines(plan, assessment));
    fillSavings(plan);
}

void MouldCard::fillSavings(const Plan& plan)
{
    savings_.clear();
    QList<Line> lines;
    if (const auto& known = live().savings()) {
        savings_ = savingRows(plan, *known);
        for (const SavingRow& row : savings_) lines.append(row.line);
    } else {
        lines.append({.key = QStringLiteral("waiting"),
                      .kind = Line::Kind::heading,
                      .cells = {tr("Money against days: being weighed")}});
    }
    fewer_->lineModel().setLines(std::move(lines));
    offerSaving();
}

void MouldCard::offerSaving()
{
    const int row = fewer_->isVisible() ? fewer_->currentRow() : -1;
    const int source = row < 0 ? -1 : fewer_->lineModel().line(row).source;
    const bool has = source >= 0 && source < static_cast<int>(savings_.size())
                  && savings_[static_cast<std::size_t>(source)].remedy.has_value();
    offered_->setRemedies(has ? std::vector<Remedy>{*savings_[static_cast<std::size_t>(source)].remedy}
                              : std::vector<Remedy>());
    told_->hide();
}

void MouldCard::take(const Remedy& remedy)
{
    // The moment before the ink changes: the button can be pressed, and what it does is of yesterday.
    if (isStale()) return;
    if (const auto problem = takeRemedy(document(), remedy)) {
        told_->setText(findingText(*problem) + QLatin1Char(' ') + findingHelp(*problem));
        told_->show();
    }
}

void MouldCard::staleChanged(bool stale) { offered_->setOutdated(stale); }

bool MouldCard::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == fewer_ && (event->type() == QEvent::Show || event->type() == QEvent::Hide)) offerSaving();
    return LiveCard::eventFilter(watched, event);
}

QList<Line> MouldCard::stepLines(const MouldSubject& subject) const
{
    const bool hasSteel = subject.steel && !(subject.steel->meshes.empty() && subject.steel->bars.empty());
    QList<Line> lines;
    for (const MouldStep& step : mouldSteps(*subject.mould, hasSteel)) {
        const int number = static_cast<int>(lines.size()) + 1;
        lines.append({.key = QStringLiteral("step/%1/%2").arg(number).arg(
                          step.parts.empty() ? QString() : QString::fromStdString(step.parts.front()->name)),
                      .cells = {tr("%1  %2", "number of a step, what to do").arg(number).arg(step.text), step.numbers},
                      .source = number - 1});
    }
    return lines;
}

QList<Line> MouldCard::partLines(const Mould& mould) const
{
    QList<Line> lines;
    for (const MouldPart& part : mould.parts) {
        QStringList details{mouldStuffName(part.stuff)};
        if (part.goodFace) details << tr("good face in");
        if (part.shaped) details << tr("to the template");
        lines.append({.key = QString::fromStdString(part.name),
                      .cells = {tr("%1  %2", "number, part").arg(mouldNumber(part), mouldPartText(part)),
                                shortNumberText(part.lengthMm, 1), shortNumberText(part.widthMm, 1),
                                shortNumberText(part.thicknessMm, 1), QString::number(part.count)},
                      .details = details,
                      .tip = mouldStepText(part),
                      .source = static_cast<int>(lines.size())});
    }
    return lines;
}

QList<Line> MouldCard::mouldLines(const Plan& plan, const Assessment& assessment) const
{
    QList<Line> lines;
    for (const MouldPtr& mould : assessment.moulds) {
        QStringList details{handWord(*mould)};
        details << twinTexts(*mould);
        lines.append({.key = QString::fromStdString(mould->casting),
                      .cells = {subjectName(&plan, mould->casting), mouldSize(*mould)},
                      .details = details,
                      .source = static_cast<int>(lines.size())});
    }
    return lines;
}

QList<FigureValue> MouldCard::valuesBehind(const QString&, const Plan&, const Assessment&) const { return {}; }

LiveCard::LineNote MouldCard::noteOf(const LineView&, const Line&, const Plan&, const Assessment&) const { return {}; }

void MouldCard::visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                              const std::function<void(const std::string&)>& visit) const
{
    if (line.source < 0) return;
    if (&view == fewer_) {
        const auto index = static_cast<std::size_t>(line.source);
        if (index >= savings_.size()) return;
        for (const std::string& casting : savings_[index].castings) visit(casting);
    } else if (&view == moulds_) {
        const auto index = static_cast<std::size_t>(line.source);
        if (index < assessment.moulds.size()) visit(assessment.moulds[index]->casting);
    } else if (!casting_.empty()) {
        visit(casting_);
    }
}

void MouldCard::lineBecameCurrent(const LineView& view, int row)
{
    if (&view == fewer_) {
        offerSaving();
    } else if (&view == parts_ || &view == steps_) {
        const std::string name =
            row >= 0 ? view.lineModel().line(row).key.section(QLatin1Char('/'), -1).toStdString() : std::string();
        picture_->setMarked(name);
        if (large_) large_->setMarked(name);
    } else if (&view == moulds_ && row >= 0) {
        showCasting(moulds_->lineModel().line(row).key.toStdString());
    }
}

void MouldCard::showCasting(const std::string& casting)
{
    if (!shownAssessment() || !shownPlan()) return;
    const Mould* mould = mouldOf(*shownAssessment(), casting);
    if (!mould) return;
    if (casting != casting_) picture_->setMarked({});
    casting_ = casting;
    // The sheet shows which piece it is; one that is chosen among others stays so.
    const QString part = QString::fromStdString(mould->part);
    choosing_ = true;
    if (!selection().contains(part)) selection().setParts({part});
    choosing_ = false;
    refillTables();
}

void MouldCard::followSelection()
{
    if (!choosing_) refillTables();
}

}  // namespace yardcast::ui
