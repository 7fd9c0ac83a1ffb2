#include "ui/panels/strength_card.h"

#include <algorithm>

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>

#include "ui/document/selection.h"
#include "ui/live/live_assessment.h"
#include "ui/live/strength_choice.h"
#include "ui/look/theme.h"
#include "ui/panels/counted.h"
#include "ui/panels/line_view.h"
#include "ui/panels/search_box.h"
#include "ui/panels/strength_values.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

constexpr double kFull = 100.0;
/// Close to the limit: worth a look, with what is known of the concrete.
constexpr double kNear = 80.0;

/// As the findings have it: a stop is what cracks without any safety, `safety` being that of the plan.
std::optional<Severity> severityOf(const CaseResult& result, double safety)
{
    if (!result.holds || result.usePercent > kFull * safety) return Severity::stop;
    if (result.usePercent > kNear) return Severity::caution;
    return std::nullopt;
}

QString useText(const CaseResult& result)
{
    return result.holds ? percentText(result.usePercent) : StrengthCard::tr("tips");
}

/// Greater where the piece is worse off: what tips before what cracks.
double gravityOf(const CaseResult& result) { return result.holds ? result.usePercent : 1e9; }

QString caseKey(StrengthCase which) { return QString::number(static_cast<int>(which)); }

}  // namespace

StrengthCard::StrengthCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : LiveCard(QStringLiteral("strengthCard"), document, selection, live, parent)
{
    setEmptyText(tr("Nothing to solve yet. Draw a counter and supports under it; what the slab bears shows here."));
    auto* row = new QWidget(this);
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(kStepPx);
    auto* label = new QLabel(tr("&Case"), row);
    chooser_ = new QComboBox(row);
    chooser_->setObjectName(QStringLiteral("caseChooser"));
    chooser_->setAccessibleName(tr("Case that is shown here and over the drawing"));
    chooser_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    chooser_->setMinimumContentsLength(12);
    label->setBuddy(chooser_);
    layout->addWidget(label);
    layout->addWidget(chooser_, 1);
    addToolRow(row);
    search_ = new SearchBox(document, live, this);
    addToolRow(search_);
    connect(chooser_, &QComboBox::activated, this, [this](int index) {
        LiveAssessment& figures = this->live();
        const bool worst = index <= 0 || index > chosenFrom_.size();
        figures.strengthChoice().setWhich(worst ? std::nullopt : std::optional(chosenFrom_[index - 1]));
    });

    pieces_ = addTable(tr("Pieces"), {{tr("Casting"), false}, {tr("MPa"), true}, {tr("of"), true}, {tr("use"), true}});
    cases_ = addTable(tr("Cases"), {{tr("Case"), false},
                                    {tr("age\nh"), true},
                                    {tr("×"), true},
                                    {tr("MPa"), true},
                                    {tr("of"), true},
                                    {tr("use"), true}});
    sections_ = addTable(tr("Sections"), {{tr("Cut"), false},
                                          {tr("moment\nNm/m"), true},
                                          {tr("force\nN/mm"), true},
                                          {tr("MPa"), true},
                                          {tr("use"), true}});
    about_ = new QLabel(this);
    about_->setObjectName(QStringLiteral("aboutStrength"));
    about_->setWordWrap(true);
    about_->setForegroundRole(QPalette::PlaceholderText);
    about_->setContentsMargins(kStepPx, kStepPx, kStepPx, 0);
    addFootnote(about_);
    connect(&live.strengthChoice(), &StrengthChoice::changed, this, &StrengthCard::refresh);
    connect(&selection, &Selection::chosenChanged, this, [this] {
        casting_.clear();
        refresh();
    });
}

bool StrengthCard::isStale() const { return LiveCard::isStale() || live().isRefining(); }

StrengthCard::Shown StrengthCard::shown(const Assessment& assessment) const
{
    const StrengthChoice& choice = live().strengthChoice();
    const QStringList& chosen = selection().parts();
    const auto worstOf = [&](const auto& counts) {
        Shown worst;
        for (const CastingStrengthPtr& one : assessment.strength) {
            const CaseResult* result = counts(*one) ? choice.of(*one) : nullptr;
            if (!result || (worst.result && gravityOf(*result) <= gravityOf(*worst.result))) continue;
            worst = {one.get(), result};
        }
        return worst;
    };
    const auto isChosen = [&](const CastingStrength& one) {
        return chosen.contains(QString::fromStdString(one.part));
    };
    if (!casting_.empty()) {
        const Shown looked = worstOf([&](const CastingStrength& one) { return one.casting == casting_; });
        if (looked.result) return looked;
    }
    const Shown ofChosen = worstOf(isChosen);
    return ofChosen.result ? ofChosen : worstOf([](const CastingStrength&) { return true; });
}

