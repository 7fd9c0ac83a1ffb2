#include "ui/canvas/gestures/outline_gestures.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QStringList>

#include "core/plan/edits.h"
#include "ui/canvas/dimension_edit.h"
#include "ui/canvas/lookups.h"
#include "ui/canvas/piece_text.h"
#include "ui/canvas/snap_targets.h"
#include "ui/document/plan_document.h"
#include "ui/look/number_text.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Gestures", text); }

std::size_t wrap(int index, std::size_t count)
{
    const int n = static_cast<int>(count);
    return static_cast<std::size_t>(((index % n) + n) % n);
}

double edgeLength(const Ring& ring, int edge)
{
    return distance(ring[wrap(edge, ring.size())], ring[wrap(edge + 1, ring.size())]);
}

}  // namespace

OutlineGesture::OutlineGesture(ToolHost& host, std::string part) : Gesture(host), part_(std::move(part))
{
    const Plan& plan = *host.document().committed();
    const Part* found = findPart(plan, part_);
    const Counter* counter = findCounter(plan, part_);
    if (!counter) return;
    outline_ = counter->outline;
    frame_ = found->place;
    const QString id = QString::fromStdString(part_);
    called_ = partsCalled(plan, {id});
    targets_ = inFrame(host.snapTargets({id}), frame_);
}

Point OutlineGesture::point(int index) const { return outline_[wrap(index, outline_.size())]; }

Point OutlineGesture::outwards(int edge) const
{
    const Point along = point(edge + 1) - point(edge);
    const double span = length(along);
    if (!(span > 0.0)) return {};
    return leftNormal(along) * ((signedArea(outline_) < 0.0 ? 1.0 : -1.0) / span);
}

void OutlineGesture::tell(const std::vector<int>& edges)
{
    const Plan& plan = *host().document().plan();
    const Part* now = findPart(plan, part_);
    const Counter* counter = findCounter(plan, part_);
    if (!counter) return;
    QString size;
    if (isRectangle(counter->outline)) {
        size = sizeText(edgeLength(counter->outline, 0), edgeLength(counter->outline, 1));
    } else {
        QStringList lengths;
        for (const int edge : edges) lengths << lengthText(edgeLength(counter->outline, edge));
        size = lengths.join(QStringLiteral(", "));
    }
    const QString text = joined({size, massAndPeople(plan, *now)});
    host().sayAtPointer(text);
    host().say(joined({called_, text}));
}

EdgeGesture::EdgeGesture(ToolHost& host, std::string part, int edge, Point from)
    : OutlineGesture(host, std::move(part)), edge_(edge)
{
    if (!isValid()) return;
    const Point at = frame().toOwn(from);
    const Point along = point(edge + 1) - point(edge);
    grip_ = point(edge) + along * (dot(at - point(edge), along) / dot(along, along));
    off_ = at - grip_;
    // Lengths come out round when they are counted from the far end of the neighbour that is measured.
    const int neighbour = measured();
    targets().gridOrigin = point(neighbour == edge - 1 ? neighbour : neighbour + 1);
    // Its own still corners line up too, all but those of the edge itself.
    for (int i = 0; i < static_cast<int>(outline().size()); ++i) {
        const bool moves = wrap(i, outline().size()) == wrap(edge, outline().size())
            || wrap(i, outline().size()) == wrap(edge + 1, outline().size());
        if (!moves) targets().corners.push_back({point(i), OutlineGesture::part()});
    }
}

int EdgeGesture::measured() const
{
    // The longer neighbour: what people call the size.
    return edgeLength(outline(), edge_ - 1) > edgeLength(outline(), edge_ + 1) ? edge_ - 1 : edge_ + 1;
}

QString EdgeGesture::name() const { return tr("Resize %1").arg(called()); }

void EdgeGesture::preview(double outwardsMm)
{
    host().document().preview([id = part(), edge = edge_, outwardsMm](const Plan& plan) {
        return moveOutlineEdge(plan, id, edge, outwardsMm);
    });
    tell({measured()});
}

