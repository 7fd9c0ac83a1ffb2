#include "ui/canvas/canvas_host.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "ui/canvas/dimension_edit.h"
#include "ui/canvas/piece_text.h"
#include "ui/canvas/pointer_label.h"
#include "ui/canvas/snap_targets.h"
#include "ui/canvas/strength_legend.h"
#include "ui/canvas/tools/select_tool.h"
#include "ui/canvas/typed_size_field.h"
#include "ui/document/plan_document.h"
#include "ui/document/selection.h"
#include "ui/live/live_assessment.h"
#include "ui/live/strength_choice.h"
#include "ui/look/number_text.h"
#include "ui/wording/figures.h"
#include "ui/wording/finding_words.h"

namespace yardcast::ui {

namespace {

constexpr double kHitReachPx = 5.0;
constexpr int kDriftMs = 16;

QPointF drawn(Point p) { return {p.x, -p.y}; }

}  // namespace

CanvasHost::CanvasHost(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget& canvas)
    : document_(document), selection_(selection), live_(live), canvas_(canvas), overlay_(scene_, selection, live),
      view_(new SheetView(&scene_, &canvas)), label_(new PointerLabel(view_->viewport())),
      legend_(new StrengthLegend(view_)), field_(new TypedSizeField(view_->viewport()))
{
    SheetView::Handler handler;
    handler.press = [this](QMouseEvent* event) { press(event, false); };
    handler.doubleClick = [this](QMouseEvent* event) { press(event, true); };
    handler.move = [this](QMouseEvent* event) { move(event); };
    handler.release = [this](QMouseEvent* event) { release(event); };
    handler.leave = [this] { leave(); };
    handler.paintOver = [this](QPainter& painter, const QRectF& exposed) { overlay_.paint(painter, exposed); };
    handler.cursor = [this] { return tool_->cursor(); };
    handler.toolTip = [this](QPointF px) {
        const Finding* finding = overlay_.findingAt(view_->toDrawing(px));
        return finding && !tool_->isGesturing() ? findingText(*finding, document_.plan().get()) : QString();
    };
    handler.hint = [this] { return hintOfEmptySheet(); };
    view_->setHandler(std::move(handler));

    tool_ = makeTool(*this, choice_);
    overlay_.setTool(tool_.get());

    connect(&document_, &PlanDocument::planChanged, this, &CanvasHost::planChanged);
    connect(&document_, &PlanDocument::committedChanged, this, &CanvasHost::committedChanged);
    connect(&document_, &PlanDocument::documentReset, this, [this] {
        // Told before the change itself: the sheet is cut for the new plan.
        scene_.show(document_.plan(), projection_);
        otherView_ = {};
        fitWhenShown();
    });
    connect(&selection_, &Selection::chosenChanged, this, [this] {
        if (SelectTool* select = selectTool()) select->dropCorner();
        updateDrawing(overlay_.refreshStage());
        hintChanged();
        repaintOverlay();
        emit chosenMoved();
    });
    connect(&selection_, &Selection::hoveredChanged, this, [this] {
        outlinesDirty_ = true;
        repaintLater();
    });
    connect(&selection_, &Selection::highlightedChanged, this, [this] {
        outlinesDirty_ = true;
        repaintLater();
    });
    connect(&live_, &LiveAssessment::assessed, this, &CanvasHost::assessed);
    connect(&live_.strengthChoice(), &StrengthChoice::changed, this, [this] {
        updateDrawing(overlay_.refreshStage());
        updateLegend();
        tellMeasure();
    });
    connect(view_, &SheetView::viewChanged, this, &CanvasHost::viewMoved);
    driftTimer_.setInterval(kDriftMs);
    connect(&driftTimer_, &QTimer::timeout, this, &CanvasHost::drift);
    connect(field_, &TypedSizeField::closed, this, [this] { canvas_.setFocus(Qt::OtherFocusReason); });

    wasEmpty_ = document_.plan()->parts.empty();
    scene_.show(document_.plan(), projection_);
    assessed();
    updateSheet(true);
}

CanvasHost::~CanvasHost()
{
    // The widgets outlive this by a moment, and still get events while they go.
    field_->disconnect(this);
    field_->close();
    view_->disconnect(this);
    view_->setHandler({});
}

SelectTool* CanvasHost::selectTool() { return dynamic_cast<SelectTool*>(tool_.get()); }

void CanvasHost::planChanged()
{
    scene_.show(document_.plan(), projection_);
    if (wasEmpty_ != document_.plan()->parts.empty()) {
        wasEmpty_ = !wasEmpty_;
        view_->viewport()->update();
    }
    repaintOverlay();
    updateDrawing(overlay_.refreshStage());
    updateLegend();
    if (!document_.isPreviewing()) updateSheet(false);
    emit chosenMoved();
}

void CanvasHost::committedChanged()
{
    // Undo, redo or an edit from a panel: what was being drawn no longer fits.
    if (tool_->isGesturing() && tool_->cancel() && pressed_) ignoreRelease_ = true;
    if (field_->isOpen()) field_->close();
    hintChanged();
}

void CanvasHost::assessed()
{
    overlay_.takeFindings();
    repaintOverlay();
    updateDrawing(overlay_.refreshStage());
    updateLegend();
    if (stage_ == Stage::strength) tellMeasure();
}

void CanvasHost::setStage(Stage stage)
{
    stage_ = stage;
    scene_.setNamesCastings(!namesCastings(stage));
    overlay_.setStage(stage);
    overlay_.refreshStage();
    updateLegend();
    // Grips can be taken hold of where the stage is about them.
    repaintOverlay();
    view_->viewport()->update();
}

void CanvasHost::setInk(const Ink& ink)
{
    ink_ = ink;
    scene_.setInk(ink);
    view_->setInk(ink);
    label_->setInk(ink);
    field_->setInk(ink);
    legend_->setInk(ink);
    overlay_.refreshStage();
    view_->viewport()->update();
}

void CanvasHost::setProjection(const Projection& projection)
{
    if (projection_ == projection) return;
    cancelGesture();
    if (!worksInElevation(choice_.kind) && !projection.isAbove()) choose({});
    const bool turned = projection_.isAbove() != projection.isAbove();
    const ViewState now = viewState();
    projection_ = projection;
    scene_.show(document_.plan(), projection_);
    overlay_.refreshStage();
    updateLegend();
    view_->viewport()->update();
    updateSheet(true);
    if (turned) {
        const ViewState next = std::exchange(otherView_, now);
        if (next.pixelsPerMm > 0.0) {
            setViewState(next);
        } else {
            fitWhenShown();
        }
    } else {
        fit();
    }
    hintChanged();
    repaintOverlay();
    emit projectionChanged(projection_);
}

void CanvasHost::updateSheet(bool anew)
{
    const QRectF wanted = paperFor(scene_.contentBounds());
    // It grows with the drawing and does not shrink under the hand.
    view_->setSheet(anew ? wanted : wanted | view_->sheet());
}

void CanvasHost::viewMoved()
{
    scene_.setMmPerPixel(view_->mmPerPixel());
    snapper_.setMmPerPixel(view_->mmPerPixel());
    scene_.setDevicePixels(view_->devicePixelRatioF());
    if (field_->isOpen()) field_->close();
    coveredPx_ = {};
    const QRectF port(view_->viewport()->rect());
    overlay_.setVisible(QRectF(view_->toDrawing(port.topLeft()), view_->toDrawing(port.bottomRight())).normalized());
    overlay_.rebuild();
    overlay_.refreshStage();
    updateLegend();
    placeLegend();
    view_->viewport()->update();
    emit viewChanged();
    emit chosenMoved();
}

void CanvasHost::fitTo(const QRectF& drawing)
{
    if (view_->viewport()->width() < 50 || !view_->isVisible()) {
        fitPending_ = true;
        return;
    }
    fitPending_ = false;
    view_->fit(drawing);
}

void CanvasHost::fit() { fitTo(document_.plan()->parts.empty() ? view_->sheet() : scene_.contentBounds()); }

void CanvasHost::fitWhenShown()
{
    updateSheet(true);
    fit();
}

void CanvasHost::shown()
{
    scene_.setDevicePixels(view_->devicePixelRatioF());
    if (fitPending_) fit();
}

ViewState CanvasHost::viewState() const
{
    if (fitPending_) return {};
    return {view_->centreMm(), view_->pixelsPerMm()};
}

void CanvasHost::setViewState(const ViewState& state)
{
    if (!(state.pixelsPerMm > 0.0)) return fitWhenShown();
    fitPending_ = false;
    view_->setView(state.centreMm, state.pixelsPerMm);
}

void CanvasHost::repaintOverlay()
{
    overlayDirty_ = true;
    repaintLater();
}

void CanvasHost::repaintLater()
{
    // Within an event the overlay is built once, at its end; from outside, before the next picture.
    if (flushQueued_) return;
    flushQueued_ = true;
    QMetaObject::invokeMethod(this, &CanvasHost::flushOverlay, Qt::QueuedConnection);
}

void CanvasHost::flushOverlay()
{
    flushQueued_ = false;
    if (!overlayDirty_ && !outlinesDirty_) return;
    if (overlayDirty_) {
        const std::optional<Point>& ring = snapper_.ring();
        overlay_.setGuides(snapper_.guides(), ring ? std::optional(drawn(*ring)) : std::nullopt);
        overlay_.rebuild();
        // Words of the stage keep clear of the signs, which may have moved.
        if (stage_ != Stage::layOut && stage_ != Stage::buy) updateDrawing(overlay_.refreshStage());
    } else {
        overlay_.rebuildOutlines();
    }
    overlayDirty_ = false;
    outlinesDirty_ = false;
    const QRegion region = regionPx(overlay_.covered());
    view_->viewport()->update(region | coveredPx_);
    coveredPx_ = region;
}

QRegion CanvasHost::regionPx(const std::vector<QRectF>& drawing) const
{
    QRegion region;
    for (const QRectF& rect : drawing) {
        const QRectF px(view_->toView(rect.topLeft()), view_->toView(rect.bottomRight()));
        region += px.toAlignedRect().adjusted(-1, -1, 1, 1) & view_->viewport()->rect();
    }
    return region;
}

void CanvasHost::updateDrawing(const std::vector<QRectF>& drawing)
{
    if (!drawing.empty()) view_->viewport()->update(regionPx(drawing));
}

void CanvasHost::setHovered(const Hit& hit)
{
    if (overlay_.hovered() == hit) return;
    overlay_.setHovered(hit);
    selection_.setHovered(QString::fromStdString(hit.part));
    outlinesDirty_ = true;
    repaintLater();
}

void CanvasHost::setHoveredFigure(const std::optional<Dimension>& figure)
{
    if (overlay_.setHoveredFigure(figure)) repaintOverlay();
}

void CanvasHost::setChosenCorner(int corner)
{
    overlay_.setChosenCorner(corner);
    repaintOverlay();
}

void CanvasHost::choose(const ToolChoice& choice)
{
    if (!worksInElevation(choice.kind) && !projection_.isAbove()) setProjection(Projection::above());
    nextChoice_ = choice;
    swapTool();
}

void CanvasHost::swapTool()
{
    if (!nextChoice_) return;
    const ToolChoice choice = *std::exchange(nextChoice_, std::nullopt);
    if (tool_->isGesturing() && pressed_) ignoreRelease_ = true;
    tool_->deactivate();
    if (field_->isOpen()) field_->close();
    overlay_.setTool(nullptr);
    snapper_.clear();
    toolText_.clear();
    label_->say({});
    choice_ = choice;
    tool_ = makeTool(*this, choice_);
    overlay_.setTool(tool_.get());
    overlay_.setEditing(choice_.kind == ToolKind::select);
    overlay_.setHovered({});
    overlay_.setChosenCorner(-1);
    tool_->activate();
    view_->updateCursor();
    repaintOverlay();
    hintChanged();
    emit toolChanged(choice_.kind);
}

void CanvasHost::settle()
{
    swapTool();
    scene_.setGesturing(tool_->isGesturing());
    if (overlayDirty_ || outlinesDirty_) flushOverlay();
    tellMeasure();
}

bool CanvasHost::cancelGesture()
{
    if (field_->isOpen()) field_->close();
    const bool was = tool_->cancel();
    if (was && pressed_) ignoreRelease_ = true;
    if (was) settle();
    return was;
}

bool CanvasHost::key(QKeyEvent* event)
{
    const bool used = tool_->key(event);
    settle();
    return used;
}

void CanvasHost::openField(const QString& text, bool selected)
{
    if (!tool_->canType()) return;
    const QPoint at = pointerInside_ ? pointerPx_.toPoint() : view_->viewport()->rect().center();
    label_->say({});
    field_->open(
        at, text, selected,
        [this](const TypedSize& size) {
            const QString fault = tool_->typed(size);
            if (fault.isEmpty()) {
                if (pressed_) ignoreRelease_ = true;
                // The tool may be another one now; the field closes by itself.
                QMetaObject::invokeMethod(this, &CanvasHost::settle, Qt::QueuedConnection);
            }
            return fault;
        },
        [this] { cancelGesture(); });
}

void CanvasHost::typeOver(const Dimension& dimension)
{
    const QPoint at = view_->toView(overlay_.figureCentre(dimension)).toPoint() - QPoint(18, 34);
    field_->open(
        at, formatNumber(dimension.valueMm, 1), true,
        [this, dimension](const TypedSize& size) {
            if (size.secondMm) return tr("One figure is understood here.");
            const SizeEdit edit =
                withDimension(*document_.committed(), dimension.target, dimension.valueMm, size.firstMm);
            if (!edit) return edit.fault;
            const QString called = partsCalled(edit.plan, {QString::fromStdString(dimension.target.part)});
            document_.apply(tr("Resize %1").arg(called), [&](const Plan&) { return edit.plan; });
            return QString();
        },
        [] {});
}

void CanvasHost::finished(const QStringList& made)
{
    if (!made.isEmpty()) selection_.setParts(made);
    nextChoice_ = ToolChoice{};
}

void CanvasHost::finishedCutout(const std::string& part, const std::string& cutout)
{
    selection_.setCutout({QString::fromStdString(part), QString::fromStdString(cutout)});
    nextChoice_ = ToolChoice{};
}

void CanvasHost::finishedFixture(const std::string& fixture)
{
    selection_.setFixture(QString::fromStdString(fixture));
    nextChoice_ = ToolChoice{};
}

std::vector<Hit> CanvasHost::hitsAt(Point at) const
{
    return scene_.hitsAt(drawn(at), kHitReachPx * view_->mmPerPixel());
}

QStringList CanvasHost::partsIn(const QRectF& drawing) const
{
    QStringList ids;
    for (const std::string& id : scene_.partsIn(drawing)) ids << QString::fromStdString(id);
    return ids;
}

std::optional<Handle> CanvasHost::handleAt(Point at) const { return overlay_.handleAt(drawn(at)); }

std::optional<Dimension> CanvasHost::figureAt(Point at) const { return overlay_.figureAt(drawn(at)); }

SnapTargets CanvasHost::snapTargets(const QStringList& withoutParts) const
{
    return targetsOf(*document_.committed(), projection_, withoutParts);
}

double CanvasHost::gridMm(Qt::KeyboardModifiers modifiers) const { return snapper_.gridMm(modifiers); }

Snap CanvasHost::snapPoint(const SnapTargets& targets, Point at, Qt::KeyboardModifiers modifiers,
                           const Placement& frame)
{
    repaintOverlay();
    return snapper_.point(targets, at, modifiers, frame);
}

Snap CanvasHost::snapMove(const SnapTargets& targets, const Moving& moving, Point by, Qt::KeyboardModifiers modifiers,
                          AxisLock locked, const Placement& frame)
{
    repaintOverlay();
    return snapper_.move(targets, moving, by, modifiers, locked, frame);
}

Snap CanvasHost::snapAlong(const SnapTargets& targets, Point at, Point direction, Qt::KeyboardModifiers modifiers,
                           const Placement& frame)
{
    repaintOverlay();
    return snapper_.along(targets, at, direction, modifiers, frame);
}

void CanvasHost::clearGuides()
{
    snapper_.clear();
    repaintOverlay();
}

void CanvasHost::say(const QString& text) { toolText_ = text; }

void CanvasHost::sayAtPointer(const QString& text)
{
    if (!field_->isOpen()) label_->say(text);
}

void CanvasHost::tellMeasure()
{
    QString text = toolText_;
    if (text.isEmpty() && pointerInside_) {
        const Point at = toPlane(pointerPx_);
        const QString x = lengthText(std::round(at.x));
        const QString y = lengthText(std::round(at.y));
        text = projection_.isAbove() ? tr("%1 right, %2 back").arg(x, y) : tr("%1 along, %2 up").arg(x, y);
    }
    if (stage_ == Stage::strength && pointerInside_ && !tool_->isGesturing()) {
        const QString values = overlay_.strength().valuesAt(view_->toDrawing(pointerPx_));
        if (!values.isEmpty()) text = values;
    }
    if (!snapper_.called().isEmpty()) text = joined({text, tr("snaps to %1").arg(snapper_.called())});
    if (text == shownText_) return;
    shownText_ = text;
    emit measureTextChanged(text);
}

void CanvasHost::hintChanged() { emit hintTextChanged(tool_->hint()); }

QString CanvasHost::hintOfEmptySheet() const
{
    if (!document_.plan()->parts.empty() || !projection_.isAbove()) return {};
    if (choice_.kind == ToolKind::select) return tr("Drag a counter onto the sheet, or press C");
    if (choice_.kind == ToolKind::counter) return tr("Drag from corner to corner to draw the first counter");
    return {};
}

}  // namespace yardcast::ui
