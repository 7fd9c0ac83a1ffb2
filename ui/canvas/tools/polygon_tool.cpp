#include "ui/canvas/tools/polygon_tool.h"

#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QKeyEvent>
#include <QPainter>

#include "core/plan/edits.h"
#include "ui/canvas/new_parts.h"
#include "ui/canvas/piece_text.h"
#include "ui/document/plan_document.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

constexpr double kFirstReachPx = 10.0;
constexpr double kLeastEdgeMm = 1.0;

QString tr(const char* text) { return QCoreApplication::translate("PolygonTool", text); }

}  // namespace

PolygonTool::PolygonTool(ToolHost& host, Makes makes) : Tool(host), makes_(makes) {}

QString PolygonTool::name() const
{
    return makes_ == Makes::counter ? tr("Draw counter by corners") : tr("Draw site outline");
}

QString PolygonTool::hint() const
{
    if (corners_.empty()) {
        return makes_ == Makes::counter ? tr("Click the corners of the counter, one after the other.")
            : hasOutline()                 ? tr("Click the corners of the new outline. Delete takes the old one away.")
                                           : tr("Click the corners of the terrace, one after the other.");
    }
    if (corners_.size() < 3) return tr("Next corner. Shift: straight. Digits: the length. Backspace takes one back.");
    return tr("Click the first corner, or press Enter, to close. Backspace takes one back.");
}

void PolygonTool::activate() { targets_ = host().snapTargets({}); }

bool PolygonTool::atFirst(Point at) const
{
    return corners_.size() >= 3 && distance(at, corners_.front()) <= kFirstReachPx * host().mmPerPixel();
}

Point PolygonTool::next(const PointerEvent& event)
{
    targets_.gridOrigin = corners_.empty() ? Point{} : corners_.back();
    Point at = host().snapPoint(targets_, event.at, event.modifiers).at;
    if (event.modifiers & Qt::ShiftModifier && !corners_.empty()) {
        // In steps of 45 degrees from the last corner.
        const Point way = at - corners_.back();
        const double angle = std::round(std::atan2(way.y, way.x) / (std::numbers::pi / 4.0)) * 45.0;
        const SineCosine turn = sineCosineDeg(angle);
        const Point unit{turn.cosine, turn.sine};
        at = corners_.back() + unit * dot(way, unit);
    }
    return at;
}

void PolygonTool::preview()
{
    Ring ring = corners_;
    if (!ring.empty() && distance(ring.back(), pointer_) > kLeastEdgeMm && !atFirst(pointer_)) ring.push_back(pointer_);
    QStringList figures;
    if (!corners_.empty()) figures << lengthText(distance(corners_.back(), pointer_));
    if (ring.size() >= 3 && makes_ == Makes::counter) {
        const Part part = newCounter(*host().document().committed(), ring);
        host().document().preview([part](const Plan& plan) { return withNewPart(plan, part); });
        figures << massAndPeople(*host().document().plan(), part);
    } else {
        host().document().cancelPreview();
        if (ring.size() >= 3) figures << areaText(std::abs(signedArea(ring)) / 1e6);
    }
    host().sayAtPointer(joined(figures));
    host().say(joined(figures));
    host().repaintOverlay();
}

void PolygonTool::add(Point corner)
{
    if (!corners_.empty() && distance(corners_.back(), corner) < kLeastEdgeMm) return;
    corners_.push_back(corner);
    // What was drawn already lines up too.
    targets_.corners.push_back({corner, {}});
    host().hintChanged();
    preview();
}

void PolygonTool::press(const PointerEvent& event)
{
    if (event.button != Qt::LeftButton) return;
    if (corners_.empty()) targets_ = host().snapTargets({});
    pointer_ = next(event);
    if (atFirst(event.at)) {
        close();
        return;
    }
    add(pointer_);
}

void PolygonTool::move(const PointerEvent& event)
{
    pointer_ = next(event);
    if (!corners_.empty()) preview();
}

void PolygonTool::doubleClick(const PointerEvent& event)
{
    if (event.button == Qt::LeftButton && corners_.size() >= 3) {
        close();
    } else {
        press(event);
    }
}

void PolygonTool::close()
{
    if (corners_.size() < 3) {
        host().say(tr("An outline needs at least three corners."));
        return;
    }
    const Ring ring = std::move(corners_);
    corners_.clear();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    if (makes_ == Makes::counter) {
        const Part part = newCounter(*host().document().committed(), ring);
        host().document().apply(tr("Add counter"), [part](const Plan& plan) { return withNewPart(plan, part); });
        host().finished({QString::fromStdString(part.id)});
    } else {
        host().document().apply(tr("Site outline"), [ring](const Plan& plan) { return setSiteOutline(plan, ring); });
        host().finished({});
    }
}

bool PolygonTool::hasOutline() const
{
    return makes_ == Makes::siteOutline && host().document().committed()->site.outline.has_value();
}

bool PolygonTool::wantsKey(const QKeyEvent& event) const
{
    const int key = event.key();
    if (!isGesturing()) return hasOutline() && (key == Qt::Key_Delete || key == Qt::Key_Backspace);
    return (key == Qt::Key_Backspace || key == Qt::Key_Delete || key == Qt::Key_Return || key == Qt::Key_Enter);
}

bool PolygonTool::key(QKeyEvent* event)
{
    if (!wantsKey(*event)) return false;
    if (!isGesturing()) {
        host().document().apply(tr("Remove site outline"), [](const Plan& plan) {
            return changePlan(plan, [](Plan& p) { p.site.outline.reset(); });
        });
        return true;
    }
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        close();
        return true;
    }
    corners_.pop_back();
    targets_.corners.pop_back();
    host().hintChanged();
    preview();
    return true;
}

QString PolygonTool::typed(const TypedSize& size)
{
    if (corners_.empty()) return tr("Click the first corner before typing a length.");
    if (size.secondMm) {
        add(corners_.back() + Point{size.firstMm, *size.secondMm});
        return {};
    }
    const Point way = pointer_ - corners_.back();
    if (!(size.firstMm >= kLeastEdgeMm)) return tr("A side is at least 1 mm long.");
    if (!(length(way) > 0.0)) return tr("Point in the direction of the side, then type its length.");
    add(corners_.back() + way * (size.firstMm / length(way)));
    return {};
}

bool PolygonTool::cancel()
{
    if (corners_.empty()) return false;
    corners_.clear();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    host().hintChanged();
    host().repaintOverlay();
    return true;
}

void PolygonTool::paint(QPainter& painter, const PaintStyle& style)
{
    if (corners_.empty()) return;
    QPolygonF line = host().projection().map(corners_);
    line.append(host().projection().map(pointer_));
    painter.setPen(style.pen(style.ink.chosen, 2.0));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(line);
    painter.setBrush(style.ink.sheet);
    const double radius = 4.0 * style.mmPerUnit;
    for (qsizetype i = 0; i + 1 < line.size(); ++i) painter.drawEllipse(line[i], radius, radius);
    if (atFirst(pointer_)) painter.drawEllipse(line.front(), 2.0 * radius, 2.0 * radius);
}

QRectF PolygonTool::paintBounds() const
{
    if (corners_.empty()) return {};
    QPolygonF line = host().projection().map(corners_);
    line.append(host().projection().map(pointer_));
    return line.boundingRect();
}

}  // namespace yardcast::ui
