#include "ui/canvas/tools/select_tool.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QKeyEvent>

#include "core/plan/edits.h"
#include "ui/canvas/dimension_edit.h"
#include "ui/canvas/gestures/band_gesture.h"
#include "ui/canvas/gestures/box_gesture.h"
#include "ui/canvas/gestures/grip_gesture.h"
#include "ui/canvas/gestures/level_gesture.h"
#include "ui/canvas/gestures/move_gesture.h"
#include "ui/canvas/gestures/outline_gestures.h"
#include "ui/canvas/gestures/turn_gesture.h"
#include "ui/canvas/lookups.h"
#include "ui/canvas/piece_text.h"
#include "ui/document/plan_document.h"
#include "ui/document/selection.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr double kSameSpotPx = 4.0;
constexpr double kEdgeReachPx = 8.0;

QString tr(const char* text) { return QCoreApplication::translate("SelectTool", text); }

bool addsToChoice(Qt::KeyboardModifiers modifiers)
{
    return modifiers & (Qt::ControlModifier | Qt::ShiftModifier);
}

}  // namespace

SelectTool::SelectTool(ToolHost& host) : Tool(host), cursor_(Qt::ArrowCursor) {}

SelectTool::~SelectTool() = default;

QString SelectTool::name() const { return tr("Select"); }

QString SelectTool::hint() const
{
    const Selection& selection = host().selection();
    if (host().document().plan()->parts.empty()) return tr("Drag a counter onto the sheet, or press C.");
    if (!host().projection().isAbove()) {
        return tr("Drag parts along and up, or a handle for the height. Click a figure to type it.");
    }
    if (corner_ >= 0) return tr("Delete takes this corner away. Drag it, or hold Ctrl to move it freely.");
    if (!selection.cutout().isEmpty()) {
        return tr("Drag it, or its handles for the size. Click a figure, or type digits.");
    }
    if (selection.parts().size() == 1) {
        const Part* part = findPart(*host().document().plan(), selection.parts().front().toStdString());
        if (part && part->kind() == PartKind::counter) {
            return tr("Drag an edge to resize; with Ctrl it makes an L. Double click it for a new corner.");
        }
        return tr("Drag to move, or a handle to resize. Click a figure, or type digits.");
    }
    if (selection.parts().size() > 1) {
        return tr("Drag to move them together. Arrows move by 10 mm, with Shift by 1 mm.");
    }
    return tr("Click to choose, drag a band for several. A second click goes to what lies under.");
}

void SelectTool::deactivate()
{
    cancel();
    dropCorner();
    lastClick_.reset();
}

void SelectTool::dropCorner()
{
    if (corner_ < 0) return;
    corner_ = -1;
    host().setChosenCorner(-1);
    host().hintChanged();
}

bool SelectTool::isChosen(const Hit& hit) const
{
    const Selection& selection = host().selection();
    switch (hit.what) {
    case Hit::What::part:
        return selection.cutout().isEmpty() && selection.contains(QString::fromStdString(hit.part));
    case Hit::What::cutout:
        return selection.cutout().part.toStdString() == hit.part
            && selection.cutout().cutout.toStdString() == hit.cutout;
    case Hit::What::fixture: return selection.fixture().toStdString() == hit.fixture;
    case Hit::What::none: break;
    }
    return false;
}

void SelectTool::choose(const Hit& hit)
{
    Selection& selection = host().selection();
    switch (hit.what) {
    case Hit::What::part: selection.setParts({QString::fromStdString(hit.part)}); break;
    case Hit::What::cutout:
        selection.setCutout({QString::fromStdString(hit.part), QString::fromStdString(hit.cutout)});
        break;
    case Hit::What::fixture: selection.setFixture(QString::fromStdString(hit.fixture)); break;
    case Hit::What::none: selection.clear(); break;
    }
}

void SelectTool::press(const PointerEvent& event)
{
    Press press;
    press.event = event;
    press.adds = addsToChoice(event.modifiers);
    press.hits = host().hitsAt(event.at);
    press.handle = host().handleAt(event.at);
    press.figure = press.handle ? std::nullopt : host().figureAt(event.at);
    // What is pressed is chosen at once, unless what is chosen lies there too: that may be about to be dragged.
    const bool free = !press.handle && !press.figure && !press.adds && !press.hits.empty();
    if (free && std::ranges::none_of(press.hits, [&](const Hit& h) { return isChosen(h); })) {
        choose(press.hits.front());
        press.choseNow = true;
    }
    press_ = std::move(press);
}

