#include "ui/canvas/canvas.h"

#include <algorithm>
#include <optional>

#include <QAccessible>
#include <QDragEnterEvent>
#include <QContextMenuEvent>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QUndoStack>

#include "core/plan/edits.h"
#include "ui/canvas/canvas_host.h"
#include "ui/canvas/chosen_edits.h"
#include "ui/canvas/piece_text.h"
#include "ui/canvas/ruler.h"
#include "ui/canvas/snap_targets.h"
#include "ui/canvas/tools/select_tool.h"
#include "ui/canvas/tray_drop.h"
#include "ui/canvas/typed_size_field.h"
#include "ui/document/plan_document.h"
#include "ui/document/selection.h"

namespace yardcast::ui {

namespace {

constexpr double kZoomStep = 1.25;

}  // namespace

/// The widgets inside, and what happens in them.
class Canvas::Parts {
public:
    Parts(PlanDocument& plan, Selection& chosen, LiveAssessment& live, Canvas& canvas)
        : document(plan), selection(chosen), host(plan, chosen, live, canvas),
          across(new Ruler(Qt::Horizontal, &canvas)), upright(new Ruler(Qt::Vertical, &canvas)),
          corner(new QLabel(QStringLiteral("cm"), &canvas))
    {
    }

    void updateRulers()
    {
        const SheetView& view = host.view();
        across->setView(view.toDrawing({0.0, 0.0}).x(), view.pixelsPerMm());
        upright->setView(-view.toDrawing({0.0, 0.0}).y(), view.pixelsPerMm());
        updateBands();
    }

    QRectF chosenBounds() const
    {
        QRectF chosen;
        for (const QString& id : selection.parts()) {
            if (const QPainterPath* shape = host.scene().shapeOf(id.toStdString())) chosen |= shape->boundingRect();
        }
        return chosen;
    }

    /// What is chosen, on the rulers.
    void updateBands()
    {
        const QRectF chosen = chosenBounds();
        const QPointF low = host.view().toView(chosen.topLeft());
        const QPointF high = host.view().toView(chosen.bottomRight());
        const bool any = !chosen.isNull();
        across->setBand(any ? low.x() : 0.0, any ? high.x() : 0.0);
        upright->setBand(any ? low.y() : 0.0, any ? high.y() : 0.0);
    }

