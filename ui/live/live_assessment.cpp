#include "ui/live/live_assessment.h"

#include <algorithm>
#include <utility>

#include "core/assess/assess.h"
#include "core/assess/mould_savings.h"
#include "core/assess/with_cuts.h"
#include "ui/document/plan_document.h"
#include "ui/live/cut_runner.h"
#include "ui/live/readiness_runner.h"
#include "ui/live/remedy_runner.h"
#include "ui/live/strength_choice.h"
#include "ui/live/strength_runner.h"

namespace yardcast::ui {

namespace {

/// Without a change for so long, the hand rests.
constexpr int kRestMs = 250;

/// A fine answer is only ever asked for with all its cases.
bool isWhole(const CastingStrengthPtr& strength) { return strength->refinement >= Refinement::working; }

}  // namespace

/// Lives on the thread; touched only by calls queued to it.
class LiveAssessment::Worker : public QObject {
public:
    explicit Worker(PriceBook prices) : assessor_(std::make_unique<Assessor>(std::move(prices))) {}

    void setPrices(PriceBook prices) { assessor_ = std::make_unique<Assessor>(std::move(prices)); }
    AssessmentPtr assess(const Plan& plan) { return assessor_->assess(plan); }

private:
    std::unique_ptr<Assessor> assessor_;
};

LiveAssessment::LiveAssessment(PlanDocument& document, PriceBook prices, QObject* parent,
                               StrengthAssessor::Solver solver)
    : QObject(parent), document_(document), prices_(std::move(prices)), worker_(new Worker(prices_)),
      runner_(new StrengthRunner(solver, this)), choice_(new StrengthChoice(this)),
      readinessRunner_(new ReadinessRunner(this)), cutRunner_(new CutRunner(this)), remedyRunner_(new RemedyRunner(std::move(solver), this))
{
    worker_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
    thread_.setObjectName("assessment");
    thread_.start();
    connect(&document, &PlanDocument::documentReset, this, &LiveAssessment::forgetStrength);
    connect(&document, &PlanDocument::planChanged, this, &LiveAssessment::request);
    connect(runner_, &StrengthRunner::solved, this, &LiveAssessment::takeStrength);
    connect(readinessRunner_, &ReadinessRunner::found, this, [this](const PlanPtr& of, const Readiness& readiness) {
        if (of != plan_) return;
        readiness_ = readiness;
        putTogether();
        tryRemedies();
        emit assessed();
    });
    connect(cutRunner_, &CutRunner::found, this, [this](const PlanPtr& of, const CutPlansPtr& cuts) {
        if (of != plan_) return;
        cuts_ = cuts;
        putTogether();
        emit assessed();
    });
    connect(cutRunner_, &CutRunner::weighed, this,
            [this](const PlanPtr& of, const std::shared_ptr<const MouldSavings>& savings) {
                if (of != plan_) return;
                savings_ = savings;
                putTogether();
                emit assessed();
            });
    connect(remedyRunner_, &RemedyRunner::found, this, &LiveAssessment::takeRemedies);
    connect(remedyRunner_, &RemedyRunner::finished, this, [this](const PlanPtr& plan) {
        if (plan != plan_) return;
        tryingRemedies_ = false;
        emit assessed();
    });
    rest_.setSingleShot(true);
    rest_.setInterval(kRestMs);
    connect(&rest_, &QTimer::timeout, this, &LiveAssessment::refine);
    request();
}

LiveAssessment::~LiveAssessment()
{
    thread_.quit();
    thread_.wait();
}

bool LiveAssessment::isCurrent() const { return plan_ == document_.plan(); }

void LiveAssessment::setPrices(PriceBook prices)
{
    prices_ = std::move(prices);
    cutRunner_->cancel();
    cuts_.reset();
    savings_.reset();
    QMetaObject::invokeMethod(worker_, [worker = worker_, book = prices_] { worker->setPrices(book); });
    request();
}

void LiveAssessment::request()
{
    rest_.start();
    if (busy_) {
        waiting_ = true;
        return;
    }
    busy_ = true;
    waiting_ = false;
    QMetaObject::invokeMethod(worker_, [this, worker = worker_, plan = document_.plan(), opened = opened_] {
        AssessmentPtr assessment = worker->assess(*plan);
        QMetaObject::invokeMethod(this, [this, plan, assessment, opened] { take(plan, assessment, opened); });
    });
}

void LiveAssessment::take(const PlanPtr& plan, const AssessmentPtr& assessment, int opened)
{
    busy_ = false;
    // What is left of the plan that was open before is not worth solving.
    const bool another = plan != plan_ && opened == opened_;
    base_ = assessment;
    if (plan != plan_) {
        // What would help was tried on another plan, and its hours are not those of this one.
        readinessRunner_->cancel();
        readiness_.reset();
        cutRunner_->cancel();
        cuts_.reset();
        savings_.reset();
        remedyRunner_->cancel();
        remedies_.clear();
        tryingRemedies_ = false;
    }
    plan_ = plan;
    putTogether();
    if (another) {
        if (strengthState_ != StrengthState::none) strengthState_ = StrengthState::older;
        runner_->ask({plan_, base_, Refinement::draft, casesNow()});
    }
    emit assessed();
    if (waiting_) request();
}

void LiveAssessment::forgetStrength()
{
    // Parts of another plan may have the same names.
    runner_->forget();
    strength_.clear();
    strengthState_ = StrengthState::none;
    fresh_ = true;
    ++opened_;
}

void LiveAssessment::refine()
{
    if (document_.isPreviewing() || !isCurrent()) {
        rest_.start();
        return;
    }
    askForCuts();
    if (strengthState_ == StrengthState::working) return;
    runner_->ask({plan_, base_, Refinement::working, {}});
}

CaseChoice LiveAssessment::casesNow() const
{
    constexpr CaseChoice kAll{};
    constexpr CaseChoice kInUse{.inUse = true, .handling = false};
    // The first picture of a plan that was opened: the rest comes with the fine one.
    if (fresh_) return kInUse;
    if (!document_.isPreviewing()) return kAll;
    if (const auto& which = choice_->which()) {
        const bool handling = isHandling(*which);
        return {.inUse = !handling, .handling = handling};
    }
    // Each piece is shown in its worst case; of those the hand is on it must be the true one.
    const std::vector<PartPtr>& before = document_.committed()->parts;
    const bool handlingIsSeen = std::ranges::any_of(strength_, [&](const CastingStrengthPtr& one) {
        const CaseResult* worst = one->worst();
        const int index = indexOfPart(*plan_, one->part);
        if (!worst || !isHandling(worst->which) || index < 0) return false;
        return std::ranges::find(before, plan_->parts[std::size_t(index)]) == before.end();
    });
    return handlingIsSeen ? kAll : kInUse;
}

void LiveAssessment::takeStrength(const StrengthJob& job, const std::vector<CastingStrengthPtr>& strength)
{
    const bool whole = std::ranges::all_of(strength, isWhole);
    const bool allCases = job.choice.inUse && job.choice.handling;
    std::vector<CastingStrengthPtr> taken = strength;
    for (CastingStrengthPtr& one : taken) {
        if (allCases || isWhole(one)) continue;
        const auto before = std::ranges::find(strength_, one->casting, &CastingStrength::casting);
        if (before != strength_.end()) one = completedFrom(one, *before);
    }
    strength_ = std::move(taken);
    // While a drag goes on, what is solved belongs to a plan of a moment ago.
    strengthState_ = job.plan != plan_ ? StrengthState::older
                     : whole           ? StrengthState::working
                                       : StrengthState::draft;
    putTogether();
    if (strengthState_ == StrengthState::working) findReadiness();
    // A plan that was just opened is looked at: nobody's hand is to be waited for.
    if (std::exchange(fresh_, false)) refine();
    emit assessed();
}

void LiveAssessment::putTogether()
{
    solved_ = withStrength(*plan_, base_, strength_);
    if (readiness_) solved_ = withReadiness(*plan_, solved_, *readiness_);
    solved_ = withCuts(*plan_, solved_, prices_, cuts_);
    if (savings_) solved_ = withMouldSavings(*plan_, solved_, *savings_);
    addRemedies();
}

void LiveAssessment::addRemedies()
{
    assessment_ = remedies_.empty() ? solved_ : withRemedies(solved_, remedies_);
}

void LiveAssessment::askForCuts()
{
    if (!cuts_) cutRunner_->ask(plan_, base_, prices_);
}

void LiveAssessment::findReadiness()
{
    // What is known of this plan was found with its strength, and that has not changed.
    if (readiness_) {
        tryRemedies();
        return;
    }
    tryingRemedies_ = true;
    readinessRunner_->ask(plan_, assessment_);
}

void LiveAssessment::tryRemedies()
{
    remedies_.clear();
    tryingRemedies_ = true;
    remedyRunner_->ask(plan_, prices_, assessment_);
}

void LiveAssessment::takeRemedies(const PlanPtr& plan, const std::string& complaint,
                                  const std::vector<Remedy>& remedies)
{
    if (plan != plan_ || remedies.empty()) return;
    remedies_[complaint] = remedies;
    addRemedies();
    emit assessed();
}

}  // namespace yardcast::ui
