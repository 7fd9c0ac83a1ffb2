#include "ui/drawing/mould_marks.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QPainter>

#include "core/mould/mould_parts.h"
#include "ui/drawing/marks.h"
#include "ui/drawing/own_map.h"
#include "ui/wording/figures.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr double kShortEdgeMm = 15.0;   ///< shorter edges belong to rounded corners
constexpr double kSamePlaceMm = 15.0;

QString tr(const char* text) { return QCoreApplication::translate("Drawing", text); }

QPointF drawn(Point mould) { return {mould.x, -mould.y}; }

QRectF rectOf(const Box& box) { return QRectF(drawn(box.low), drawn(box.high)).normalized(); }

QRectF rectOf(const Region& region)
{
    const std::optional<Box> box = boundsOf(region);
    return box ? rectOf(*box) : QRectF();
}

/// Where straight edges along the axes lie, and the bounds: in drawing mm, x and y apart.
struct Places {
    std::vector<double> x;
    std::vector<double> y;
};

void addBox(Places& places, const QRectF& box)
{
    places.x.insert(places.x.end(), {box.left(), box.right()});
    places.y.insert(places.y.end(), {box.top(), box.bottom()});
}

void addRing(Places& places, const Ring& ring)
{
    const std::optional<Box> box = boundsOf(ring);
    if (!box) return;
    addBox(places, rectOf(*box));
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i];
        const Point b = ring[(i + 1) % ring.size()];
        if (distance(a, b) < kShortEdgeMm) continue;
        if (std::fabs(a.x - b.x) < 0.05) places.x.push_back(a.x);
        if (std::fabs(a.y - b.y) < 0.05) places.y.push_back(-a.y);
    }
}

void addStops(RunningRow& across, RunningRow& up, const Places& places, const QString& about, bool isMiddle = false)
{
    for (const double x : places.x) across.stops.push_back({x, 0.0, about, isMiddle});
    for (const double y : places.y) up.stops.push_back({y, 0.0, about, isMiddle});
}

/// The point of the polygon that lies deepest in it, of a lattice: where a number can stand for all of it.
Point deepestPoint(const Polygon& polygon)
{
    const Box box = boundsOf(polygon.outer).value_or(Box{});
    const Region region{polygon};
    const auto depthAt = [&](Point p) {
        if (!contains(region, p)) return -1.0;
        double depth = distanceToRing(polygon.outer, p);
        for (const Ring& hole : polygon.holes) depth = std::min(depth, distanceToRing(hole, p));
        return depth;
    };
    constexpr int kSteps = 12;
    Point best = box.centre();
    // The middle, unless somewhere else is much deeper.
    double most = 1.5 * depthAt(best);
    for (int i = 1; i < kSteps; ++i) {
        for (int j = 1; j < kSteps; ++j) {
            const Point p{box.low.x + box.width() * i / kSteps, box.low.y + box.height() * j / kSteps};
            const double depth = depthAt(p);
            if (depth > most) {
                most = depth;
                best = p;
            }
        }
    }
    return best;
}

/// A shorter diagonal is not measured to check square.
constexpr double kLeastDiagonalUnits = 30.0;

TextLook diagonalLook(const PaintStyle& style)
{
    TextLook look = sideLook(style);
    look.bold = false;
    return look;
}

void setEdges(RunningRow& row, double edgeMm)
{
    for (RunningStop& stop : row.stops) stop.edgeMm = edgeMm;
}

}  // namespace

MouldMarks::MouldMarks(const MouldSubject& subject, const MouldLook& look, const PaintStyle& style)
    : subject_(subject), look_(look), style_(style), unit_(pictureUnit(style)), inside_(rectOf(subject.mould->inside)),
      corner_(drawn(ownToMould(subject, datumCorner(subject))))
{
    body_ = inside_;
    for (const MouldPart& part : subject.mould->parts) body_ |= rectOf(part.outline);
    if (look.dimensions) addRows();
    place();
}

