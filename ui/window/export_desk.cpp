#include "ui/window/export_desk.h"

#include <algorithm>
#include <utility>
#include <vector>

#include <QAction>
#include <QFileDialog>

#include "core/assess/assess.h"
#include "core/assess/with_cuts.h"
#include "core/io/plan_file.h"
#include "core/purchase/cut_lists.h"
#include "ui/live/thread_manners.h"
#include "ui/sheets/print_pack.h"
#include "ui/window/commands.h"
#include "ui/window/file_desk.h"
#include "ui/window/message_bar.h"
#include "ui/window/workbench.h"
#include "ui/window/written_files.h"
#include "ui/wording/cut_table.h"
#include "ui/wording/names.h"
#include "ui/wording/open_formats.h"

namespace yardcast::ui {

namespace {

constexpr auto kMessage = "export";

struct Kind {
    Export what;
    Command command;
    const char* extension;
};
constexpr Kind kKinds[] = {{Export::planSvg, Command::exportSvg, "svg"},
                           {Export::planDxf, Command::exportDxf, "dxf"},
                           {Export::kitchenStl, Command::exportStl, "stl"},
                           {Export::mouldSvg, Command::exportMouldSvg, "svg"},
                           {Export::mouldDxf, Command::exportMouldDxf, "dxf"},
                           {Export::formersStl, Command::exportFormersStl, "stl"},
                           {Export::cutsCsv, Command::exportCutsCsv, "csv"}};

const Kind& kindOf(Export what)
{
    return *std::find_if(std::begin(kKinds), std::end(kKinds), [&](const Kind& kind) { return kind.what == what; });
}

bool isAboutMoulds(Export what)
{
    return what == Export::mouldSvg || what == Export::mouldDxf || what == Export::formersStl;
}

QString dialogTitle(Export what, const QString& piece)
{
    switch (what) {
    case Export::planSvg: return ExportDesk::tr("Save the plan as SVG");
    case Export::planDxf: return ExportDesk::tr("Save the plan as DXF");
    case Export::kitchenStl: return ExportDesk::tr("Save the kitchen as STL");
    case Export::mouldSvg: return ExportDesk::tr("Save the mould of %1 as SVG").arg(piece);
    case Export::mouldDxf:
        return piece.isEmpty() ? ExportDesk::tr("Save all moulds as DXF")
                               : ExportDesk::tr("Save the mould of %1 as DXF").arg(piece);
    case Export::formersStl:
        return piece.isEmpty() ? ExportDesk::tr("Save all formers as STL")
                               : ExportDesk::tr("Save the formers of %1 as STL").arg(piece);
    case Export::cutsCsv: break;
    }
    return ExportDesk::tr("Save the cuts as CSV");
}

QString filterOf(Export what)
{
    const QString extension = QString::fromLatin1(kindOf(what).extension);
    return QStringLiteral("%1 (*.%2)").arg(extension.toUpper(), extension);
}

/// Behind the name of the plan in the name that is proposed.
QString aboutOf(Export what, const std::string& casting)
{
    const QString id = QString::fromStdString(casting);
    switch (what) {
    case Export::mouldSvg:
    case Export::mouldDxf: return id.isEmpty() ? ExportDesk::tr("moulds") : ExportDesk::tr("mould %1").arg(id);
    case Export::formersStl: return id.isEmpty() ? ExportDesk::tr("formers") : ExportDesk::tr("formers %1").arg(id);
    case Export::cutsCsv: return ExportDesk::tr("cuts");
    default: return {};
    }
}

std::vector<CastingPtr> castingsIn(const Assessment& assessment)
{
    std::vector<CastingPtr> castings;
    for (const PlacedCasting& placed : assessment.castings) castings.push_back(placed.casting);
    return castings;
}

/// Beside the window. Why it was not written, or nothing.
QString writeExport(Export what, const Plan& plan, const PriceBook& prices, const std::string& casting,
                    const QString& file)
{
    Assessment assessment = *assess(plan, prices);
    if (isAboutMoulds(what) && !casting.empty()) {
        std::erase_if(assessment.moulds, [&](const MouldPtr& mould) { return !mould || mould->casting != casting; });
        if (assessment.moulds.empty()) return ExportDesk::tr("the plan has no such piece any more");
    }
    if (what == Export::planSvg || what == Export::mouldSvg) {
        QString reason;
        const bool mould = what == Export::mouldSvg;
        const QString part = mould ? QString::fromStdString(assessment.moulds.front()->part) : QString();
        if (writePlanSvg(file, plan, assessment, mould ? QStringLiteral("mould") : QStringLiteral("plan"), part, &reason))
            return {};
        return reason.isEmpty() ? ExportDesk::tr("for no known reason") : reason;
    }
    std::string bytes;
    switch (what) {
    case Export::planDxf: bytes = planDxf(plan, castingsIn(assessment)); break;
    case Export::kitchenStl: bytes = kitchenStl(plan, castingsIn(assessment)); break;
    case Export::mouldDxf: bytes = mouldDxf(assessment.moulds); break;
    case Export::formersStl: bytes = formersStl(assessment.moulds); break;
    default: {
        const CutPlansPtr cuts = CutSolver().solve(cutJobs(plan, prices, assessment));
        if (cuts) bytes = cutsCsv(*cuts);
        break;
    }
    }
    return QString::fromStdString(writeFileAtomically(corePath(file), bytes));
}

}  // namespace

ExportDesk::ExportDesk(QWidget& window, const Commands& commands, Workbench& bench, MessageBar& messages,
                       std::function<std::string()> shownMould)
    : QObject(&window), window_(window), bench_(bench), messages_(messages), shownMould_(std::move(shownMould))
{
    pool_.setMaxThreadCount(1);
    for (const Kind& kind : kKinds) {
        connect(commands[kind.command], &QAction::triggered, this, [this, what = kind.what] { ask(what); });
    }
}

ExportDesk::~ExportDesk() { pool_.waitForDone(); }

std::string ExportDesk::chosenCasting() const
{
    const AssessmentPtr& assessment = bench_.live.assessment();
    if (!assessment) return {};
    const QStringList& parts = bench_.selection.parts();
    const std::string shown = shownMould_ ? shownMould_() : std::string();
    std::string first;
    for (const MouldPtr& mould : assessment->moulds) {
        if (!mould) continue;
        const bool chosen = parts.isEmpty() || parts.contains(QString::fromStdString(mould->part));
        if (mould->casting == shown && chosen) return shown;
        if (first.empty() && !parts.isEmpty() && chosen) first = mould->casting;
    }
    return first;
}

QString ExportDesk::nothingToWrite(Export what) const
{
    const AssessmentPtr& assessment = bench_.live.assessment();
    if (!assessment) return {};
    if (isAboutMoulds(what) || what == Export::kitchenStl) {
        const bool empty = what == Export::kitchenStl ? bench_.document.committed()->parts.empty()
                                                      : assessment->moulds.empty();
        if (empty) return tr("There is nothing to save yet: drag a counter onto the sheet, or press C.");
    }
    if (what != Export::formersStl) return {};
    const std::string casting = chosenCasting();
    const bool formers = std::any_of(assessment->moulds.begin(), assessment->moulds.end(), [&](const MouldPtr& mould) {
        if (!mould || (!casting.empty() && mould->casting != casting)) return false;
        return std::any_of(mould->parts.begin(), mould->parts.end(),
                           [](const MouldPart& part) { return part.kind == MouldPartKind::former; });
    });
    if (formers) return {};
    if (casting.empty()) return tr("No piece has a cutout, so there are no formers. Draw a sink with K.");
    return tr("%1 has no cutout, so it has no formers. Choose a piece with a cutout, or none for all pieces.")
        .arg(subjectName(bench_.document.committed().get(), casting));
}

void ExportDesk::ask(Export what)
{
    FileDesk::commitField();
    if (const QString why = nothingToWrite(what); !why.isEmpty()) {
        messages_.show({kMessage, Message::Weight::caution, why, {}, {}, {}});
        return;
    }
    const std::string casting = isAboutMoulds(what) ? chosenCasting() : std::string();
    const QString piece =
        casting.empty() ? QString() : subjectName(bench_.document.committed().get(), casting);
    const QString extension = QString::fromLatin1(kindOf(what).extension);
    const QString file = QFileDialog::getSaveFileName(&window_, dialogTitle(what, piece),
                                                      proposedFile(bench_.session, aboutOf(what, casting), extension),
                                                      filterOf(what));
    if (!file.isEmpty()) write(what, withEnding(file, extension));
}

void ExportDesk::write(Export what, const QString& file)
{
    const PlanPtr plan = bench_.document.committed();
    const std::string casting = isAboutMoulds(what) ? chosenCasting() : std::string();
    messages_.dismiss(kMessage);
    pool_.start([this, what, plan, casting, file, prices = bench_.live.prices()] {
        giveWay(kStrengthNiceness);
        const QString reason = writeExport(what, *plan, prices, casting, file);
        QMetaObject::invokeMethod(this, [this, what, file, reason] {
            tellWritten(messages_, kMessage, reason.isEmpty(), file, reason, [this, what] { ask(what); });
            emit written(reason.isEmpty());
        });
    });
}

}  // namespace yardcast::ui
