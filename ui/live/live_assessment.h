#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QThread>
#include <QTimer>

#include "core/assess/assessment.h"
#include "core/assess/readiness_assessor.h"
#include "core/assess/strength_assessor.h"
#include "core/plan/plan.h"
#include "core/purchase/price_book.h"
#include "core/remedy/remedies.h"

namespace yardcast {
struct MouldSavings;
}

namespace yardcast::ui {

class CutRunner;
class PlanDocument;
class ReadinessRunner;
class RemedyRunner;
class StrengthChoice;
class StrengthRunner;
struct StrengthJob;

/// How well the strength that is shown fits the plan it is shown with.
enum class StrengthState {
    none,     ///< nothing has been solved yet
    older,    ///< of an older plan, or not of all castings: being solved anew
    draft,    ///< of this plan, on coarse meshes or not in all cases: being refined
    working   ///< of this plan, as fine as on the screen
};

/// Keeps an Assessment up to date beside the drawing, on threads of its own. Only the newest plan counts: while one
/// is being assessed, those that came in between are skipped. The quick figures come first; strength follows, first
/// coarse, and refined when the hand rests. `assessment()` is always that of `plan()`, with the newest strength that
/// is known for its castings. When the hand rests, what is sawn is cut from whole sheets and lengths, and the shopping list
/// goes by that. When all is refined, the hours from which castings may be handled are found; then edits that
/// may help are tried, and the findings get them as they are found.
class LiveAssessment : public QObject {
    Q_OBJECT

public:
    LiveAssessment(PlanDocument& document, PriceBook prices, QObject* parent = nullptr,
                   StrengthAssessor::Solver solver = solveStrength);
    ~LiveAssessment() override;

    /// The latest, and the plan it speaks about. Null before the first.
    const AssessmentPtr& assessment() const { return assessment_; }
    const PlanPtr& plan() const { return plan_; }
    /// False while the shown plan is newer than the assessment.
    bool isCurrent() const;
    StrengthState strengthState() const { return strengthState_; }
    bool isRefining() const { return strengthState_ != StrengthState::working; }
    /// True while edits are being tried for the findings that are shown.
    bool isTryingRemedies() const { return tryingRemedies_; }
    /// False while hours are those of an older plan, or not known: the assessment has none then.
    bool isReadinessKnown() const { return readiness_.has_value(); }
    /// False while nothing is cut from sheets and lengths for this plan yet: the assessment has no cuts then.
    bool areCutsKnown() const { return cuts_ != nullptr; }
    /// What fewer moulds and old boards would save this plan; null while it is not weighed.
    const std::shared_ptr<const MouldSavings>& savings() const { return savings_; }
    /// Which case card and drawing show; a gesture solves this one first.
    StrengthChoice& strengthChoice() const { return *choice_; }
    void setPrices(PriceBook prices);
    const PriceBook& prices() const { return prices_; }

signals:
    /// The figures have changed: of another plan, or with newer strength.
    void assessed();

private:
    class Worker;
    void request();
    void take(const PlanPtr& plan, const AssessmentPtr& assessment, int opened);
    void takeStrength(const StrengthJob& job, const std::vector<CastingStrengthPtr>& strength);
    void forgetStrength();
    void refine();
    void findReadiness();
    void tryRemedies();
    void takeRemedies(const PlanPtr& plan, const std::string& complaint, const std::vector<Remedy>& remedies);
    void askForCuts();
    /// Base, strength, readiness, cuts, savings and remedies as far as they are known.
    void putTogether();
    /// Remedies come one by one: what they are added to has not changed.
    void addRemedies();
    CaseChoice casesNow() const;

    PlanDocument& document_;
    PriceBook prices_;
    QThread thread_;
    Worker* worker_;
    bool busy_ = false;
    bool waiting_ = false;
    AssessmentPtr base_;        ///< without strength
    AssessmentPtr solved_;      ///< all but the remedies
    AssessmentPtr assessment_;
    PlanPtr plan_;

    StrengthRunner* runner_;
    StrengthChoice* choice_;
    ReadinessRunner* readinessRunner_;
    std::optional<Readiness> readiness_;  ///< of the plan shown
    CutRunner* cutRunner_;
    CutPlansPtr cuts_;             ///< of the plan shown
    std::shared_ptr<const MouldSavings> savings_;  ///< of the plan shown
    RemedyRunner* remedyRunner_;
    FoundRemedies remedies_;       ///< of the plan shown
    bool tryingRemedies_ = false;
    QTimer rest_;
    std::vector<CastingStrengthPtr> strength_;  ///< the newest known
    StrengthState strengthState_ = StrengthState::none;
    bool fresh_ = true;  ///< nothing of this plan has been solved yet
    int opened_ = 0;     ///< counts the plans that were opened
};

}  // namespace yardcast::ui