void MouldMarks::place()
{
    names_ = cutoutNames();
    std::vector<QRectF> taken;
    taken.emplace_back(corner_ - QPointF(2.0, 2.0) * unit_, QSizeF(4.0, 4.0) * unit_);
    for (const CutoutName& name : names_) taken.push_back(name.box);
    diagonals_ = diagonalWords(taken);
    for (const RunningRow& row : rows_) taken.push_back(runningBounds(row, style_));
    for (const QRectF& box : sectionMarks()) taken.push_back(box);
    if (look_.numbers) numbers_ = balloons(taken);
}

void MouldMarks::addCutouts(RunningRow& across, RunningRow& up) const
{
    const auto* counter = std::get_if<Counter>(&subject_.part->body);
    if (!counter) return;
    for (const Cutout& cutout : counter->cutouts) {
        const QString id = QString::fromStdString(cutout.id);
        const Point centre = ownToMould(subject_, cutout.centre);
        const Box& own = subject_.casting->boundsMm;
        if (cutout.centre.x < own.low.x || cutout.centre.x > own.high.x || cutout.centre.y < own.low.y
            || cutout.centre.y > own.high.y) {
            continue;
        }
        if (cutout.shape == CutoutShape::circle) {
            addStops(across, up, {{centre.x}, {-centre.y}}, id, true);
            continue;
        }
        const std::optional<Box> box = boundsOf(cutoutRing(cutout));
        if (!box) continue;
        Places places;
        addBox(places, QRectF(drawn(ownToMould(subject_, box->low)), drawn(ownToMould(subject_, box->high))).normalized());
        addStops(across, up, places, id);
    }
}

void MouldMarks::addRows()
{
    const bool right = corner_.x() > inside_.center().x();
    // Rows stand clear of the marks of the section.
    const double away = (look_.sectionXMm ? 6.5 : 4.0) * unit_;
    RunningRow across{true, corner_.x(), body_.bottom() + away, 1.0, {}};
    RunningRow up{false, corner_.y(), right ? body_.right() + 4.0 * unit_ : body_.left() - 4.0 * unit_, right ? 1.0 : -1.0,
                  {}};
    Places outer;
    for (const Polygon& polygon : subject_.mould->inside) addRing(outer, polygon.outer);
    addStops(across, up, outer, {});
    addCutouts(across, up);
    RunningRow foamAcross{true, corner_.x(), body_.top() - away, -1.0, {}};
    RunningRow foamUp{false, corner_.y(), right ? body_.left() - 4.0 * unit_ : body_.right() + 4.0 * unit_,
                      right ? -1.0 : 1.0, {}};
    bool hasFoam = false;
    for (const MouldPart& part : subject_.mould->parts) {
        const bool foam = isFoamInside(part);
        if (!foam && part.kind != MouldPartKind::rebate && part.kind != MouldPartKind::drip) continue;
        Places places;
        for (const Polygon& polygon : part.outline) addRing(places, polygon.outer);
        addStops(foamAcross, foamUp, places,
                 foam ? QString() : mouldPartName(part.kind).section(QLatin1Char(' '), -1));
        hasFoam = hasFoam || foam;
    }
    if (hasFoam) foamAcross.title = foamUp.title = tr("foam");
    setEdges(across, inside_.bottom());
    setEdges(up, right ? inside_.right() : inside_.left());
    setEdges(foamAcross, inside_.top());
    setEdges(foamUp, right ? inside_.left() : inside_.right());
    rows_ = {tidied(across), tidied(up)};
    // Small pictures have no room for these; the sheet has them.
    if (style_.onPaper) {
        rows_.push_back(tidied(foamAcross));
        rows_.push_back(tidied(foamUp));
    }
    std::erase_if(rows_, [](const RunningRow& row) { return row.stops.empty(); });
}