CardSummary StrengthCard::summarise(const Plan& plan, const Assessment& assessment) const
{
    CardSummary summary;
    const double safety = assumptionsOf(plan).crackSafety;
    const Shown what = shown(assessment);
    summary.empty = !what.result;
    if (summary.empty) return summary;
    const CaseResult& result = *what.result;
    const QString name = subjectName(&plan, what.strength->casting);
    if (!result.holds) {
        summary.big = {.code = QStringLiteral("strength_use"),
                       .text = tr("Tips"),
                       .unit = tr("nothing holds %1").arg(name),
                       .mark = Severity::stop};
        summary.lines.append({.code = QStringLiteral("strength_use"), .text = strengthCaseName(result.which)});
        return summary;
    }
    summary.big = {.code = QStringLiteral("strength_use"),
                   .text = numberText(result.usePercent, 0),
                   .unit = tr("% of its strength, %1").arg(name),
                   .mark = severityOf(result, safety)};
    summary.lines.append({.code = QStringLiteral("strength_use"),
                          .text = tr("%1 %2: %3")
                                      .arg(strengthCaseName(result.which), ageText(result.ageH),
                                           placeText(result.place, findPart(plan, what.strength->part))),
                          .mark = severityOf(result, safety)});
    summary.lines.append({.code = QStringLiteral("strength_tension"),
                          .text = tr("%1 of %2 MPa, tension at the %3")
                                      .arg(numberText(std::max(result.tensionTopMpa, result.tensionBottomMpa), 2),
                                           numberText(result.strengthMpa, 2), sideText(result.onFace))});
    const auto over = std::ranges::count_if(assessment.strength, [&](const CastingStrengthPtr& one) {
        const CaseResult* shownCase = live().strengthChoice().of(*one);
        return shownCase && (!shownCase->holds || shownCase->usePercent > kFull);
    });
    if (over > 0) {
        summary.lines.append({.text = counted(int(over), tr("1 piece is asked for more than it has"),
                                              tr("%1 pieces are asked for more than they have")),
                              .mark = Severity::stop});
    } else {
        summary.lines.append({.code = QStringLiteral("strength_deflection"),
                              .text = tr("Bends by %1 mm").arg(numberText(result.deflectionMm, 2))});
    }
    return summary;
}

void StrengthCard::fillTables(const Plan& plan, const Assessment& assessment)
{
    safety_ = assumptionsOf(plan).crackSafety;
    QList<Line> lines;
    const StrengthChoice& choice = live().strengthChoice();
    for (int i = 0; i < int(assessment.strength.size()); ++i) {
        const CastingStrength& one = *assessment.strength[std::size_t(i)];
        const CaseResult* result = choice.of(one);
        if (!result) continue;
        Line line{.key = QString::fromStdString(one.casting),
                  .cells = {subjectName(&plan, one.casting),
                            numberText(std::max(result->tensionTopMpa, result->tensionBottomMpa), 2),
                            numberText(result->strengthMpa, 2), useText(*result)},
                  .tip = strengthCaseName(result->which),
                  .mark = severityOf(*result, safety_),
                  .share = result->usePercent / kFull,
                  .source = i};
        if (!choice.which()) line.details = {strengthCaseName(result->which)};
        lines.append(line);
    }
    std::ranges::stable_sort(lines, [&](const Line& a, const Line& b) {
        const auto gravity = [&](const Line& line) {
            return gravityOf(*choice.of(*assessment.strength[std::size_t(line.source)]));
        };
        return gravity(a) > gravity(b);
    });
    pieces_->lineModel().setLines(std::move(lines));
    const Shown what = shown(assessment);
    search_->setPart(what.strength ? what.strength->part : std::string());
    fillChooser(what.strength);
    if (!what.result) return;
    fillCases(*what.strength);
    fillSections(*what.result, findPart(plan, what.strength->part));
    const QString text = footnote(what, plan);
    if (about_->text() != text) about_->setText(text);
}

void StrengthCard::fillChooser(const CastingStrength* strength)
{
    QList<StrengthCase> cases;
    if (strength) {
        for (const CaseResult& one : strength->cases) cases.append(one.which);
    }
    const auto& which = live().strengthChoice().which();
    if (which && !cases.contains(*which)) cases.append(*which);
    const QSignalBlocker quiet(chooser_);
    if (cases != chosenFrom_ || chooser_->count() == 0) {
        chosenFrom_ = cases;
        chooser_->clear();
        chooser_->addItem(tr("Each piece in its worst"));
        for (const StrengthCase one : std::as_const(cases)) chooser_->addItem(strengthCaseName(one));
    }
    chooser_->setCurrentIndex(which ? int(cases.indexOf(*which)) + 1 : 0);
}

