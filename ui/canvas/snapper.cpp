#include "ui/canvas/snapper.h"

#include <cmath>

#include <QCoreApplication>

#include "ui/canvas/grid.h"

namespace yardcast::ui {

namespace {

constexpr double kSnapPx = 8.0;

QString tr(const char* text, const char* comment = nullptr)
{
    return QCoreApplication::translate("Snapper", text, comment);
}

/// Without snapping, whole mm all the same: nothing is built to less.
Snap wholeMm(Point at)
{
    Snap snap;
    snap.at = {std::round(at.x), std::round(at.y)};
    return snap;
}

QString nameOf(const Snap& snap)
{
    QString what;
    switch (snap.kind) {
    case SnapKind::none: return {};
    case SnapKind::corner: what = tr("corner"); break;
    case SnapKind::middle: what = tr("middle"); break;
    case SnapKind::edge: what = tr("edge"); break;
    case SnapKind::spacing: return tr("equal spacing");
    case SnapKind::grid: return tr("grid");
    }
    const QString owner = QString::fromStdString(snap.owner);
    return owner.isEmpty() ? what : tr("%1 of %2", "a corner of a part").arg(what, owner);
}

}  // namespace

bool Snapper::isSuspended(Qt::KeyboardModifiers modifiers) const { return !on_ || modifiers & Qt::AltModifier; }

SnapReach Snapper::reach() const { return {kSnapPx * mmPerPixel_, gridPitch(mmPerPixel_).snapMm}; }

double Snapper::gridMm(Qt::KeyboardModifiers modifiers) const { return isSuspended(modifiers) ? 0.0 : reach().gridMm; }

Snap Snapper::point(const SnapTargets& targets, Point at, Qt::KeyboardModifiers modifiers, const Placement& frame)
{
    if (isSuspended(modifiers)) return wholeMm(at);
    const Snap snap = snapPoint(targets, at, reach());
    keep(snap, frame, snap.at);
    return snap;
}

Snap Snapper::move(const SnapTargets& targets, const Moving& moving, Point by, Qt::KeyboardModifiers modifiers,
                   AxisLock locked, const Placement& frame)
{
    if (isSuspended(modifiers)) return wholeMm(by);
    const Snap snap = snapMove(targets, moving, by, reach(), locked);
    keep(snap, frame, std::nullopt);
    return snap;
}

Snap Snapper::along(const SnapTargets& targets, Point at, Point direction, Qt::KeyboardModifiers modifiers,
                    const Placement& frame)
{
    if (isSuspended(modifiers)) {
        // Whole mm from the side that stays; nothing is near enough to catch.
        SnapReach fine;
        fine.radiusMm = -1.0;
        fine.gridMm = 1.0;
        return snapAlong(targets, at, direction, fine);
    }
    const Snap snap = snapAlong(targets, at, direction, reach());
    keep(snap, frame, std::nullopt);
    return snap;
}

void Snapper::keep(const Snap& snap, const Placement& frame, std::optional<Point> ring)
{
    clear();
    for (const Guide& guide : snap.guides) {
        guides_.push_back({frame.toPlan(guide.from), frame.toPlan(guide.to), guide.what});
    }
    if (ring && snap.kind != SnapKind::none && snap.kind != SnapKind::grid) ring_ = frame.toPlan(*ring);
    called_ = nameOf(snap);
}

void Snapper::clear()
{
    guides_.clear();
    ring_.reset();
    called_.clear();
}

}  // namespace yardcast::ui
