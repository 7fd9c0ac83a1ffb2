#include "ui/panels/search_box.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/document/plan_document.h"
#include "ui/live/live_assessment.h"
#include "ui/live/search_runner.h"
#include "ui/look/theme.h"
#include "ui/panels/remedy_edit.h"
#include "ui/panels/remedy_list.h"
#include "ui/wording/finding_words.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

SearchBox::SearchBox(PlanDocument& document, LiveAssessment& live, QWidget* parent)
    : QWidget(parent), document_(document), live_(live), runner_(new SearchRunner(this)),
      lightest_(new QPushButton(tr("Find the lightest"), this)),
      cheapest_(new QPushButton(tr("Find the cheapest"), this)), cancel_(new QPushButton(tr("Cancel"), this)),
      progress_(new QProgressBar(this)), answer_(new QLabel(this)), offered_(new RemedyList(this))
{
    setObjectName(QStringLiteral("search"));
    lightest_->setToolTip(tr("The lightest form of this counter that holds in every case: thickness, rim, ribs, one "
                             "more support and mesh are tried."));
    cheapest_->setToolTip(tr("The cheapest form of this counter that holds in every case, by the price book: "
                             "thickness, rim, ribs, one more support and mesh are tried."));
    progress_->setFormat(tr("tried %v of %m"));
    progress_->setAccessibleName(tr("Forms tried"));
    answer_->setWordWrap(true);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(lightest_);
    buttons->addWidget(cheapest_);
    buttons->addWidget(cancel_);
    buttons->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, kStepPx, 0, 0);
    column->setSpacing(kStepPx);
    column->addLayout(buttons);
    column->addWidget(progress_);
    column->addWidget(answer_);
    column->addWidget(offered_);

    connect(lightest_, &QPushButton::clicked, this, [this] { start(SearchGoal::lightest); });
    connect(cheapest_, &QPushButton::clicked, this, [this] { start(SearchGoal::cheapest); });
    connect(cancel_, &QPushButton::clicked, this, &SearchBox::cancel);
    connect(runner_, &SearchRunner::progressed, this, [this](const SearchStep& step) {
        progress_->setMaximum(step.of);
        progress_->setValue(step.tried);
    });
    connect(runner_, &SearchRunner::found, this, &SearchBox::tell);
    connect(offered_, &RemedyList::taken, this, &SearchBox::take);
    // What was searched was another plan: neither the search nor its answer is worth anything now.
    connect(&document_, &PlanDocument::planChanged, this, [this] {
        if (!searched_ || document_.plan() == searched_) return;
        runner_->cancel();
        searched_.reset();
        offered_->setRemedies({});
        answer_->clear();
        update();
    });
    update();
}

void SearchBox::setPart(const std::string& id)
{
    const Part* part = document_.plan() ? findPart(*document_.plan(), id) : nullptr;
    const std::string counter = part != nullptr && part->kind() == PartKind::counter ? id : std::string();
    if (counter == part_) return;
    part_ = counter;
    update();
}

bool SearchBox::isSearching() const { return runner_->isSearching(); }

void SearchBox::start(SearchGoal goal)
{
    if (part_.empty()) return;
    searched_ = document_.plan();
    offered_->setRemedies({});
    answer_->clear();
    progress_->setMaximum(0);
    progress_->setValue(0);
    runner_->search(searched_, live_.prices(), part_, goal);
    update();
}

void SearchBox::cancel()
{
    runner_->cancel();
    searched_.reset();
    update();
}

void SearchBox::tell(const PlanPtr& plan, const std::string& counter, const std::optional<SearchAnswer>& answer)
{
    const QString name = subjectName(plan.get(), counter);
    if (!answer) {
        answer_->setText(tr("%1: none of the forms tried holds in every case. Another support, another joint or "
                            "longer curing may help.")
                             .arg(name));
    } else {
        offered_->setRemedies({answer->remedy});
        answer_->setText(tr("%1: %2 tried.").arg(name, QString::number(answer->tried)));
    }
    update();
}

void SearchBox::take(const Remedy& remedy)
{
    if (!searched_ || document_.plan() != searched_) return;
    if (const auto problem = takeRemedy(document_, remedy)) {
        answer_->setText(findingText(*problem) + QLatin1Char(' ') + findingHelp(*problem));
        update();
    }
}

void SearchBox::update()
{
    const bool searching = runner_->isSearching();
    lightest_->setVisible(!searching);
    cheapest_->setVisible(!searching);
    lightest_->setEnabled(!part_.empty());
    cheapest_->setEnabled(!part_.empty());
    cancel_->setVisible(searching);
    progress_->setVisible(searching);
    answer_->setVisible(!answer_->text().isEmpty());
}

}  // namespace yardcast::ui