int SelectTool::edgeAt(Point at, Point* foot) const
{
    const Selection& selection = host().selection();
    if (!host().projection().isAbove() || selection.parts().size() != 1 || !selection.cutout().isEmpty()) return -1;
    const Part* part = findPart(*host().document().plan(), selection.parts().front().toStdString());
    const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
    if (!counter) return -1;
    const Point own = part->place.toOwn(at);
    int best = -1;
    double least = kEdgeReachPx * host().mmPerPixel();
    const std::size_t n = counter->outline.size();
    for (std::size_t i = 0; i < n; ++i) {
        const Point a = counter->outline[i];
        const Point b = counter->outline[(i + 1) % n];
        const double far = distanceToSegment(own, a, b);
        if (far > least) continue;
        least = far;
        best = static_cast<int>(i);
        const double span2 = dot(b - a, b - a);
        if (foot) *foot = span2 > 0.0 ? a + (b - a) * std::clamp(dot(own - a, b - a) / span2, 0.0, 1.0) : a;
    }
    return best;
}

std::unique_ptr<Gesture> SelectTool::handleGesture(const Handle& handle, const PointerEvent& event)
{
    const Point from = event.pressedAt;
    switch (handle.what) {
    case Handle::What::outlineCorner: return std::make_unique<CornerGesture>(host(), handle.part, handle.index, from);
    case Handle::What::outlineEdge:
        if (event.modifiers & Qt::ControlModifier) {
            return std::make_unique<StepGesture>(host(), handle.part, handle.index, from);
        }
        return std::make_unique<EdgeGesture>(host(), handle.part, handle.index, from);
    case Handle::What::box: {
        BoxGesture::Subject subject = !handle.fixture.empty() ? BoxGesture::fixtureSubject(host(), handle.fixture)
            : !handle.cutout.empty() ? BoxGesture::cutoutSubject(host(), handle.part, handle.cutout)
                                     : BoxGesture::partSubject(host(), handle.part);
        return std::make_unique<BoxGesture>(host(), std::move(subject), handle.index, from);
    }
    case Handle::What::diameter: return std::make_unique<DiameterGesture>(host(), handle.part, handle.cutout, from);
    case Handle::What::frontEnd: return std::make_unique<FrontEndGesture>(host(), handle.part, handle.index, from);
    case Handle::What::grip:
        return std::make_unique<GripGesture>(host(), handle.part, handle.grips, handle.index, from);
    case Handle::What::level: return std::make_unique<LevelGesture>(host(), handle.part, handle.index == kBack, from);
    case Handle::What::turn: return std::make_unique<TurnGesture>(host(), host().selection().parts(), from);
    }
    return nullptr;
}

std::unique_ptr<Gesture> SelectTool::gestureFor(const Press& press)
{
    const PointerEvent& event = press.event;
    if (press.handle) return handleGesture(*press.handle, event);
    if (event.modifiers & Qt::ControlModifier) {
        if (const int edge = edgeAt(event.at); edge >= 0) {
            const std::string part = host().selection().parts().front().toStdString();
            return std::make_unique<StepGesture>(host(), part, edge, event.at);
        }
    }
    Selection& selection = host().selection();
    if (press.hits.empty() || (press.adds && !isChosen(press.hits.front()))) {
        const auto partsIn = [this](const QRectF& rect) { return host().partsIn(rect); };
        return std::make_unique<BandGesture>(host(), partsIn, event.at, press.adds);
    }
    // What is chosen is dragged even from under something else; but a cutout is nearer to the hand than its counter.
    Hit hit = press.hits.front();
    const auto chosen = std::ranges::find_if(press.hits, [&](const Hit& h) { return isChosen(h); });
    if (chosen != press.hits.end() && !(hit.what == Hit::What::cutout && selection.parts().size() == 1
                                        && hit.part == chosen->part && chosen->what == Hit::What::part)) {
        hit = *chosen;
    }
    if (!isChosen(hit)) choose(hit);
    if (hit.what == Hit::What::cutout) {
        return std::make_unique<CutoutMoveGesture>(host(), hit.part, hit.cutout, event.at);
    }
    if (hit.what == Hit::What::fixture) {
        if (!host().projection().isAbove()) return nullptr;
        return std::make_unique<FixtureMoveGesture>(host(), hit.fixture, event.at);
    }
    return std::make_unique<MoveGesture>(host(), selection.parts(), event.at);
}

void SelectTool::move(const PointerEvent& event)
{
    if (gesture_) {
        gesture_->move(event);
        return;
    }
    if (!press_) {
        hover(event);
        return;
    }
    if (!event.dragged || press_->event.button != Qt::LeftButton) return;
    if (press_->handle && press_->handle->what == Handle::What::outlineCorner) dropCorner();
    gesture_ = gestureFor(*press_);
    if (!gesture_) {
        press_.reset();
        return;
    }
    host().hintChanged();
    gesture_->move(event);
}