    PlanDocument& document;
    Selection& selection;
    CanvasHost host;
    Ruler* across;
    Ruler* upright;
    QLabel* corner;
    std::optional<TrayDrop> drop;
};

Canvas::Canvas(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : QWidget(parent), d_(std::make_unique<Parts>(document, selection, live, *this))
{
    setFocusPolicy(Qt::StrongFocus);
    setAcceptDrops(true);
    setMinimumSize(320, 240);
    setAccessibleName(tr("Drawing of the kitchen"));

    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(0);
    grid->addWidget(d_->corner, 0, 0);
    grid->addWidget(d_->across, 0, 1);
    grid->addWidget(d_->upright, 1, 0);
    grid->addWidget(&d_->host.view(), 1, 1);
    d_->corner->setAutoFillBackground(true);
    d_->corner->setAlignment(Qt::AlignCenter);
    QFont small = d_->corner->font();
    small.setPixelSize(10);
    d_->corner->setFont(small);
    d_->corner->setToolTip(tr("The rulers count in cm."));

    CanvasHost& host = d_->host;
    connect(&host, &CanvasHost::toolChanged, this, &Canvas::toolChanged);
    connect(&host, &CanvasHost::projectionChanged, this, &Canvas::projectionChanged);
    connect(&host, &CanvasHost::measureTextChanged, this, &Canvas::measureTextChanged);
    connect(&host, &CanvasHost::hintTextChanged, this, &Canvas::hintChanged);
    connect(&host, &CanvasHost::contextMenuRequested, this, &Canvas::contextMenuRequested);
    connect(&host, &CanvasHost::viewChanged, this, [this] {
        d_->updateRulers();
        emit viewChanged();
    });
    connect(&host, &CanvasHost::chosenMoved, this, [this] { d_->updateBands(); });
    connect(&host, &CanvasHost::pointerMoved, this, [this](QPointF px) {
        d_->across->setPointer(px.x());
        d_->upright->setPointer(px.y());
    });
    connect(&host, &CanvasHost::pointerLeft, this, [this] {
        d_->across->setPointer(-1.0);
        d_->upright->setPointer(-1.0);
    });
    connect(&selection, &Selection::chosenChanged, this, &Canvas::announceChosen);
    announceChosen();
    setInk(lightInk());
}

Canvas::~Canvas() = default;

const Projection& Canvas::projection() const { return d_->host.projection(); }
Stage Canvas::stage() const { return d_->host.stage(); }
ToolKind Canvas::tool() const { return d_->host.choice().kind; }
bool Canvas::isGridShown() const { return d_->host.view().isGridShown(); }

bool Canvas::isSnappingOn() const { return d_->host.isSnappingOn(); }
QString Canvas::hint() const { return d_->host.tool().hint(); }
bool Canvas::isGesturing() const { return d_->host.tool().isGesturing(); }
ViewState Canvas::viewState() const { return d_->host.viewState(); }
void Canvas::setViewState(const ViewState& state) { d_->host.setViewState(state); }
void Canvas::setProjection(const Projection& projection) { d_->host.setProjection(projection); }
void Canvas::setStage(Stage stage) { d_->host.setStage(stage); }

void Canvas::setInk(const Ink& ink)
{
    d_->host.setInk(ink);
    d_->across->setInk(ink);
    d_->upright->setInk(ink);
    QPalette palette = d_->corner->palette();
    palette.setColor(QPalette::Window, ink.card);
    palette.setColor(QPalette::WindowText, ink.pencil);
    d_->corner->setPalette(palette);
}

void Canvas::setTool(ToolKind tool)
{
    ToolChoice choice = d_->host.choice();
    if (choice.kind == tool) {
        // The same tool again lets go of what was begun.
        cancelGesture();
        return;
    }
    choice.kind = tool;
    d_->host.choose(choice);
}

void Canvas::setSnappingOn(bool on)
{
    if (d_->host.isSnappingOn() == on) return;
    d_->host.setSnappingOn(on);
    emit snappingChanged(on);
}

void Canvas::setGridShown(bool shown) { d_->host.view().setGridShown(shown); }

void Canvas::zoomIn()
{
    d_->host.view().zoomAt(QPointF(d_->host.view().viewport()->rect().center()), kZoomStep);
}

void Canvas::zoomOut()
{
    d_->host.view().zoomAt(QPointF(d_->host.view().viewport()->rect().center()), 1.0 / kZoomStep);
}

void Canvas::zoomFit() { d_->host.fit(); }

void Canvas::zoomToChosen()
{
    const QRectF chosen = d_->chosenBounds();
    if (chosen.isNull()) {
        zoomFit();
    } else {
        d_->host.fitTo(chosen);
    }
}

void Canvas::startAddingPart(PartKind kind)
{
    switch (kind) {
    case PartKind::counter: setTool(ToolKind::counter); break;
    case PartKind::support: setTool(ToolKind::support); break;
    case PartKind::panel: setTool(ToolKind::panel); break;
    case PartKind::front: setTool(ToolKind::front); break;
    case PartKind::appliance: setTool(ToolKind::appliance); break;
    }
}

void Canvas::startAddingCutout(CutoutPurpose purpose, CutoutShape shape)
{
    ToolChoice choice;
    choice.kind = ToolKind::cutout;
    choice.purpose = purpose;
    choice.shape = shape;
    d_->host.choose(choice);
}

void Canvas::startAddingFixture(FixtureKind kind)
{
    ToolChoice choice;
    choice.kind = ToolKind::fixture;
    choice.fixture = kind;
    d_->host.choose(choice);
}

void Canvas::startSiteOutline() { setTool(ToolKind::siteOutline); }

void Canvas::selectAll()
{
    QStringList ids;
    for (const PartPtr& part : d_->document.plan()->parts) ids << QString::fromStdString(part->id);
    d_->selection.setParts(ids);
}

void Canvas::nudge(double rightMm, double upMm)
{
    cancelGesture();
    const SelectTool* select = d_->host.selectTool();
    nudgeChosen(d_->document, d_->selection, d_->host.projection(), select ? select->chosenCorner() : -1,
                {rightMm, upMm});
    d_->host.settle();
}

void Canvas::deleteChosen()
{
    cancelGesture();
    SelectTool* select = d_->host.selectTool();
    if (!select || !select->removeChosenCorner()) yardcast::ui::deleteChosen(d_->document, d_->selection);
    d_->host.settle();
}

void Canvas::turnChosen(double byDeg)
{
    cancelGesture();
    yardcast::ui::turnChosen(d_->document, d_->selection, byDeg);
    d_->host.settle();
}

void Canvas::mirrorChosen()
{
    cancelGesture();
    yardcast::ui::mirrorChosen(d_->document, d_->selection);
    d_->host.settle();
}

void Canvas::duplicateChosen()
{
    cancelGesture();
    yardcast::ui::duplicateChosen(d_->document, d_->selection);
    d_->host.settle();
}

void Canvas::openTypedSize() { d_->host.openField(d_->host.tool().currentSize(), true); }

bool Canvas::cancelGesture() { return d_->host.cancelGesture(); }

void Canvas::announceChosen()
{
    const Selection& selection = d_->selection;
    const Plan& plan = *d_->document.plan();
    QString text;
    if (!selection.cutout().isEmpty()) {
        const QString counter = partsCalled(plan, {selection.cutout().part});
        text = tr("Cutout %1 in %2 chosen").arg(selection.cutout().cutout, counter);
    } else if (!selection.fixture().isEmpty()) {
        text = tr("%1 chosen").arg(selection.fixture());
    } else if (!selection.parts().isEmpty()) {
        text = tr("%1 chosen").arg(partsCalled(plan, selection.parts()));
    } else {
        text = tr("Nothing chosen");
    }
    if (accessibleDescription() == text) return;
    setAccessibleDescription(text);
    QAccessibleEvent event(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
}

bool Canvas::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        const auto& key = *static_cast<QKeyEvent*>(event);
        if (isOurs(key)) {
            event->accept();
            return true;
        }
    }
    return QWidget::event(event);
}

bool Canvas::isOurs(const QKeyEvent& key) const
{
    const Tool& tool = d_->host.tool();
    if (tool.wantsKey(key)) return true;
    const bool plain = !(key.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
    if (startsSize(key)) return true;
    switch (key.key()) {
    case Qt::Key_Space: return plain;
    case Qt::Key_Escape: return plain;
    // Alt suspends snapping; the menu bar would take the focus, and with it the gesture, when it is let go.
    case Qt::Key_Alt: return tool.isGesturing() || this->tool() != ToolKind::select;
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down: return plain;
    default: return false;
    }
}

/// A digit, while there is something whose size can be typed.
bool Canvas::startsSize(const QKeyEvent& key) const
{
    if (key.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) return false;
    const QString text = key.text();
    if (text.size() != 1 || !d_->host.tool().canType()) return false;
    const bool mark = text[0] == u'-' || text[0] == u'.' || text[0] == u',';
    return text[0].isDigit() || (mark && d_->host.tool().isGesturing());
}

void Canvas::keyPressEvent(QKeyEvent* event)
{
    CanvasHost& host = d_->host;
    if (host.key(event)) return;
    if (startsSize(*event)) {
        host.openField(event->text(), false);
        return;
    }
    const double step = event->modifiers() & Qt::ShiftModifier ? 1.0 : 10.0;
    switch (event->key()) {
    case Qt::Key_Space:
        if (!event->isAutoRepeat()) host.view().setPanKey(true);
        return;
    case Qt::Key_Escape: escape(); return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (host.clickByKey(event->modifiers())) return;
        break;
    case Qt::Key_Left: nudge(-step, 0.0); return;
    case Qt::Key_Right: nudge(step, 0.0); return;
    case Qt::Key_Up: nudge(0.0, step); return;
    case Qt::Key_Down: nudge(0.0, -step); return;
    case Qt::Key_Shift:
    case Qt::Key_Control:
    case Qt::Key_Alt: passModifiers(*event, true); break;
    default: break;
    }
    QWidget::keyPressEvent(event);
}

void Canvas::keyReleaseEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Space:
        if (!event->isAutoRepeat()) d_->host.view().setPanKey(false);
        return;
    case Qt::Key_Shift:
    case Qt::Key_Control:
    case Qt::Key_Alt: passModifiers(*event, false); break;
    default: break;
    }
    QWidget::keyReleaseEvent(event);
}

