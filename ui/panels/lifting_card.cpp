#include "ui/panels/lifting_card.h"

#include <algorithm>
#include <set>

#include <QEvent>
#include <QLabel>

#include "ui/document/selection.h"
#include "ui/live/live_assessment.h"
#include "ui/look/theme.h"
#include "ui/panels/counted.h"
#include "ui/panels/hours_lines.h"
#include "ui/panels/hours_view.h"
#include "ui/panels/line_view.h"
#include "ui/wording/figures.h"
#include "ui/wording/lifting_names.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

const CastingLift* heaviest(const Assessment& assessment)
{
    const auto found = std::ranges::max_element(assessment.handling, {}, &CastingLift::massKg);
    return found == assessment.handling.end() ? nullptr : &*found;
}

/// Share of what those who lift can lift; by the same bounds as the findings: caution past 1, stop past 2.
double useOf(const CastingLift& lift) { return lift.limitKg > 0.0 ? lift.massKg / lift.limitKg : 3.0; }

std::optional<Severity> severityOf(const CastingLift& lift)
{
    const double use = useOf(lift);
    if (use > 2.0) return Severity::stop;
    if (use > 1.0) return Severity::caution;
    return std::nullopt;
}

/// At the plan's grips, or at those the program proposes.
std::vector<GripLoad> loadsOf(const CastingLift& lift, const Assessment& assessment)
{
    const CastingStrength* strength = assessment.strengthOf(lift.casting);
    return lift.loadsAt(strength ? strength->grips : std::vector<Point>());
}

QString factorText(int people)
{
    switch (people) {
    case 0:
    case 1: return LiftingCard::tr("one lifts the limit");
    case 2: return LiftingCard::tr("two lift two thirds of their sum");
    case 3: return LiftingCard::tr("three lift half of their sum");
    default: return LiftingCard::tr("four and more: half of their sum (judgement)");
    }
}

}  // namespace

LiftingCard::LiftingCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : LiveCard(QStringLiteral("liftingCard"), document, selection, live, parent)
{
    setEmptyText(tr("Nothing to lift yet. The mass of a piece shows here while you draw it."));
    pieces_ = addTable(tr("Pieces"), {{tr("Casting"), false},
                                      {tr("kg"), true},
                                      {tr("people\nneed/have"), true},
                                      {tr("against\nthe limit"), false}});
    hands_ = addTable(tr("Hands"), {{tr("Casting"), false}, {tr("kg a\nperson"), true}, {tr("most on\na grip"), true}});
    rules_ = addTable(tr("Limits"), {{tr("Rule"), false},
                                     {tr("kg\neach"), true},
                                     {tr("your\ncrew, kg"), true},
                                     {tr("pieces\nover"), true}});
    means_ = addTable(tr("Help"), {{tr("Casting"), false}, {tr("What helps"), false}, {tr("kg"), true}, {tr("people"), true}});
    when_ = addTable(tr("When"), {{tr("Casting"), false}, {tr("likely"), true}, {tr("with\nsafety"), true}});
    when_->installEventFilter(this);
    hours_ = new HoursView(this);
    hours_->hide();
    addBelowTabs(hours_);
    connect(&selection, &Selection::chosenChanged, this, &LiftingCard::showChart);
    team_ = new QLabel(this);
    team_->setWordWrap(true);
    team_->setForegroundRole(QPalette::PlaceholderText);
    team_->setContentsMargins(kStepPx, kStepPx, kStepPx, 0);
    addFootnote(team_);
}