void EdgeGesture::move(const PointerEvent& event)
{
    if (!isValid()) return;
    const Point normal = outwards(edge_);
    const Point at = frame().toOwn(event.at) - off_;
    const Point wanted = grip_ + normal * dot(at - grip_, normal);
    const Snap snap = host().snapAlong(targets(), wanted, normal, event.modifiers, frame());
    preview(dot(snap.at - grip_, normal));
}

QString EdgeGesture::typed(const TypedSize& size)
{
    if (size.secondMm) return tr("One figure is understood here: the new length.");
    const Plan& plan = *host().document().committed();
    const SizeEdit edit = withEdgeLength(plan, part(), measured(), edge_, size.firstMm);
    if (!edit) return edit.fault;
    host().document().preview([id = part(), measured = measured(), edge = edge_, mm = size.firstMm](const Plan& p) {
        return withEdgeLength(p, id, measured, edge, mm).plan;
    });
    tell({measured()});
    return {};
}

QString EdgeGesture::currentSize() const
{
    const Counter* counter = findCounter(*host().document().plan(), part());
    return counter ? formatNumber(edgeLength(counter->outline, measured()), 1) : QString();
}

CornerGesture::CornerGesture(ToolHost& host, std::string part, int corner, Point from)
    : OutlineGesture(host, std::move(part)), corner_(corner)
{
    if (!isValid()) return;
    off_ = frame().toOwn(from) - point(corner);
    const Point in = point(corner) - point(corner - 1);
    const Point out = point(corner + 1) - point(corner);
    right_ = std::abs(dot(in, out)) <= 1e-6 * length(in) * length(out);
    targets().gridOrigin = point(corner + 2);
    if (outline().size() == 3) targets().gridOrigin = point(corner + 1);
    for (int i = 0; i < static_cast<int>(outline().size()); ++i) {
        const auto distanceRound = static_cast<int>(wrap(i - corner, outline().size()));
        const bool neighbour = distanceRound == 1 || distanceRound == static_cast<int>(outline().size()) - 1;
        if (distanceRound != 0 && !(right_ && neighbour)) {
            targets().corners.push_back({point(i), OutlineGesture::part()});
        }
    }
}

QString CornerGesture::name() const { return right_ ? tr("Resize %1").arg(called()) : tr("Reshape %1").arg(called()); }

bool CornerGesture::keepsRight(Qt::KeyboardModifiers modifiers) const
{
    return right_ && !(modifiers & Qt::ControlModifier);
}

void CornerGesture::preview(Point toOwn, bool keepRight)
{
    if (!keepRight) {
        host().document().preview([id = part(), corner = corner_, toOwn](const Plan& plan) {
            return moveOutlineCorner(plan, id, corner, toOwn);
        });
    } else {
        const Point by = toOwn - point(corner_);
        const int n = static_cast<int>(outline().size());
        const int before = (corner_ + n - 1) % n;
        const double outBefore = dot(by, outwards(before));
        const double outAfter = dot(by, outwards(corner_));
        host().document().preview([id = part(), before, after = corner_, outBefore, outAfter](const Plan& plan) {
            return moveOutlineEdge(moveOutlineEdge(plan, id, before, outBefore), id, after, outAfter);
        });
    }
    tell({corner_ - 1, corner_});
}

void CornerGesture::move(const PointerEvent& event)
{
    if (!isValid()) return;
    const Point at = frame().toOwn(event.at) - off_;
    preview(host().snapPoint(targets(), at, event.modifiers, frame()).at, keepsRight(event.modifiers));
}