/// Window systems differ in whether the event of a modifier counts the modifier itself.
void Canvas::passModifiers(const QKeyEvent& event, bool down)
{
    const Qt::KeyboardModifier modifier = event.key() == Qt::Key_Shift ? Qt::ShiftModifier
        : event.key() == Qt::Key_Control                               ? Qt::ControlModifier
                                                                       : Qt::AltModifier;
    Qt::KeyboardModifiers modifiers = event.modifiers();
    modifiers.setFlag(modifier, down);
    d_->host.modifiersChanged(modifiers);
}

void Canvas::escape()
{
    if (cancelGesture()) return;
    if (tool() != ToolKind::select) {
        setTool(ToolKind::select);
        return;
    }
    d_->selection.clear();
    d_->host.settle();
}

void Canvas::focusOutEvent(QFocusEvent* event)
{
    d_->host.view().setPanKey(false);
    // The field at the pointer belongs to the gesture; everything else ends it.
    const QWidget* now = focusWidget();
    const bool inField = d_->host.field().isOpen() && now && d_->host.field().isAncestorOf(now);
    if (!inField && event->reason() != Qt::PopupFocusReason) cancelGesture();
    QWidget::focusOutEvent(event);
}

void Canvas::contextMenuEvent(QContextMenuEvent* event)
{
    // The right button is answered at its press; this is the menu key.
    if (event->reason() != QContextMenuEvent::Keyboard) return;
    const QWidget* viewport = d_->host.view().viewport();
    QPoint at = viewport->rect().center();
    const QRectF chosen = d_->chosenBounds();
    if (!chosen.isNull()) at = d_->host.view().toView(chosen.center()).toPoint();
    emit contextMenuRequested(viewport->mapToGlobal(at));
}

