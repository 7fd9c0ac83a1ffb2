#include "ui/panels/pour_card.h"

#include <algorithm>
#include <utility>

#include <QAction>
#include <QHBoxLayout>
#include <QToolButton>

#include "core/io/plan_patch.h"
#include "core/plan/edits.h"
#include "core/pour/play_remedies.h"
#include "ui/document/plan_document.h"
#include "ui/panels/counted.h"
#include "ui/panels/line_view.h"
#include "ui/panels/remedy_list.h"
#include "ui/wording/figures.h"
#include "ui/wording/finding_words.h"
#include "ui/wording/names.h"
#include "ui/wording/pour_names.h"

namespace yardcast::ui {

namespace {

constexpr std::size_t kMostOffered = 3;
constexpr double kMindedChance = 0.10;

std::vector<std::string> orderOf(const PourPlan& pour)
{
    std::vector<std::string> order;
    for (const PourDay& day : pour.days) {
        for (const PouredCasting& poured : day.castings) order.push_back(poured.casting);
    }
    return order;
}

const CastingChance* chanceOf(const PourPlayPtr& play, const std::string& casting)
{
    if (!play) return nullptr;
    const auto found = std::ranges::find(play->castings, casting, &CastingChance::casting);
    return found == play->castings.end() ? nullptr : &*found;
}

const CastingChance* greatest(const PourPlayPtr& play)
{
    if (!play || play->castings.empty()) return nullptr;
    return &*std::ranges::max_element(play->castings, {}, &CastingChance::chance);
}

/// The changes that lower the chance of any cold joint, best first, as remedies of the whole pour.
std::vector<Remedy> remediesOf(const PourPlay& play)
{
    std::vector<Remedy> remedies;
    for (const TriedChange& tried : play.tried) {
        if (remedies.size() == kMostOffered || !(tried.anyChance < play.anyChance)) break;
        Remedy remedy = remedyOf(tried);
        remedy.values["any_after_percent"] = tried.anyChance * 100;
        remedy.values["any_before_percent"] = play.anyChance * 100;
        remedy.values["plays"] = static_cast<double>(play.plays);
        remedies.push_back(std::move(remedy));
    }
    return remedies;
}

std::optional<Severity> markOf(const PouredCasting& poured, const CastingChance* chance)
{
    if (!poured.fits) return Severity::stop;
    if (chance && chance->chance > kMindedChance) return Severity::caution;
    return std::nullopt;
}

}  // namespace

PourCard::PourCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : LiveCard(QStringLiteral("pourCard"), document, selection, live, parent)
{
    setEmptyText(tr("Nothing to pour yet. Drag a counter onto the sheet, or press C."));
    auto* row = new QWidget(this);
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    earlier_ = addMove(tr("Earlier"), QKeySequence(Qt::ALT | Qt::Key_Up), -1, row);
    later_ = addMove(tr("Later"), QKeySequence(Qt::ALT | Qt::Key_Down), 1, row);
    layout->addStretch(1);
    addToolRow(row);

    order_ = addTable(tr("Order"), {{tr("Casting"), false},
                                    {tr("batches"), true},
                                    {tr("begin"), true},
                                    {tr("cold\njoint"), true}});
    layers_ = addTable(tr("Layers"), {{tr("Layer"), false}, {tr("mm above\nthe base"), true}, {tr("litres"), true}});
    changes_ = addTable(tr("What lowers it"), {{tr("Change"), false}, {tr("any cold\njoint"), true}});
    remedies_ = new RemedyList(this);
    addFootnote(remedies_);
    connect(remedies_, &RemedyList::taken, this, &PourCard::take);
    allowMoves();
}

QAction* PourCard::addMove(const QString& text, const QKeySequence& key, int by, QWidget* row)
{
    auto* action = new QAction(text, this);
    action->setShortcut(key);
    action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    action->setToolTip(tr("%1 in the order of pouring (%2)").arg(text, key.toString(QKeySequence::NativeText)));
    addAction(action);
    connect(action, &QAction::triggered, this, [this, by] { move(by); });
    auto* button = new QToolButton(row);
    button->setDefaultAction(action);
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    row->layout()->addWidget(button);
    return action;
}

CardSummary PourCard::summarise(const Plan& plan, const Assessment& assessment) const
{
    CardSummary summary;
    const PourPlan& pour = assessment.pour;
    summary.empty = pour.days.empty();
    if (summary.empty) return summary;
    const int days = static_cast<int>(pour.days.size());
    int batches = 0;
    for (const PourDay& day : pour.days) batches += day.batches;
    const QString made = counted(batches, tr("1 batch"), tr("%1 batches"));
    summary.big = {.code = QStringLiteral("pour_days"),
                   .text = QString::number(days),
                   .unit = days == 1 ? tr("day of pouring, %1").arg(made) : tr("days of pouring, %1").arg(made)};
    const PourDay& first = pour.days.front();
    const QString hours = tr("%1 to %2").arg(clockText(first.startH), clockText(first.startH + first.endMin / 60));
    summary.lines.append({.code = QStringLiteral("pour_days"),
                          .text = days == 1 ? hours : tr("First day %1").arg(hours)});
    const auto late = std::ranges::find_if(pour.days, [](const PourDay& day) {
        return std::ranges::any_of(day.castings, [](const PouredCasting& poured) { return !poured.fits; });
    });
    if (late != pour.days.end()) {
        summary.lines.append({.text = tr("A cold joint is certain as planned"), .mark = Severity::stop});
    }
    if (const CastingChance* worst = greatest(assessment.play)) {
        const int plays = assessment.play->plays;
        const QString name = subjectName(&plan, worst->casting);
        QString text = tr("Cold joint somewhere: %1").arg(chanceText(assessment.play->anyChance, plays));
        if (worst->chance * plays >= 0.5) {
            text += tr("; likeliest in %1, %2").arg(name, chanceSpreadText(*worst));
        }
        summary.lines.append({.code = QStringLiteral("cold_joint"),
                              .text = text,
                              .mark = worst->chance > kMindedChance ? std::optional(Severity::caution) : std::nullopt});
    } else {
        summary.lines.append({.text = tr("The chance of a cold joint is being played.")});
    }
    return summary;
}

void PourCard::fillTables(const Plan& plan, const Assessment& assessment)
{
    QList<Line> lines;
    QList<Line> layers;
    const PourPlan& pour = assessment.pour;
    int calendarDay = 1;
    int number = 0;
    for (const PourDay& day : pour.days) {
        calendarDay += day.afterDays;
        lines.append({.key = QStringLiteral("day/%1").arg(day.day),
                      .kind = Line::Kind::heading,
                      .cells = {tr("Day %1, %2 to %3")
                                    .arg(calendarDay)
                                    .arg(clockText(day.startH), clockText(day.startH + day.endMin / 60))}});
        for (const PouredCasting& poured : day.castings) {
            const CastingChance* chance = chanceOf(assessment.play, poured.casting);
            QString risk = QStringLiteral("–");
            if (chance) risk = chanceText(chance->chance, assessment.play->plays);
            if (!poured.fits) risk = tr("certain");
            const QString name = subjectName(&plan, poured.casting);
            const QString numbered = tr("%1  %2", "number, casting").arg(number + 1).arg(name);
            const QString key = QString::fromStdString(poured.casting);
            layers.append({.key = key,
                           .kind = Line::Kind::heading,
                           .cells = {numbered, QString(), QString()},
                           .source = number});
            int place = 0;
            for (const PourLayer& layer : poured.layers) {
                layers.append({.key = QStringLiteral("%1|%2").arg(key).arg(++place),
                               .cells = {layerName(layer.kind),
                                         tr("%1–%2").arg(shortNumberText(layer.fromMm, 0),
                                                         shortNumberText(layer.toMm, 0)),
                                         layer.litres > 0.0 ? numberText(layer.litres, 1)
                                         : layer.toMin > layer.fromMin ? minutesText(layer.toMin - layer.fromMin)
                                                                       : QString()},
                               .source = number});
            }
            lines.append({.key = key,
                          .cells = {numbered, numberText(poured.batches, 1),
                                    clockText(day.startH + poured.startMin / 60), risk},
                          .tip = tr("%1 of %2; workable for %3, waits %4")
                                     .arg(volumeText(poured.litres), QString::fromStdString(poured.mix),
                                          minutesText(poured.workingMinutes), minutesText(poured.longestGapMin)),
                          .mark = markOf(poured, chance),
                          .source = number});
            ++number;
        }
    }
    order_->lineModel().setLines(std::move(lines));
    layers_->lineModel().setLines(std::move(layers));

    QList<Line> changes;
    if (assessment.play) {
        const PourPlay& play = *assessment.play;
        changes.append({.key = QStringLiteral("now"),
                        .cells = {tr("As planned"), chanceText(play.anyChance, play.plays)}});
        QList<Line> noHelp;
        for (const TriedChange& tried : play.tried) {
            (tried.anyChance < play.anyChance ? changes : noHelp)
                .append({.key = QString::fromLatin1(playChangeWord(tried.change)),
                         .cells = {changeName(tried), chanceText(tried.anyChance, play.plays)}});
        }
        if (!noHelp.isEmpty()) {
            changes.append({.key = QStringLiteral("no_help"),
                            .kind = Line::Kind::heading,
                            .cells = {tr("Tried, and no help"), QString()}});
            changes += noHelp;
        }
        remedies_->setRemedies(remediesOf(play));
    } else {
        remedies_->setRemedies({});
    }
    changes_->lineModel().setLines(std::move(changes));
    allowMoves();
}

QList<FigureValue> PourCard::valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const
{
    QList<FigureValue> values;
    if (code == QLatin1String("cold_joint")) {
        if (!assessment.play) return values;
        values.append({tr("Plays"), QString::number(assessment.play->plays)});
        values.append({tr("Some cold joint"), chanceText(assessment.play->anyChance, assessment.play->plays)});
        if (const CastingChance* worst = greatest(assessment.play)) {
            values.append({tr("Likeliest in"), subjectName(&plan, worst->casting)});
            values.append({tr("There"), chanceSpreadText(*worst)});
        }
        return values;
    }
    const Pouring pouring = plan.pouring.value_or(Pouring{});
    values.append({tr("A batch takes"), minutesText(assessment.pour.batchMinutes)});
    values.append({tr("Laying steel or foam between layers"), minutesText(assessment.pour.layingMinutes)});
    values.append({tr("Begin"), clockText(pouring.startH)});
    values.append({tr("Hours a day"), shortNumberText(pouring.hours, 1)});
    values.append({tr("Castings in moulds at one time"),
                   pouring.moulds ? QString::number(*pouring.moulds) : tr("as many as there are")});
    for (const PourDay& day : assessment.pour.days) {
        values.append({tr("Day %1").arg(day.day), tr("%1, %2 castings")
                                                      .arg(counted(day.batches, tr("1 batch"), tr("%1 batches")))
                                                      .arg(day.castings.size())});
    }
    return values;
}

LiveCard::LineNote PourCard::noteOf(const LineView& view, const Line& line, const Plan& plan,
                                    const Assessment& assessment) const
{
    if (&view == changes_) {
        return {QStringLiteral("cold_joint"), valuesBehind(QStringLiteral("cold_joint"), plan, assessment)};
    }
    const std::vector<std::string> order = orderOf(assessment.pour);
    if (line.source < 0 || line.source >= static_cast<int>(order.size())) return {};
    const PouredCasting* poured = assessment.pour.find(order[static_cast<std::size_t>(line.source)]);
    if (!poured) return {};
    return {QStringLiteral("poured"),
            {{tr("Casting"), subjectName(&plan, poured->casting)},
             {tr("Concrete"), tr("%1 of %2").arg(volumeText(poured->litres), QString::fromStdString(poured->mix))},
             {tr("Batches"), numberText(poured->batches, 2)},
             {tr("Workable for"), minutesText(poured->workingMinutes)},
             {tr("Waits to be covered"), minutesText(poured->longestGapMin)},
             {tr("On the mould table"), tr("%1, %2 kPa").arg(massText(poured->tableKg), numberText(poured->tableKpa, 1))},
             {tr("Foam floats with"), poured->uplift.fixings > 0 ? tr("%1 N, held by %2 screws")
                                                                       .arg(numberText(poured->uplift.forceN, 0))
                                                                       .arg(poured->uplift.fixings)
                                                                 : tr("no foam")}}};
}

void PourCard::visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                             const std::function<void(const std::string&)>& visit) const
{
    if (&view == changes_ || line.source < 0) return;
    const std::vector<std::string> order = orderOf(assessment.pour);
    if (line.source < static_cast<int>(order.size())) visit(order[static_cast<std::size_t>(line.source)]);
}