CardSummary LiftingCard::summarise(const Plan& plan, const Assessment& assessment) const
{
    CardSummary summary;
    const CastingLift* top = heaviest(assessment);
    summary.empty = !top;
    if (!top) return summary;
    summary.big = {.code = QStringLiteral("mass"),
                   .text = numberText(top->massKg, top->massKg < 100 ? 1 : 0),
                   .unit = tr("kg, the heaviest piece (%1)").arg(QString::fromStdString(top->casting))};
    const QString have = counted(top->crewPeople, tr("your crew: 1"), tr("your crew: %1"));
    const QString need = top->people > 0 ? counted(top->people, tr("1 person needed"), tr("%1 people needed"))
                                         : tr("Not by hand: over %1 people").arg(kMostPeople);
    summary.lines.append(
        {.code = QStringLiteral("people"), .text = tr("%1, %2").arg(need, have), .mark = severityOf(*top)});
    summary.lines.append(
        {.code = QStringLiteral("team_limit"),
         .text = tr("%1 %2").arg(counted(top->crewPeople, tr("1 person can lift"), tr("%1 people can lift")),
                                 massText(top->limitKg))});
    const auto over = std::ranges::count_if(assessment.handling, [](const CastingLift& l) { return useOf(l) > 1.0; });
    const QString all = tr("%1, %2 in all")
                            .arg(counted(static_cast<int>(assessment.handling.size()), tr("1 piece"), tr("%1 pieces")),
                                 massText(assessment.massKg()));
    summary.lines.append({.text = over > 0 ? tr("%1; %2 over the limit").arg(all).arg(over) : all});
    if (isOpened() && !when_->isHidden()) summary.lines.clear();
    Q_UNUSED(plan);
    return summary;
}

void LiftingCard::fillTables(const Plan& plan, const Assessment& assessment)
{
    QList<Line> lines;
    for (int i = 0; i < static_cast<int>(assessment.handling.size()); ++i) {
        const CastingLift& lift = assessment.handling[i];
        const double use = useOf(lift);
        const QString need = lift.people > 0 ? QString::number(lift.people) : tr(">%1").arg(kMostPeople);
        const QString word = use > 2.0 ? tr("twice over") : use > 1.0 ? tr("over") : tr("within");
        Line line{.key = QString::fromStdString(lift.casting),
                  .cells = {subjectName(&plan, lift.casting), numberText(lift.massKg, lift.massKg < 100 ? 1 : 0),
                            tr("%1/%2").arg(need).arg(lift.crewPeople), word},
                  .tip = tr("%1: %2 of what those who lift it can lift")
                             .arg(subjectName(&plan, lift.casting), percentText(use * 100.0)),
                  .mark = severityOf(lift),
                  .share = use,
                  .source = i};
        lines.append(line);
    }
    pieces_->lineModel().setLines(std::move(lines));
    fillHands(plan, assessment);
    fillRules(plan, assessment);
    fillMeans(plan, assessment);
    fillWhen(plan, assessment);
    const QString text =
        tr("The plan allows %1 each: %2. The bar ends at twice the limit, the mark on it is the limit.")
            .arg(massText(plan.crew.liftLimitKg), factorText(plan.crew.people));
    if (team_->text() != text) team_->setText(text);
}

void LiftingCard::fillHands(const Plan& plan, const Assessment& assessment)
{
    QList<Line> lines;
    QStringList told;
    for (int i = 0; i < static_cast<int>(assessment.handling.size()); ++i) {
        const CastingLift& lift = assessment.handling[i];
        const auto loads = loadsOf(lift, assessment);
        const auto shares = personLoads(loads, lift.crewPeople);
        const QString none = QStringLiteral("\u2013");
        Line line{.key = QString::fromStdString(lift.casting), .cells = {subjectName(&plan, lift.casting), none, none}};
        if (!shares.empty()) {
            const double most = std::ranges::max(shares);
            const double grip = std::ranges::max_element(loads, {}, &GripLoad::kg)->kg;
            line.cells[1] = numberText(most, 1);
            line.cells[2] = numberText(grip, 1);
            line.tip = lift.grips.empty() ? tr("By levers about the centre of gravity, at the grips that the program proposes")
                                          : tr("By levers about the centre of gravity, at the grips of the plan");
            if (const QString heavy = heavyGripsText(loads, plan.crew.liftLimitKg); !heavy.isEmpty()) {
                line.cells[2] = tr("%1 over").arg(line.cells[2]);
                line.tip = heavy + QLatin1Char('\n') + line.tip;
                line.mark = Severity::caution;
                told << tr("%1: %2", "casting, what is heavy").arg(QString::fromStdString(lift.casting), heavy);
            }
            if (most > plan.crew.liftLimitKg) line.mark = Severity::caution;
        } else {
            line.cells[1] = numberText(lift.eachKg, 1);
            line.tip = tr("Shared evenly; the grips are not known");
        }
        line.source = i;
        lines.append(std::move(line));
    }
    for (const QString& words : told) {
        lines.append({.key = QStringLiteral("words/") + words,
                      .kind = Line::Kind::heading,
                      .cells = {words},
                      .tip = words});
    }
    hands_->lineModel().setLines(std::move(lines));
}