PictureFrame MouldMarks::frame() const
{
    const Mould& mould = *subject_.mould;
    const PartKind kind = subject_.part->kind();
    QRectF around = body_;
    // Numbers of thin boards stand beside them.
    const double air = 0.5 * unit_;
    for (const Balloon& balloon : numbers_) around |= balloon.box().adjusted(-air, -air, air, air);
    for (const RunningRow& row : rows_) around |= runningBounds(row, style_);
    for (const QRectF& box : sectionMarks()) around |= box;
    PictureFrame::Words words;
    words.hand = handOf(mould);
    words.title = mouldViewTitle(mould);
    words.below = mouldFaceText(mould, kind);
    words.left = mould.mirrored ? tr("LEFT\n(right when it stands)") : tr("LEFT\n(left when it stands)");
    words.right = mould.mirrored ? tr("RIGHT\n(left when it stands)") : tr("RIGHT\n(right when it stands)");
    words.front = kind == PartKind::counter ? tr("FRONT EDGE: stand here") : tr("FOOT: stand here");
    if (mould.standing) words.front = tr("FRONT: stand here");
    return {body_, around, corner_, words, style_};
}

std::vector<QRectF> MouldMarks::sectionMarks() const
{
    if (!look_.sectionXMm) return {};
    std::vector<QRectF> boxes;
    for (const double y : {body_.top() - 3.0 * unit_, body_.bottom() + 3.0 * unit_}) {
        boxes.emplace_back(*look_.sectionXMm - 6.5 * unit_, y - 2.5 * unit_, 11.0 * unit_, 5.0 * unit_);
    }
    return boxes;
}

void MouldMarks::paintSectionMarks(QPainter& painter) const
{
    // Only the ends of the cut are marked (ISO 128-3), so that no figure is crossed.
    for (const QRectF& box : sectionMarks()) {
        const double x = *look_.sectionXMm;
        const double y = box.center().y();
        painter.fillRect(box, style_.ink.sheet);
        painter.setPen(outlinePen(style_));
        painter.drawLine(QPointF(x, y - 2.3 * unit_), QPointF(x, y + 2.3 * unit_));
        painter.drawLine(QPointF(x, y), QPointF(x - 4.0 * unit_, y));
        paintArrowhead(painter, QPointF(x - 6.0 * unit_, y), QPointF(-1.0, 0.0), style_, style_.ink.ink);
        paintText(painter, QPointF(x + 2.4 * unit_, y), QStringLiteral("A"), style_, sideLook(style_));
    }
}

std::vector<MouldMarks::DiagonalWords> MouldMarks::diagonalWords(std::vector<QRectF>& taken) const
{
    std::vector<DiagonalWords> placed;
    for (const Mould::Diagonal& diagonal : subject_.mould->diagonals) {
        const QLineF line(drawn(diagonal.from), drawn(diagonal.to));
        if (line.length() < kLeastDiagonalUnits * unit_) continue;
        double angle = -line.angle();
        while (angle < -90.0) angle += 180.0;
        while (angle >= 90.0) angle -= 180.0;
        const QString text = tr("diagonal %1").arg(numberText(diagonal.lengthMm, 0));
        const QSizeF size = textSizeMm(text, style_, diagonalLook(style_));
        // Towards one end, where the other does not cross it; away from what is written already.
        for (const double share : {0.22, 0.78, 0.35, 0.65, 0.12, 0.88}) {
            const QPointF at = line.pointAt(share);
            QTransform turn;
            turn.translate(at.x(), at.y());
            turn.rotate(angle);
            const QRectF box = turn.mapRect(QRectF(-size.width() / 2.0, -size.height() / 2.0, size.width(), size.height()));
            if (std::any_of(taken.begin(), taken.end(), [&](const QRectF& other) { return other.intersects(box); })) {
                continue;
            }
            placed.push_back({text, at, angle});
            taken.push_back(box);
            break;
        }
    }
    return placed;
}

void MouldMarks::paintDiagonals(QPainter& painter) const
{
    for (const Mould::Diagonal& diagonal : subject_.mould->diagonals) {
        const QLineF line(drawn(diagonal.from), drawn(diagonal.to));
        if (line.length() < kLeastDiagonalUnits * unit_) continue;
        painter.setPen(centrePen(style_, style_.ink.pencil));
        painter.drawLine(line);
    }
    for (const DiagonalWords& words : diagonals_) {
        TextLook look = diagonalLook(style_);
        look.behind = style_.ink.sheet;
        look.angleDeg = words.angleDeg;
        paintText(painter, words.at, words.text, style_, look);
    }
}