void SelectTool::finishGesture()
{
    // Taken first: the commit tells everybody, and nobody may find the gesture still running.
    const std::unique_ptr<Gesture> gesture = std::move(gesture_);
    press_.reset();
    lastClick_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    if (gesture->changesPlan()) host().document().commitPreview(gesture->name());
    host().hintChanged();
    host().repaintOverlay();
}

void SelectTool::release(const PointerEvent& event)
{
    if (gesture_) {
        gesture_->move(event);
        finishGesture();
        return;
    }
    if (!press_) return;
    const Press press = std::move(*press_);
    press_.reset();
    if (press.event.button == Qt::LeftButton) click(press);
}

void SelectTool::click(const Press& press)
{
    if (press.figure) {
        host().typeOver(*press.figure);
        return;
    }
    if (press.handle) {
        corner_ = press.handle->what == Handle::What::outlineCorner ? press.handle->index : -1;
        host().setChosenCorner(corner_);
        host().hintChanged();
        return;
    }
    dropCorner();
    if (press.choseNow) {
        lastClick_ = press.event.at;
        return;
    }
    Selection& selection = host().selection();
    if (press.adds) {
        const auto part = std::ranges::find(press.hits, Hit::What::part, &Hit::what);
        if (part != press.hits.end()) selection.toggle(QString::fromStdString(part->part));
        return;
    }
    if (press.hits.empty()) {
        selection.clear();
        lastClick_.reset();
        return;
    }
    // A second click on the same spot goes to what lies under the one that is chosen.
    std::size_t next = 0;
    const bool same = lastClick_ && distance(*lastClick_, press.event.at) <= kSameSpotPx * host().mmPerPixel();
    if (same) {
        const auto chosen = std::ranges::find_if(press.hits, [&](const Hit& h) { return isChosen(h); });
        if (chosen != press.hits.end()) {
            next = static_cast<std::size_t>(chosen - press.hits.begin() + 1) % press.hits.size();
        }
    }
    lastClick_ = press.event.at;
    choose(press.hits[next]);
}

void SelectTool::doubleClick(const PointerEvent& event)
{
    press_.reset();
    if (event.button != Qt::LeftButton) return;
    if (host().handleAt(event.at) && host().handleAt(event.at)->what == Handle::What::outlineCorner) return;
    Point foot;
    const int edge = edgeAt(event.at, &foot);
    if (edge < 0) {
        press(event);
        return;
    }
    const std::string id = host().selection().parts().front().toStdString();
    const Point rounded{std::round(foot.x), std::round(foot.y)};
    const Counter* counter = findCounter(*host().document().plan(), id);
    const Point a = counter->outline[static_cast<std::size_t>(edge)];
    const Point b = counter->outline[static_cast<std::size_t>(edge + 1) % counter->outline.size()];
    // Whole mm, unless that would bend a slanted edge.
    const bool straight = std::abs(a.x - b.x) < 1e-9 || std::abs(a.y - b.y) < 1e-9;
    const Point at = straight ? rounded : foot;
    const QString called = partsCalled(*host().document().plan(), {QString::fromStdString(id)});
    host().document().apply(tr("New corner in %1").arg(called),
                            [=](const Plan& plan) { return insertOutlineCorner(plan, id, edge, at); });
    corner_ = edge + 1;
    host().setChosenCorner(corner_);
    host().hintChanged();
    host().repaintOverlay();
}

void SelectTool::hover(const PointerEvent& event)
{
    const std::optional<Handle> handle = host().handleAt(event.at);
    const std::optional<Dimension> figure = handle ? std::nullopt : host().figureAt(event.at);
    Hit hit;
    if (handle) {
        const bool steps = handle->what == Handle::What::outlineEdge && event.modifiers & Qt::ControlModifier;
        cursor_ = steps ? QCursor(Qt::CrossCursor) : cursorOf(*handle);
    } else if (figure) {
        cursor_ = Qt::IBeamCursor;
        host().say(tr("Click the figure to type another."));
    } else {
        const std::vector<Hit> hits = host().hitsAt(event.at);
        cursor_ = Qt::ArrowCursor;
        if (!hits.empty()) {
            hit = hits.front();
            const bool moves = std::ranges::any_of(hits, [&](const Hit& h) { return isChosen(h); });
            cursor_ = moves ? Qt::SizeAllCursor : Qt::ArrowCursor;
        }
        if (event.modifiers & Qt::ControlModifier && edgeAt(event.at) >= 0) cursor_ = Qt::CrossCursor;
    }
    if (!figure) host().say(called(hit));
    host().setHoveredFigure(figure);
    host().setHovered(hit);
}

