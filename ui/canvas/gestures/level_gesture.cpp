#include "ui/canvas/gestures/level_gesture.h"

#include <algorithm>

#include <QCoreApplication>

#include "core/plan/edits.h"
#include "ui/canvas/dimension_edit.h"
#include "ui/canvas/piece_text.h"
#include "ui/canvas/snap_targets.h"
#include "ui/document/plan_document.h"
#include "ui/look/number_text.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

constexpr double kLeastHeightMm = 10.0;

QString tr(const char* text) { return QCoreApplication::translate("Gestures", text); }

/// The part `heightMm` high, growing at the top or at the foot.
Plan withHeightAt(const Plan& plan, const std::string& id, double oldMm, double heightMm, bool top)
{
    DimensionTarget target;
    target.what = DimensionTarget::What::height;
    target.part = id;
    const Plan taller = withDimension(plan, target, oldMm, heightMm).plan;
    const Part* part = findPart(plan, id);
    // A counter hangs from its face: it grows downwards by itself.
    if (top || !part || part->kind() == PartKind::counter) return taller;
    return raiseParts(taller, {id}, oldMm - heightMm);
}

}  // namespace

LevelGesture::LevelGesture(ToolHost& host, std::string part, bool top, Point from)
    : Gesture(host), part_(std::move(part)), top_(top)
{
    const Plan& plan = *host.document().committed();
    const Part* found = findPart(plan, part_);
    if (!found) return;
    const QString id = QString::fromStdString(part_);
    called_ = partsCalled(plan, {id});
    const Levels levels = levelsOf(plan, *found);
    lowMm_ = levels.lowMm;
    highMm_ = levels.highMm;
    heightMm_ = highMm_ - lowMm_;
    x_ = viewBox(plan, *found, host.projection()).centre().x;
    off_ = from.y - (top ? highMm_ : lowMm_);
    targets_ = host.snapTargets({id});
    targets_.gridOrigin = {0.0, top ? lowMm_ : highMm_};
    // The datum is worth standing on.
    targets_.corners.push_back({{x_, 0.0}, {}});
}

QString LevelGesture::name() const { return tr("Change the height of %1").arg(called_); }

void LevelGesture::preview(double heightMm)
{
    heightMm_ = std::max(heightMm, kLeastHeightMm);
    host().document().preview([id = part_, was = highMm_ - lowMm_, now = heightMm_, top = top_](const Plan& plan) {
        return withHeightAt(plan, id, was, now, top);
    });
    const Plan& plan = *host().document().plan();
    const Part* part = findPart(plan, part_);
    if (!part) return;
    const QString text = joined({tr("%1 high").arg(lengthText(heightMm_)), massAndPeople(plan, *part)});
    host().sayAtPointer(text);
    host().say(joined({called_, text}));
}

void LevelGesture::move(const PointerEvent& event)
{
    const Point at{x_, event.at.y - off_};
    const double level = host().snapAlong(targets_, at, {0.0, 1.0}, event.modifiers).at.y;
    preview(top_ ? level - lowMm_ : highMm_ - level);
}

QString LevelGesture::typed(const TypedSize& size)
{
    if (size.secondMm) return tr("One figure is understood here: the height.");
    if (!(size.firstMm >= 1.0)) return tr("A size must be at least 1 mm.");
    preview(size.firstMm);
    return {};
}

QString LevelGesture::currentSize() const { return formatNumber(heightMm_, 1); }

}  // namespace yardcast::ui