QString CornerGesture::typed(const TypedSize& size)
{
    const Plan& plan = *host().document().committed();
    if (!right_) return tr("This corner is not right-angled: drag it, or click the figure of a side.");
    const int n = static_cast<int>(outline().size());
    const int before = (corner_ + n - 1) % n;
    // Of the two edges that meet here, the more level one is the first size.
    const auto level = [&](int edge) {
        const Point along = point(edge + 1) - point(edge);
        return std::abs(along.x) >= std::abs(along.y);
    };
    const int first = level(before) ? before : corner_;
    const int second = first == before ? corner_ : before;
    // An edge grows by moving the other one of the two.
    const auto apply = [=, id = part()](const Plan& p) {
        SizeEdit edit = withEdgeLength(p, id, first, second, size.firstMm);
        if (edit && size.secondMm) edit = withEdgeLength(edit.plan, id, second, first, *size.secondMm);
        return edit;
    };
    const SizeEdit edit = apply(plan);
    if (!edit) return edit.fault;
    host().document().preview([apply](const Plan& p) { return apply(p).plan; });
    tell({first, second});
    return {};
}

QString CornerGesture::currentSize() const
{
    const Part* now = findPart(*host().document().plan(), part());
    return now ? partSizeText(*now) : QString();
}

StepGesture::StepGesture(ToolHost& host, std::string part, int edge, Point from)
    : OutlineGesture(host, std::move(part)), edge_(edge)
{
    if (!isValid()) return;
    span_ = edgeLength(outline(), edge);
    if (!(span_ > 0.0)) return;
    const Point along = (point(edge + 1) - point(edge)) * (1.0 / span_);
    const double at = dot(frame().toOwn(from) - point(edge), along);
    where_ = at < span_ / 3.0 ? Where::start : at > span_ * 2.0 / 3.0 ? Where::end : Where::middle;
    targets().gridOrigin = where_ == Where::start ? point(edge) : point(edge + 1);
    for (int i = 0; i < static_cast<int>(outline().size()); ++i) {
        targets().corners.push_back({point(i), OutlineGesture::part()});
    }
}

QString StepGesture::name() const { return tr("Step in %1").arg(called()); }

void StepGesture::preview(double alongMm, double outwardsMm)
{
    along_ = alongMm;
    outwards_ = outwardsMm;
    double from = span_ / 3.0;
    double to = span_ * 2.0 / 3.0;
    if (where_ == Where::start) {
        from = 0.0;
        to = alongMm;
    } else if (where_ == Where::end) {
        from = alongMm;
        to = span_;
    }
    host().document().preview([id = part(), edge = edge_, from, to, outwardsMm](const Plan& plan) {
        return extrudeOutlineEdge(plan, id, edge, from, to, outwardsMm);
    });
    const Plan& plan = *host().document().plan();
    const Part* now = findPart(plan, part());
    const QString step = tr("step of %1").arg(sizeText(to - from, std::abs(outwardsMm)));
    const QString text = joined({step, now ? massAndPeople(plan, *now) : QString()});
    host().sayAtPointer(text);
    host().say(joined({called(), text}));
}

void StepGesture::move(const PointerEvent& event)
{
    if (!(span_ > 0.0)) return;
    const Point along = (point(edge_ + 1) - point(edge_)) * (1.0 / span_);
    const Point at = host().snapPoint(targets(), frame().toOwn(event.at), event.modifiers, frame()).at;
    preview(std::clamp(dot(at - point(edge_), along), 0.0, span_), dot(at - point(edge_), outwards(edge_)));
}

QString StepGesture::typed(const TypedSize& size)
{
    // Along the edge, then out; one figure is how far out.
    const double out = size.secondMm.value_or(size.firstMm);
    const double sign = outwards_ < 0.0 ? -1.0 : 1.0;
    double along = along_;
    if (size.secondMm) {
        if (!(size.firstMm > 0.0) || size.firstMm > span_) return tr("The step must be shorter than its edge.");
        along = where_ == Where::end ? span_ - size.firstMm : size.firstMm;
    }
    if (!(out > 0.0)) return tr("A step must be at least 1 mm deep.");
    preview(along, sign * out);
    return {};
}

}  // namespace yardcast::ui
