#include "ui/canvas/tools/across_tool.h"

#include <cmath>
#include <utility>

#include <QCoreApplication>
#include <QKeyEvent>
#include <QPainter>

#include "core/plan/edits.h"
#include "ui/canvas/lookups.h"
#include "ui/canvas/new_parts.h"
#include "ui/canvas/piece_text.h"
#include "ui/canvas/snap_targets.h"
#include "ui/document/plan_document.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("AcrossTool", text); }

constexpr double kLineReachPx = 7.0;

double span(const std::pair<Point, Point>& line) { return distance(line.first, line.second); }

}  // namespace

AcrossTool::AcrossTool(ToolHost& host, Makes makes) : Tool(host), makes_(makes) {}

QString AcrossTool::name() const { return makes_ == Makes::joint ? tr("Joint") : tr("Rib"); }

QString AcrossTool::hint() const
{
    if (present_ >= 0) return tr("Drag it along, or type its distance from the left. Delete takes it away.");
    if (anchor_) return tr("Drag in the direction of the line, and let go.");
    return makes_ == Makes::joint
        ? tr("Click where the counter is to be divided. Shift: the other way. Drag: askew.")
        : tr("Click where the rib is to run. Shift: the other way. Drag: askew.");
}

void AcrossTool::deactivate()
{
    cancel();
    line_.reset();
    present_ = -1;
    host().document().cancelPreview();
    host().clearGuides();
    host().sayAtPointer({});
    host().repaintOverlay();
}

bool AcrossTool::takeCounter(Point inPlan)
{
    const Part* part = counterAt(*host().document().committed(), inPlan);
    if (!part) {
        counter_.clear();
        return false;
    }
    counter_ = part->id;
    frame_ = part->place;
    targets_ = targetsWithin(*part, {});
    // A joint belongs over a support: the middles of what stands below are worth snapping to.
    for (const PartPtr& other : host().document().committed()->parts) {
        if (other->kind() != PartKind::support) continue;
        if (const auto box = boundsOf(footprint(*other))) {
            targets_.middles.push_back({frame_.toOwn(box->centre()), other->id});
        }
    }
    return true;
}

std::vector<AcrossTool::Line> AcrossTool::lines() const
{
    std::vector<Line> all;
    const Counter* counter = findCounter(*host().document().committed(), counter_);
    if (!counter) return all;
    if (makes_ == Makes::joint) {
        for (const Joint& joint : counter->joints) all.emplace_back(joint.from, joint.to);
    } else {
        for (const Rib& rib : counter->ribs) all.emplace_back(rib.from, rib.to);
    }
    return all;
}

int AcrossTool::lineAt(Point own) const
{
    const std::vector<Line> all = lines();
    double least = kLineReachPx * host().mmPerPixel();
    int best = -1;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const double far = distanceToSegment(own, all[i].first, all[i].second);
        if (far > least) continue;
        least = far;
        best = static_cast<int>(i);
    }
    return best;
}

void AcrossTool::aim(Point own, std::optional<Point> way, bool turned)
{
    const Counter* counter = findCounter(*host().document().committed(), counter_);
    line_.reset();
    if (!counter) return;
    if (way) {
        line_ = chordThrough(counter->outline, own, *way);
        upright_ = std::abs(way->y) >= std::abs(way->x);
        return;
    }
    const auto upright = chordThrough(counter->outline, own, {0.0, 1.0});
    const auto level = chordThrough(counter->outline, own, {1.0, 0.0});
    if (!upright || !level) return;
    upright_ = (span(*upright) <= span(*level)) != turned;
    line_ = upright_ ? upright : level;
}