std::vector<MouldMarks::CutoutName> MouldMarks::cutoutNames() const
{
    std::vector<CutoutName> names;
    const auto* counter = std::get_if<Counter>(&subject_.part->body);
    if (!counter) return names;
    for (const Cutout& cutout : counter->cutouts) {
        if (contains(subject_.casting->outline, cutout.centre)) continue;
        const Box& own = subject_.casting->boundsMm;
        if (cutout.centre.x < own.low.x || cutout.centre.x > own.high.x) continue;
        const QString id = QString::fromStdString(cutout.id);
        const std::optional<Box> box = boundsOf(cutoutRing(cutout));
        if (!box) continue;
        const TextLook look = sideLook(style_);
        QString text = tr("%1 %2").arg(id, purposeName(cutout.purpose).toLower());
        if (textSizeMm(text, style_, look).width() > 0.9 * box->width()) text = id;
        QPointF at = drawn(ownToMould(subject_, cutout.centre));
        const QSizeF size = textSizeMm(text, style_, look);
        if (size.width() > 0.6 * box->width() || size.height() > 0.6 * box->height()) {
            // A tap hole: beside it.
            at += QPointF(box->width() / 2.0 + size.width() / 2.0 + unit_, 0.0);
        }
        names.push_back({text, QRectF(at - QPointF(size.width() / 2.0, size.height() / 2.0), size)});
    }
    return names;
}

std::vector<MouldMarks::Balloon> MouldMarks::balloons(const std::vector<QRectF>& taken) const
{
    struct Group {
        std::vector<const MouldPart*> parts;
        QRectF box;
    };
    std::vector<Group> groups;
    for (const MouldPart& part : subject_.mould->parts) {
        if (part.outline.empty()) continue;
        // Plies of one former, brackets all alike: one number, or one run of numbers.
        const QRectF box = rectOf(Region{part.outline.front()});
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
            const MouldPart& first = *group.parts.front();
            return first.kind == part.kind && first.about == part.about
                && QLineF(group.box.center(), box.center()).length() < kSamePlaceMm;
        });
        if (same != groups.end()) {
            same->parts.push_back(&part);
        } else {
            groups.push_back({{&part}, box});
        }
    }
    std::vector<Balloon> made;
    std::vector<QRectF> boxes = taken;
    TextLook look = sideLook(style_);
    for (const Group& group : groups) {
        Balloon balloon;
        balloon.text = mouldNumbers(group.parts);
        balloon.marked = std::any_of(group.parts.begin(), group.parts.end(),
                                     [&](const MouldPart* part) { return part->name == look_.marked; });
        balloon.anchor = drawn(deepestPoint(group.parts.front()->outline.front()));
        balloon.home = group.box;
        if (group.parts.front()->kind == MouldPartKind::base) {
            balloon.anchor = group.box.bottomLeft() + QPointF(1.5 * unit_, -1.5 * unit_);
        }
        const QSizeF text = textSizeMm(balloon.text, style_, look);
        balloon.size = {std::max(text.width() + 1.6 * unit_, text.height() * 1.15), text.height() * 1.15};
        const auto boxAt = [&](QPointF at) {
            return QRectF(at - QPointF(balloon.size.width() / 2.0, balloon.size.height() / 2.0), balloon.size);
        };
        balloon.at = balloon.anchor;
        for (int ring = 0; ring < 14; ++ring) {
            const int count = ring == 0 ? 1 : 12;
            bool found = false;
            for (int i = 0; i < count && !found; ++i) {
                const double angle = 2.0 * std::numbers::pi * i / count;
                const QPointF at = balloon.anchor + QPointF(std::cos(angle), std::sin(angle)) * (ring * 2.2 * unit_);
                const QRectF box = boxAt(at).adjusted(-0.4 * unit_, -0.4 * unit_, 0.4 * unit_, 0.4 * unit_);
                if (std::any_of(boxes.begin(), boxes.end(), [&](const QRectF& other) { return other.intersects(box); })) {
                    continue;
                }
                balloon.at = at;
                found = true;
            }
            if (found) break;
        }
        boxes.push_back(balloon.box());
        made.push_back(balloon);
    }
    return made;
}

