#include "ui/panels/property_editor.h"

#include <set>

#include <QLabel>
#include <QScrollArea>
#include <QTimer>
#include <QUndoStack>
#include <QVBoxLayout>

#include "core/plan/validation.h"
#include "ui/live/live_assessment.h"
#include "ui/look/theme.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/wording/finding_words.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

/// What a finding is about, without its figures: a strip that gets a little narrower is no new objection.
QString keyOf(const Finding& finding)
{
    QString key = QString::fromStdString(finding.code);
    for (const std::string& subject : finding.subjects) key += QLatin1Char('/') + QString::fromStdString(subject);
    return key + QLatin1Char('@') + QString::fromStdString(finding.pointer);
}

}  // namespace

PropertyEditor::PropertyEditor(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : QWidget(parent), document_(document), selection_(selection), live_(live), title_(new QLabel(this)),
      scroll_(new QScrollArea(this)), rebuildTimer_(new QTimer(this))
{
    setObjectName(QStringLiteral("propertyEditor"));
    setMinimumWidth(260);
    QFont bold = title_->font();
    bold.setWeight(QFont::DemiBold);
    title_->setFont(bold);
    title_->setWordWrap(true);
    title_->setContentsMargins(3 * kStepPx, 2 * kStepPx, 3 * kStepPx, kStepPx);
    scroll_->setWidgetResizable(true);
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(title_);
    column->addWidget(scroll_, 1);
    // What is rarely wanted begins closed.
    closedGroups_ = {tr("Corners"), tr("Loads"), tr("Lifting"), tr("Ribs"), tr("Joints")};
    rebuild();
    rebuildTimer_->setSingleShot(true);
    rebuildTimer_->setInterval(0);
    connect(rebuildTimer_, &QTimer::timeout, this, &PropertyEditor::rebuild);
    connect(&selection, &Selection::chosenChanged, this, &PropertyEditor::follow);
    connect(&document, &PlanDocument::planChanged, this, &PropertyEditor::refresh);
}

PropertyEditor::~PropertyEditor()
{
    // A field that dies with the keys in it would still tell of its end to a host that is half gone, and to a document
    // that may be gone altogether. What was typed was committed when the keys left it, or is given up with the window.
    for (QWidget* widget : scroll_->findChildren<QWidget*>()) widget->blockSignals(true);
    delete scroll_;
}

Field* PropertyEditor::field(const QString& path) const { return sheet().find(path); }

PropertySheet& PropertyEditor::sheet() const
{
    catchUp();
    return *sheet_;
}

void PropertyEditor::catchUp() const
{
    if (rebuildTimer_->isActive()) const_cast<PropertyEditor*>(this)->rebuild();
}

void PropertyEditor::apply(const QString& name, const Edit& edit)
{
    document_.apply(name, edit);
    refresh();
}

void PropertyEditor::undo() { document_.undoStack()->undo(); }

void PropertyEditor::redo() { document_.undoStack()->redo(); }

PlanPtr PropertyEditor::plan() const { return document_.plan(); }

QString PropertyEditor::objection(const Edit& edit)
{
    if (checkedPlan_ != document_.committed()) {
        checkedPlan_ = document_.committed();
        knownObjections_.clear();
        for (const Finding& finding : validate(*checkedPlan_).findings) knownObjections_.insert(keyOf(finding));
    }
    const Plan tried = edit(*checkedPlan_);
    for (const Finding& finding : validate(tried).findings) {
        if (!knownObjections_.contains(keyOf(finding))) return findingText(finding, &tried);
    }
    return {};
}

void PropertyEditor::follow()
{
    if (!isVisible()) return;
    const Target now{selection_.parts(), selection_.cutout(), selection_.fixture()};
    if (now == target_ && !rebuildTimer_->isActive()) return;
    // At once, while it is still known what it was typed for; the new sheet waits until the drawing has been painted.
    if (!rebuildTimer_->isActive()) sheet_->commit();
    rebuildTimer_->start();
}

void PropertyEditor::rebuild()
{
    rebuildTimer_->stop();
    target_ = {selection_.parts(), selection_.cutout(), selection_.fixture()};
    if (sheet_) {
        // It may be a field of this very sheet that led here.
        scroll_->takeWidget();
        sheet_->hide();
        sheet_->deleteLater();
    }
    sheet_ = new PropertySheet(*this, closedGroups_);
    PropertyContext context;
    context.prices = &live_.prices();
    context.renamedPart = [this](const QString& part) { selection_.setParts({part}); };
    context.renamedFixture = [this](const QString& fixture) { selection_.setFixture(fixture); };
    context.renamedCutout = [this](const QString& part, const QString& cutout) {
        selection_.setCutout({part, cutout});
    };

    const Plan& plan = *document_.plan();
    if (!target_.cutout.isEmpty()) {
        describeCutout(*sheet_, target_.cutout.part.toStdString(), target_.cutout.cutout.toStdString(), context);
    } else if (!target_.fixture.isEmpty()) {
        describeFixture(*sheet_, target_.fixture.toStdString(), context);
    } else if (target_.parts.isEmpty()) {
        describePlan(*sheet_, context);
    } else {
        Ids ids;
        std::set<PartKind> kinds;
        for (const QString& id : std::as_const(target_.parts)) {
            const Part* part = findPart(plan, id.toStdString());
            if (!part) continue;
            ids.push_back(part->id);
            kinds.insert(part->kind());
        }
        const Scope<Part> parts = partScope(ids);
        describePlace(*sheet_, parts, ids, context);
        if (kinds.size() != 1) {
            describeSeveral(*sheet_, parts);
        } else {
            switch (*kinds.begin()) {
            case PartKind::counter: describeCounter(*sheet_, parts, ids); break;
            case PartKind::support: describeSupport(*sheet_, parts); break;
            case PartKind::panel: describePanel(*sheet_, parts); break;
            case PartKind::front: describeFront(*sheet_, parts); break;
            case PartKind::appliance: describeAppliance(*sheet_, parts); break;
            }
        }
    }
    scroll_->setWidget(sheet_);
    sheet_->show();
    refresh();
}

void PropertyEditor::refresh()
{
    if (!isVisible() && sheet_->isVisible()) return;
    const Plan& plan = *document_.plan();
    const QString title = titleOf(plan);
    if (title_->text() != title) title_->setText(title);
    sheet_->showPlan(plan);
}

QString PropertyEditor::titleOf(const Plan& plan) const
{
    if (!target_.cutout.isEmpty()) {
        return tr("Cutout %1 of %2")
            .arg(target_.cutout.cutout, subjectName(&plan, target_.cutout.part.toStdString()));
    }
    if (!target_.fixture.isEmpty()) return tr("%1 on the site").arg(target_.fixture);
    if (target_.parts.isEmpty()) return tr("The plan (nothing is chosen)");
    if (target_.parts.size() > 1) return tr("%1 parts").arg(target_.parts.size());
    const Part* part = findPart(plan, target_.parts[0].toStdString());
    if (!part || !part->name) return subjectName(&plan, target_.parts[0].toStdString());
    return tr("%1 (%2)").arg(subjectName(&plan, part->id), kindName(part->kind()).toLower());
}

void PropertyEditor::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    follow();
    refresh();
}

}  // namespace yardcast::ui