Plan AcrossTool::withLine(const Plan& plan) const
{
    if (!line_) return plan;
    return changeCounter(plan, counter_, [&](Counter& counter) {
        const auto index = static_cast<std::size_t>(present_);
        if (present_ >= 0 && makes_ == Makes::joint && index < counter.joints.size()) {
            counter.joints[index].from = line_->first;
            counter.joints[index].to = line_->second;
        } else if (present_ >= 0 && makes_ == Makes::rib && index < counter.ribs.size()) {
            counter.ribs[index].from = line_->first;
            counter.ribs[index].to = line_->second;
        } else if (makes_ == Makes::joint) {
            Joint joint;
            joint.from = line_->first;
            joint.to = line_->second;
            counter.joints.push_back(joint);
        } else {
            Rib rib;
            rib.from = line_->first;
            rib.to = line_->second;
            counter.ribs.push_back(rib);
        }
    });
}

void AcrossTool::preview()
{
    if (!line_) {
        host().document().cancelPreview();
        host().sayAtPointer({});
        host().repaintOverlay();
        return;
    }
    host().document().preview([this](const Plan& plan) { return withLine(plan); });
    const Plan& plan = *host().document().plan();
    const Part* part = findPart(plan, counter_);
    const Counter* counter = findCounter(plan, counter_);
    if (!part || !counter) return;
    const auto box = boundsOf(counter->outline);
    const double at = upright_ ? line_->first.x - box->low.x : line_->first.y - box->low.y;
    const QString place = (upright_ ? tr("%1 from the left") : tr("%1 from the front")).arg(lengthText(at));
    QString text = joined({place, massesAndPeople(plan, *part)});
    if (makes_ == Makes::rib && !counter->rim) {
        text = joined({place, tr("this counter has no rim, so a rib has no depth")});
    }
    host().sayAtPointer(text);
    host().say(text);
    host().repaintOverlay();
}

void AcrossTool::place()
{
    if (!line_) return;
    const auto line = *line_;
    const std::string id = counter_;
    anchor_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    line_ = line;
    const QString name = makes_ == Makes::joint ? (present_ < 0 ? tr("Add joint") : tr("Move joint"))
                                                : (present_ < 0 ? tr("Add rib") : tr("Move rib"));
    host().document().apply(name, [this](const Plan& plan) { return withLine(plan); });
    line_.reset();
    present_ = -1;
    host().finished({QString::fromStdString(id)});
}

void AcrossTool::press(const PointerEvent& event)
{
    if (event.button != Qt::LeftButton) return;
    if (!takeCounter(event.at)) {
        host().say(tr("Press inside a counter."));
        return;
    }
    present_ = lineAt(frame_.toOwn(event.at));
    if (present_ >= 0) {
        line_ = lines()[static_cast<std::size_t>(present_)];
        upright_ = std::abs(line_->second.y - line_->first.y) >= std::abs(line_->second.x - line_->first.x);
        anchor_ = frame_.toOwn(event.at);
        host().hintChanged();
        return;
    }
    anchor_ = host().snapPoint(targets_, frame_.toOwn(event.at), event.modifiers, frame_).at;
    aim(*anchor_, std::nullopt, event.modifiers & Qt::ShiftModifier);
    preview();
    host().hintChanged();
}

void AcrossTool::move(const PointerEvent& event)
{
    if (!anchor_) {
        const int before = present_;
        present_ = takeCounter(event.at) ? lineAt(frame_.toOwn(event.at)) : -1;
        if (before != present_) host().hintChanged();
        if (present_ >= 0) {
            line_ = lines()[static_cast<std::size_t>(present_)];
            upright_ = std::abs(line_->second.y - line_->first.y) >= std::abs(line_->second.x - line_->first.x);
            preview();
            return;
        }
        if (counter_.empty()) {
            line_.reset();
            host().clearGuides();
            preview();
            host().say(tr("Point inside a counter."));
            return;
        }
        const Point own = host().snapPoint(targets_, frame_.toOwn(event.at), event.modifiers, frame_).at;
        aim(own, std::nullopt, event.modifiers & Qt::ShiftModifier);
        if (!line_) aim(frame_.toOwn(event.at), std::nullopt, event.modifiers & Qt::ShiftModifier);
        preview();
        return;
    }
    if (!event.dragged) return;
    const Point at = host().snapPoint(targets_, frame_.toOwn(event.at), event.modifiers, frame_).at;
    if (present_ >= 0) {
        const Counter* counter = findCounter(*host().document().committed(), counter_);
        const Point along = line_->second - line_->first;
        if (const auto chord = counter ? chordThrough(counter->outline, at, along) : std::nullopt) line_ = chord;
        preview();
        return;
    }
    const Point way = at - *anchor_;
    if (length(way) < 1.0) return;
    aim(*anchor_, way, false);
    preview();
}