void LiftingCard::fillRules(const Plan& plan, const Assessment& assessment)
{
    QList<Line> lines;
    if (!assessment.handling.empty()) {
        for (const RuleLimit& limit : assessment.handling.front().limits) {
            const auto over = std::ranges::count_if(assessment.handling, [&](const CastingLift& lift) {
                const RuleLimit* own = lift.find(limit.rule);
                return own && lift.massKg > own->teamKg;
            });
            const double crew = limit.rule == LimitRule::niosh ? std::max(0, plan.crew.people) * limit.eachKg
                                                               : teamLimitKg(plan.crew.people, limit.eachKg);
            Line line{.key = QString::fromLatin1(limitRuleWord(limit.rule)),
                      .cells = {limit.inUse ? tr("%1, in use").arg(limitRuleName(limit.rule)) : limitRuleName(limit.rule),
                                numberText(limit.eachKg, 1), numberText(crew, 1), QString::number(over)},
                      .tip = limitRuleSource(limit.rule)};
            if (over > 0 && limit.inUse) line.mark = Severity::caution;
            lines.append(std::move(line));
        }
    }
    rules_->lineModel().setLines(std::move(lines));
}

void LiftingCard::fillMeans(const Plan& plan, const Assessment& assessment)
{
    QList<Line> lines;
    std::set<std::string> told;
    for (int i = 0; i < static_cast<int>(assessment.handling.size()); ++i) {
        const CastingLift& lift = assessment.handling[i];
        if (told.count(lift.casting) > 0) continue;
        told.insert(lift.alike.begin(), lift.alike.end());
        const QString name = lift.alike.empty()
            ? subjectName(&plan, lift.casting)
            : tr("%1 and %2 alike").arg(QString::fromStdString(lift.casting)).arg(lift.alike.size());
        for (const MeansAdvice& advice : lift.means) {
            Line line{.key = QString::fromStdString(lift.casting) + QLatin1Char('|') + QLatin1String(liftMeansWord(advice.means)),
                      .cells = {name, meansName(advice), numberText(advice.massKg, 0),
                                advice.people > 0 ? QString::number(advice.people) : tr(">%1").arg(kMostPeople)},
                      .tip = meansSentence(advice)};
            if (!advice.enough) line.mark = Severity::note;
            line.source = i;
            lines.append(std::move(line));
        }
    }
    means_->lineModel().setLines(std::move(lines));
}

void LiftingCard::fillWhen(const Plan& plan, const Assessment& assessment)
{
    HoursLines hours = hoursLines(plan, assessment);
    whenSubjects_ = std::move(hours.subjects);
    when_->lineModel().setLines(std::move(hours.lines));
    showChart();
}

void LiftingCard::showChart()
{
    if (!shownAssessment() || when_->isHidden()) return;
    hours_->setChart(hoursChartFor(*shownPlan(), *shownAssessment(), selection().parts()),
                     !live().isReadinessKnown());
}