void StrengthCard::fillCases(const CastingStrength& strength)
{
    QList<Line> lines;
    for (int i = 0; i < int(strength.cases.size()); ++i) {
        const CaseResult& one = strength.cases[std::size_t(i)];
        Line line{.key = caseKey(one.which),
                  .cells = {strengthCaseName(one.which), shortNumberText(one.ageH, 1), shortNumberText(one.factor, 2),
                            numberText(std::max(one.tensionTopMpa, one.tensionBottomMpa), 2),
                            numberText(one.strengthMpa, 2), useText(one)},
                  .mark = severityOf(one, safety_),
                  .share = one.usePercent / kFull,
                  .source = i};
        lines.append(line);
    }
    cases_->lineModel().setLines(std::move(lines));
    // The line is that of the drawing, wherever the case was chosen.
    const auto& which = live().strengthChoice().which();
    const int row = which ? cases_->lineModel().rowOf(caseKey(*which)) : -1;
    if (cases_->currentRow() != row) cases_->setCurrentIndex(row < 0 ? QModelIndex() : cases_->lineModel().index(row, 0));
}

void StrengthCard::fillSections(const CaseResult& result, const Part* part)
{
    QList<Line> lines;
    for (int i = 0; i < int(result.sections.size()); ++i) {
        const SectionForces& one = result.sections[std::size_t(i)];
        Line line{.key = QStringLiteral("%1/%2").arg(placeText(one.name, part)).arg(i),
                  // A moment of 1 Nmm a mm is 1 Nm a metre.
                  .cells = {placeText(one.name, part), numberText(one.meanMomentN, 0), numberText(one.meanForceNMm, 1),
                            numberText(one.tensionMpa, 2), percentText(one.usePercent)},
                  .share = one.usePercent / kFull,
                  .source = i};
        if (one.name == result.place) line.mark = severityOf(result, safety_);
        lines.append(line);
    }
    sections_->lineModel().setLines(std::move(lines));
}

QString StrengthCard::footnote(const Shown& what, const Plan& plan) const
{
    const CastingStrength& strength = *what.strength;
    QStringList sentences{tr("Cases and cuts are those of %1; cuts in the case \"%2\".")
                              .arg(subjectName(&plan, strength.casting), strengthCaseName(what.result->which))};
    sentences.append(tr("Positive moments pull the underside."));
    if (strength.gripsProposed) sentences.append(tr("The grips are proposed by the program."));
    sentences.append(live().isRefining() ? tr("Coarse for now: being refined.")
                                         : tr("The strength is that of the mix's class: nobody has broken a cube."));
    return sentences.join(QLatin1Char(' '));
}

QList<FigureValue> StrengthCard::valuesBehind(const QString&, const Plan& plan, const Assessment& assessment) const
{
    const Shown what = shown(assessment);
    return what.result ? caseValues(*what.strength, *what.result, plan) : QList<FigureValue>();
}

void StrengthCard::visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                                 const std::function<void(const std::string&)>& visit) const
{
    if (&view == pieces_) {
        if (line.source >= 0) visit(assessment.strength[std::size_t(line.source)]->casting);
        return;
    }
    const Shown what = shown(assessment);
    if (what.strength) visit(what.strength->casting);
}

LiveCard::LineNote StrengthCard::noteOf(const LineView& view, const Line& line, const Plan& plan,
                                        const Assessment& assessment) const
{
    if (line.source < 0) return {};
    const auto index = std::size_t(line.source);
    if (&view == pieces_) {
        const CastingStrength& one = *assessment.strength[index];
        const CaseResult* result = live().strengthChoice().of(one);
        return result ? LineNote{QStringLiteral("strength_use"), caseValues(one, *result, plan)} : LineNote{};
    }
    const Shown what = shown(assessment);
    if (!what.result) return {};
    if (&view == cases_) {
        return {QStringLiteral("strength_use"), caseValues(*what.strength, what.strength->cases[index], plan)};
    }
    return {QStringLiteral("strength_section"),
            sectionValues(what.result->sections[index], *what.result, findPart(plan, what.strength->part))};
}

void StrengthCard::lineBecameCurrent(const LineView& view, int row)
{
    const Line* line = row < 0 ? nullptr : &view.lineModel().line(row);
    if (!line || line->source < 0 || !shownAssessment()) return;
    if (&view == pieces_) {
        casting_ = line->key.toStdString();
        refresh();
    } else if (&view == cases_) {
        live().strengthChoice().setWhich(static_cast<StrengthCase>(line->key.toInt()));
    }
}

}  // namespace yardcast::ui