/// What the pointer is over, with its mass; worked out once for each thing.
const QString& SelectTool::called(const Hit& hit)
{
    const PlanPtr& plan = host().document().plan();
    if (saidOf_ == hit && saidIn_ == plan) return said_;
    saidOf_ = hit;
    saidIn_ = plan;
    said_.clear();
    const Part* part = hit.part.empty() ? nullptr : findPart(*plan, hit.part);
    if (hit.what == Hit::What::fixture) said_ = QString::fromStdString(hit.fixture);
    if (part) said_ = joined({partsCalled(*plan, {QString::fromStdString(hit.part)}), massAndPeople(*plan, *part)});
    const Cutout* cutout = part && hit.what == Hit::What::cutout ? findCutout(*plan, hit.part, hit.cutout) : nullptr;
    if (cutout) said_ = joined({cutoutCalled(*cutout), said_});
    return said_;
}

void SelectTool::leave()
{
    if (gesture_) return;
    host().setHovered({});
    host().setHoveredFigure(std::nullopt);
}

bool SelectTool::removeChosenCorner()
{
    const Selection& selection = host().selection();
    if (corner_ < 0 || selection.parts().size() != 1) return false;
    const QString id = selection.parts().front();
    const Counter* counter = findCounter(*host().document().plan(), id.toStdString());
    if (!counter || static_cast<std::size_t>(corner_) >= counter->outline.size()) return false;
    if (counter->outline.size() <= 3) {
        host().say(tr("An outline keeps at least three corners."));
        return true;
    }
    const QString called = partsCalled(*host().document().plan(), {id});
    host().document().apply(tr("Remove a corner of %1").arg(called), [&](const Plan& plan) {
        return removeOutlineCorner(plan, id.toStdString(), corner_);
    });
    dropCorner();
    return true;
}

bool SelectTool::wantsKey(const QKeyEvent& event) const
{
    return corner_ >= 0 && (event.key() == Qt::Key_Delete || event.key() == Qt::Key_Backspace);
}

bool SelectTool::key(QKeyEvent* event)
{
    if (wantsKey(*event)) return removeChosenCorner();
    return false;
}

bool SelectTool::canType() const
{
    if (gesture_) return gesture_->changesPlan();
    const Selection& selection = host().selection();
    return !selection.cutout().isEmpty() || selection.parts().size() == 1;
}

QString SelectTool::currentSize() const
{
    if (gesture_) return gesture_->currentSize();
    const Plan& plan = *host().document().plan();
    const Selection& selection = host().selection();
    if (!selection.cutout().isEmpty()) {
        const Cutout* cutout = findCutout(plan, selection.cutout().part.toStdString(),
                                          selection.cutout().cutout.toStdString());
        return cutout ? cutoutSizeText(*cutout) : QString();
    }
    if (selection.parts().size() != 1) return {};
    const Part* part = findPart(plan, selection.parts().front().toStdString());
    return part ? partSizeText(*part) : QString();
}

QString SelectTool::typed(const TypedSize& size)
{
    if (gesture_) {
        const QString fault = gesture_->typed(size);
        if (fault.isEmpty()) finishGesture();
        return fault;
    }
    const Plan& plan = *host().document().plan();
    const Selection& selection = host().selection();
    SizeEdit edit;
    QString called;
    if (!selection.cutout().isEmpty()) {
        const std::string part = selection.cutout().part.toStdString();
        const std::string id = selection.cutout().cutout.toStdString();
        edit = withCutoutSize(plan, part, id, size);
        if (const Cutout* cutout = findCutout(plan, part, id)) called = cutoutCalled(*cutout);
    } else if (selection.parts().size() == 1) {
        edit = withPartSize(plan, selection.parts().front().toStdString(), size);
        called = partsCalled(plan, selection.parts());
    } else {
        return tr("Choose one part, or start drawing, to type a size.");
    }
    if (!edit) return edit.fault;
    host().document().apply(tr("Resize %1").arg(called), [&](const Plan&) { return edit.plan; });
    return {};
}

bool SelectTool::cancel()
{
    press_.reset();
    if (!gesture_) return false;
    const std::unique_ptr<Gesture> gesture = std::move(gesture_);
    gesture->cancelled();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    host().hintChanged();
    host().repaintOverlay();
    return true;
}

void SelectTool::paint(QPainter& painter, const PaintStyle& style)
{
    if (gesture_) gesture_->paint(painter, style);
}

QRectF SelectTool::paintBounds() const { return gesture_ ? gesture_->paintBounds() : QRectF(); }

}  // namespace yardcast::ui