void MouldMarks::paintLeader(QPainter& painter, const Balloon& balloon) const
{
    const QRectF box = balloon.box();
    // Inside what it stands for a number needs no line to it.
    if (box.contains(balloon.anchor) || balloon.home.contains(box)) return;
    painter.setPen(thinPen(style_, style_.ink.ink));
    painter.drawLine(balloon.at, balloon.anchor);
    painter.setBrush(style_.ink.ink);
    painter.drawEllipse(balloon.anchor, 0.5 * unit_, 0.5 * unit_);
    painter.setBrush(Qt::NoBrush);
}

void MouldMarks::paintBalloon(QPainter& painter, const Balloon& balloon) const
{
    const QRectF box = balloon.box();
    painter.setPen(thinPen(style_, style_.ink.ink));
    painter.setBrush(balloon.marked ? style_.ink.ink : style_.ink.sheet);
    const double round = box.height() / 2.0;
    painter.drawRoundedRect(box, round, round);
    painter.setBrush(Qt::NoBrush);
    TextLook look = sideLook(style_);
    look.colour = balloon.marked ? style_.ink.sheet : style_.ink.ink;
    paintText(painter, balloon.at, balloon.text, style_, look);
}

void MouldMarks::paint(QPainter& painter) const
{
    paintDiagonals(painter);
    for (const RunningRow& row : rows_) paintRunning(painter, row, style_);
    paintSectionMarks(painter);
    for (const Balloon& balloon : numbers_) paintLeader(painter, balloon);
    TextLook look = sideLook(style_);
    look.behind = style_.ink.sheet;
    for (const CutoutName& name : names_) paintText(painter, name.box.center(), name.text, style_, look);
    for (const Balloon& balloon : numbers_) paintBalloon(painter, balloon);
    frame().paint(painter);
}

StandingMarks::StandingMarks(const MouldSubject& subject, const PaintStyle& style) : subject_(subject), style_(style)
{
    const Box& box = subject.casting->boundsMm;
    body_ = QRectF(drawn(box.low), drawn(box.high)).normalized();
}

PictureFrame StandingMarks::frame() const
{
    const bool counter = subject_.part->kind() == PartKind::counter;
    PictureFrame::Words words;
    words.title = standingViewTitle();
    words.below = counter ? tr("from above, in the kitchen") : tr("from the front, in the kitchen");
    words.left = tr("LEFT");
    words.right = tr("RIGHT");
    words.front = counter ? tr("FRONT EDGE") : tr("FOOT");
    return {body_, body_, drawn(datumCorner(subject_)), words, style_};
}

void StandingMarks::paint(QPainter& painter) const
{
    const auto* counter = std::get_if<Counter>(&subject_.part->body);
    if (counter) {
        for (const Cutout& cutout : counter->cutouts) {
            const std::optional<Box> box = boundsOf(cutoutRing(cutout));
            if (!box || contains(subject_.casting->outline, cutout.centre)) continue;
            if (cutout.centre.x < subject_.casting->boundsMm.low.x || cutout.centre.x > subject_.casting->boundsMm.high.x) {
                continue;
            }
            TextLook look;
            look.sizeUnits = style_.onPaper ? 2.8 : 11.0;
            const QString id = QString::fromStdString(cutout.id);
            QString text = tr("%1 %2").arg(id, purposeName(cutout.purpose).toLower());
            if (textSizeMm(text, style_, look).width() > 0.95 * box->width()) text = id;
            QPointF at = drawn(cutout.centre);
            if (textSizeMm(text, style_, look).width() > 0.95 * box->width()) {
                at += QPointF(box->width() / 2.0 + textSizeMm(text, style_, look).width() / 2.0 + pictureUnit(style_), 0.0);
            }
            paintText(painter, at, text, style_, look);
        }
    }
    frame().paint(painter);
}

}  // namespace yardcast::ui
