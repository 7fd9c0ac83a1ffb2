#include "ui/canvas/gestures/turn_gesture.h"

#include <cmath>
#include <numbers>

#include <QCoreApplication>

#include "core/plan/edits.h"
#include "ui/canvas/lookups.h"
#include "ui/canvas/piece_text.h"
#include "ui/canvas/snap_targets.h"
#include "ui/document/plan_document.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

constexpr double kStepDeg = 15.0;

QString tr(const char* text) { return QCoreApplication::translate("Gestures", text); }

double angleDeg(Point v) { return std::atan2(v.y, v.x) * 180.0 / std::numbers::pi; }

}  // namespace

TurnGesture::TurnGesture(ToolHost& host, QStringList parts, Point from)
    : Gesture(host), parts_(std::move(parts)), from_(from)
{
    const Plan& plan = *host.document().committed();
    called_ = partsCalled(plan, parts_);
    about_ = movingOf(plan, parts_, host.projection()).box.centre();
}

QString TurnGesture::name() const { return tr("Turn %1").arg(called_); }

void TurnGesture::preview(double deg)
{
    deg_ = deg;
    Ids ids;
    for (const QString& part : parts_) ids.push_back(part.toStdString());
    ids = withRiders(*host().document().committed(), ids);
    host().document().preview(
        [ids, deg, about = about_](const Plan& plan) { return turnParts(plan, ids, deg, about); });
    const QString text = deg < 0.0 ? tr("%1\u00b0 clockwise").arg(shortNumberText(-deg))
                                   : tr("%1\u00b0 counter-clockwise").arg(shortNumberText(deg));
    host().sayAtPointer(deg == 0.0 ? tr("%1\u00b0").arg(0) : text);
    host().say(joined({called_, text}));
}

void TurnGesture::move(const PointerEvent& event)
{
    double deg = angleDeg(event.at - about_) - angleDeg(from_ - about_);
    deg = std::remainder(deg, 360.0);
    const double step = event.modifiers & Qt::AltModifier ? 1.0 : kStepDeg;
    preview(std::round(deg / step) * step);
}

QString TurnGesture::typed(const TypedSize& size)
{
    if (size.secondMm) return tr("One figure is understood here: degrees, counter-clockwise.");
    preview(size.firstMm);
    return {};
}

void TurnGesture::paint(QPainter& painter, const PaintStyle& style)
{
    const QPointF centre = host().projection().map(about_);
    const double radius = 5.0 * style.mmPerUnit;
    painter.setPen(style.pen(style.ink.chosen, 1.0));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(centre, radius, radius);
    const SineCosine turn = sineCosineDeg(deg_);
    const Point arm = from_ - about_;
    const Point now{arm.x * turn.cosine - arm.y * turn.sine, arm.x * turn.sine + arm.y * turn.cosine};
    painter.drawLine(centre, host().projection().map(about_ + now));
}

QRectF TurnGesture::paintBounds() const
{
    const QPointF centre = host().projection().map(about_);
    const double reach = length(from_ - about_);
    return {centre.x() - reach, centre.y() - reach, 2 * reach, 2 * reach};
}

}  // namespace yardcast::ui