void PourCard::staleChanged(bool stale) { remedies_->setOutdated(stale); }

void PourCard::lineBecameCurrent(const LineView&, int) { allowMoves(); }

void PourCard::allowMoves()
{
    const int row = order_->currentRow();
    const int place = row < 0 || !shownAssessment() ? -1 : order_->lineModel().line(row).source;
    const int count = shownAssessment() ? static_cast<int>(orderOf(shownAssessment()->pour).size()) : 0;
    earlier_->setEnabled(place > 0);
    later_->setEnabled(place >= 0 && place + 1 < count);
}

void PourCard::move(int by)
{
    const int row = order_->currentRow();
    if (row < 0 || !shownAssessment() || isStale()) return;
    const int place = order_->lineModel().line(row).source;
    std::vector<std::string> order = orderOf(shownAssessment()->pour);
    const int to = place + by;
    if (place < 0 || to < 0 || to >= static_cast<int>(order.size())) return;
    std::swap(order[static_cast<std::size_t>(place)], order[static_cast<std::size_t>(to)]);
    document().apply(by < 0 ? tr("Pour earlier") : tr("Pour later"), [&](const Plan& plan) {
        return changePlan(plan, [&](Plan& changed) {
            if (!changed.pouring) changed.pouring = Pouring{};
            changed.pouring->order = order;
        });
    });
}

void PourCard::take(const Remedy& remedy)
{
    if (isStale()) return;
    document().apply(remedyText(remedy), [&](const Plan& plan) {
        PlanReading changed = applyPatch(plan, remedy.edit);
        return changed.plan ? std::move(*changed.plan) : plan;
    });
}

}  // namespace yardcast::ui