bool LiftingCard::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == when_ && (event->type() == QEvent::ShowToParent || event->type() == QEvent::HideToParent)) {
        const bool shown = event->type() == QEvent::ShowToParent;
        hours_->setVisible(shown);
        // Chart and table of hours want the room that is for masses elsewhere.
        team_->setVisible(!shown);
        if (shown) showChart();
        refresh();
    }
    return LiveCard::eventFilter(watched, event);
}

QList<FigureValue> LiftingCard::massValues(const CastingLift& lift, const Plan& plan, const Assessment& assessment)
{
    QList<FigureValue> values{{tr("Casting"), subjectName(&plan, lift.casting)}};
    const auto placed = std::ranges::find_if(assessment.castings, [&](const PlacedCasting& p) {
        return p.casting->id == lift.casting;
    });
    if (placed != assessment.castings.end()) {
        const Casting& casting = *placed->casting;
        values.append({tr("Volume"), volumeText(casting.volumeL)});
        values.append({tr("Concrete"), massText(casting.concreteKg)});
        values.append({tr("Steel"), massText(casting.steelKg)});
        values.append({tr("Foam that stays"), massText(casting.fillerKg)});
    }
    values.append({tr("Mass"), massText(lift.massKg)});
    return values;
}

LiveCard::LineNote LiftingCard::noteOf(const LineView& view, const Line& line, const Plan& plan,
                                       const Assessment& assessment) const
{
    if (&view == when_) {
        HoursNote note = hoursNote(plan, assessment, line);
        return {note.code, std::move(note.values)};
    }
    if (line.source < 0) return {};
    const CastingLift& lift = assessment.handling[line.source];
    QList<FigureValue> values = massValues(lift, plan, assessment);
    values.append({counted(lift.crewPeople, tr("1 person lifts"), tr("%1 people lift")), massText(lift.limitKg)});
    if (lift.people > 0) {
        values.append({counted(lift.people, tr("1 person would lift"), tr("%1 people would lift")),
                       massText(teamLimitKg(lift.people, plan.crew.liftLimitKg))});
    }
    const auto shares = personLoads(loadsOf(lift, assessment), lift.crewPeople);
    const auto loads = loadsOf(lift, assessment);
    const std::vector<std::size_t> over = gripsOver(loads, plan.crew.liftLimitKg);
    for (std::size_t i = 0; i < loads.size(); ++i) {
        const bool heavy = std::find(over.begin(), over.end(), i) != over.end();
        values.append({tr("Grip %1 bears").arg(i + 1),
                       heavy ? tr("%1, over the %2 of one person")
                                   .arg(massText(loads[i].kg), massText(plan.crew.liftLimitKg))
                             : massText(loads[i].kg)});
    }
    for (const double kg : shares) values.append({tr("A person bears"), massText(kg)});
    values.append({tr("Pull to tilt it up"), massText(lift.tiltKg)});
    return {QStringLiteral("mass"), values};
}

QList<FigureValue> LiftingCard::valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const
{
    const CastingLift* top = heaviest(assessment);
    if (!top) return {};
    if (code == QLatin1String("mass")) return massValues(*top, plan, assessment);
    QList<FigureValue> values{{tr("Casting"), subjectName(&plan, top->casting)}};
    const int people = code == QLatin1String("people") ? top->people : top->crewPeople;
    values.append({tr("Mass"), massText(top->massKg)});
    values.append({tr("Limit each"), massText(plan.crew.liftLimitKg)});
    if (people <= 0) return values;
    values.append({tr("People"), QString::number(people)});
    values.append({tr("Team factor"), numberText(teamFactor(people), 2)});
    values.append({tr("They lift"), massText(teamLimitKg(people, plan.crew.liftLimitKg))});
    return values;
}

void LiftingCard::visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                                const std::function<void(const std::string&)>& visit) const
{
    if (line.source < 0) return;
    if (&view != when_) {
        visit(assessment.handling[line.source].casting);
        return;
    }
    for (const std::string& subject : whenSubjects_[static_cast<std::size_t>(line.source)]) visit(subject);
}

}  // namespace yardcast::ui