void AcrossTool::release(const PointerEvent& event)
{
    if (!anchor_) return;
    if (present_ >= 0 && !event.dragged) {
        cancel();
        move(event);
        return;
    }
    move(event);
    if (!line_) {
        cancel();
        host().say(tr("The line must run through the counter."));
        return;
    }
    place();
}

void AcrossTool::leave()
{
    if (anchor_) return;
    line_.reset();
    present_ = -1;
    host().clearGuides();
    preview();
}

bool AcrossTool::wantsKey(const QKeyEvent& event) const
{
    return present_ >= 0 && !anchor_ && (event.key() == Qt::Key_Delete || event.key() == Qt::Key_Backspace);
}

bool AcrossTool::key(QKeyEvent* event)
{
    if (!wantsKey(*event)) return false;
    const int index = std::exchange(present_, -1);
    line_.reset();
    host().document().cancelPreview();
    host().document().apply(makes_ == Makes::joint ? tr("Remove joint") : tr("Remove rib"), [&](const Plan& plan) {
        return changeCounter(plan, counter_, [&](Counter& counter) {
            if (makes_ == Makes::joint) {
                counter.joints.erase(counter.joints.begin() + index);
            } else {
                counter.ribs.erase(counter.ribs.begin() + index);
            }
        });
    });
    host().sayAtPointer({});
    host().hintChanged();
    host().repaintOverlay();
    return true;
}

QString AcrossTool::typed(const TypedSize& size)
{
    const Counter* counter = findCounter(*host().document().committed(), counter_);
    if (!line_ || !counter) return tr("Point inside a counter first.");
    if (size.secondMm) return tr("One figure is understood here: how far from the left, or from the front.");
    const auto box = boundsOf(counter->outline);
    const Point centre = (line_->first + line_->second) * 0.5;
    const Point at = upright_ ? Point{box->low.x + size.firstMm, centre.y} : Point{centre.x, box->low.y + size.firstMm};
    const auto chord = chordThrough(counter->outline, at, upright_ ? Point{0.0, 1.0} : Point{1.0, 0.0});
    const double room = upright_ ? box->width() : box->height();
    if (!chord || !(size.firstMm > 0.0) || size.firstMm >= room) return tr("That lies outside the counter.");
    line_ = chord;
    place();
    return {};
}

bool AcrossTool::cancel()
{
    if (!anchor_) return false;
    anchor_.reset();
    line_.reset();
    present_ = -1;
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    host().hintChanged();
    host().repaintOverlay();
    return true;
}

void AcrossTool::paint(QPainter& painter, const PaintStyle& style)
{
    if (!line_) return;
    const auto drawn = [&](Point own) { return host().projection().map(frame_.toPlan(own)); };
    painter.setPen(present_ < 0 ? style.pen(style.ink.chosen, 2.0, Qt::DashLine) : style.pen(style.ink.chosen, 4.0));
    painter.drawLine(drawn(line_->first), drawn(line_->second));
}

QRectF AcrossTool::paintBounds() const
{
    if (!line_) return {};
    return QRectF(host().projection().map(frame_.toPlan(line_->first)),
                  host().projection().map(frame_.toPlan(line_->second))).normalized();
}

}  // namespace yardcast::ui