void Canvas::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    d_->host.shown();
    d_->updateRulers();
}

void Canvas::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    // The layout gives the view its size only now.
    layout()->activate();
    d_->host.shown();
    d_->updateRulers();
}

void Canvas::dragEnterEvent(QDragEnterEvent* event)
{
    const auto thing = trayThing(event->mimeData());
    if (!thing) return;
    cancelGesture();
    if (!d_->host.projection().isAbove()) setProjection(Projection::above());
    d_->drop.emplace(d_->host, *thing);
    event->acceptProposedAction();
}

void Canvas::dragMoveEvent(QDragMoveEvent* event)
{
    if (!d_->drop) return;
    CanvasHost& host = d_->host;
    const QPointF px = host.view().viewport()->mapFrom(this, event->position().toPoint());
    host.setPointer(px);
    d_->drop->moveTo(host.projection().unmap(host.view().toDrawing(px)), event->modifiers());
    host.settle();
    event->setDropAction(Qt::CopyAction);
    event->setAccepted(true);
}

void Canvas::dragLeaveEvent(QDragLeaveEvent*)
{
    if (!d_->drop) return;
    d_->drop->cancel();
    d_->drop.reset();
    d_->host.settle();
}

void Canvas::dropEvent(QDropEvent* event)
{
    if (!d_->drop) return;
    d_->drop->drop();
    d_->drop.reset();
    event->acceptProposedAction();
    setFocus(Qt::OtherFocusReason);
    d_->host.settle();
}

}  // namespace yardcast::ui
