#include "ui/canvas/overlay.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <QPainter>

#include "ui/canvas/dimension_edit.h"
#include "ui/canvas/lookups.h"
#include "ui/canvas/plan_scene.h"
#include "ui/canvas/tool.h"
#include "ui/document/selection.h"
#include "ui/drawing/overlay_painter.h"
#include "ui/live/live_assessment.h"
#include "ui/look/severity_mark.h"

namespace yardcast::ui {

namespace {

constexpr double kSignPx = 16.0;
constexpr double kLeastDimensionPx = 16.0;
constexpr double kFigureReachPx = 3.0;
/// Half size of the largest sign at a casting's middle, which may stand off its shape.
constexpr double kMiddlePx = 24.0;

QPointF drawn(Point p) { return {p.x, -p.y}; }

QRectF around(QPointF at, double reach) { return {at.x() - reach, at.y() - reach, 2 * reach, 2 * reach}; }

}  // namespace

Overlay::Overlay(const PlanScene& scene, const Selection& selection, const LiveAssessment& live)
    : scene_(scene), selection_(selection), live_(live), strength_(scene, selection, live)
{
}

double Overlay::px(double pixels) const { return pixels * scene_.style().mmPerUnit; }

void Overlay::setGuides(const std::vector<Guide>& guides, std::optional<QPointF> snapped)
{
    guides_ = guides;
    snapped_ = snapped;
}

bool Overlay::setHoveredFigure(const std::optional<Dimension>& figure)
{
    const std::optional<DimensionTarget> target = figure ? std::optional(figure->target) : std::nullopt;
    if (target == hoveredFigure_) return false;
    hoveredFigure_ = target;
    return true;
}

void Overlay::rebuild()
{
    rebuildOutlines();
    signs_.clear();
    addSigns();
    handles_.clear();
    const std::vector<Dimension> before = std::exchange(dimensions_, {});
    const std::vector<QPainterPath> shapes = std::exchange(figures_, {});
    if (!editing_) return;
    handles_ =
        handlesOf(*scene_.plan(), selection_, scene_.projection(), scene_.style().mmPerUnit, gripsOfChosen());
    // Figures of strength and of sizes would lie on each other; beside a chosen cutout the sizes are what one drags
    // for.
    if (stage_ != Stage::strength || !selection_.cutout().isEmpty()) addDimensions();
    // Until they are painted anew, figures are where they were.
    for (std::size_t i = 0; i < dimensions_.size(); ++i) {
        const auto same = std::ranges::find(before, dimensions_[i].target, &Dimension::target);
        if (same != before.end()) figures_[i] = shapes[static_cast<std::size_t>(same - before.begin())];
    }
}

std::vector<Point> Overlay::gripsOfChosen() const
{
    if (stage_ != Stage::strength && stage_ != Stage::lift) return {};
    if (selection_.parts().size() != 1) return {};
    const std::string id = selection_.parts().front().toStdString();
    const Part* part = findPart(*scene_.plan(), id);
    const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
    if (!counter) return {};
    if (counter->lift && !counter->lift->grips.empty()) return counter->lift->grips;
    // Of a counter that joints divide each piece has its own: those are for the program to propose.
    const AssessmentPtr& assessment = live_.assessment();
    const CastingStrength* strength = assessment ? assessment->strengthOf(id) : nullptr;
    return strength ? strength->grips : std::vector<Point>{};
}

void Overlay::rebuildOutlines()
{
    outlines_.clear();
    const Plan& plan = *scene_.plan();
    const auto part = [&](const QString& id, Outline::Why why) {
        if (const QPainterPath* path = scene_.shapeOf(id.toStdString())) outlines_.push_back({*path, why});
    };
    const auto cutout = [&](const std::string& id, const std::string& cutoutId, Outline::Why why) {
        const Part* found = findPart(plan, id);
        const Cutout* hole = findCutout(plan, id, cutoutId);
        if (found && hole && scene_.projection().isAbove()) {
            outlines_.push_back({cutoutShape(*found, *hole, scene_.projection()), why});
        }
    };
    const auto fixture = [&](const std::string& id, Outline::Why why) {
        if (const Fixture* found = findFixture(plan, id)) {
            outlines_.push_back({fixtureShape(*found, scene_.projection()), why});
        }
    };
    for (const QString& id : selection_.highlighted()) part(id, Outline::Why::highlighted);
    switch (hovered_.what) {
    case Hit::What::part: part(QString::fromStdString(hovered_.part), Outline::Why::hovered); break;
    case Hit::What::cutout: cutout(hovered_.part, hovered_.cutout, Outline::Why::hovered); break;
    case Hit::What::fixture: fixture(hovered_.fixture, Outline::Why::hovered); break;
    case Hit::What::none:
        // A line of a panel or of the list of parts may point here too.
        if (!selection_.hovered().isEmpty()) part(selection_.hovered(), Outline::Why::hovered);
        break;
    }
    const bool within = !selection_.cutout().isEmpty();
    for (const QString& id : selection_.parts()) part(id, within ? Outline::Why::within : Outline::Why::chosen);
    if (within) {
        cutout(selection_.cutout().part.toStdString(), selection_.cutout().cutout.toStdString(), Outline::Why::chosen);
    }
    if (!selection_.fixture().isEmpty()) fixture(selection_.fixture().toStdString(), Outline::Why::chosen);
}

void Overlay::addDimensions()
{
    if (selection_.parts().size() != 1) return;
    const Plan& plan = *scene_.plan();
    const Part* part = findPart(plan, selection_.parts().front().toStdString());
    if (!part) return;
    const std::string cutout = selection_.cutout().cutout.toStdString();
    const Counter* counter = std::get_if<Counter>(&part->body);
    const bool isBox = counter && isRectangle(counter->outline);
    for (const Dimension& dimension : partDimensions(plan, *part, scene_.projection())) {
        // With a cutout chosen its sizes and strips are shown; otherwise those of the part itself.
        if (dimension.target.cutout != cutout) continue;
        // The opposite sides of a rectangle would only say it twice.
        const bool again = isBox && dimension.target.what == DimensionTarget::What::edgeLength
            && (dimension.target.index == 1 || dimension.target.index == 2);
        if (again) continue;
        const QPointF run = dimension.b - dimension.a;
        if (std::hypot(run.x(), run.y()) < px(kLeastDimensionPx)) continue;
        dimensions_.push_back(dimension);
    }
    staggerFigures(dimensions_, scene_.style());
    figures_.resize(dimensions_.size());
}

void Overlay::takeFindings()
{
    findings_.clear();
    const AssessmentPtr assessment = live_.assessment();
    const PlanPtr plan = live_.plan();
    if (!assessment || !plan) return;
    for (const Finding& finding : assessment->findings) {
        if (finding.severity == Severity::note || finding.subjects.empty()) continue;
        std::string id = finding.subjects.front();
        if (!findPart(*plan, id)) id = id.substr(0, id.rfind('.'));
        if (!findPart(*plan, id)) continue;
        const auto known = std::ranges::find(findings_, id, &std::pair<std::string, Finding>::first);
        if (known == findings_.end()) {
            findings_.emplace_back(id, finding);
        } else if (finding.severity > known->second.severity) {
            known->second = finding;
        }
    }
}

void Overlay::addSigns()
{
    for (const auto& [id, finding] : findings_) {
        const QPainterPath* path = scene_.shapeOf(id);
        if (!path) continue;
        const QRectF box = path->boundingRect();
        const double size = px(kSignPx);
        const double inset = px(6.0);
        // Inside the top right corner; over it where the part is too small to hold the sign.
        QRectF rect(box.right() - inset - size, box.top() + inset, size, size);
        if (box.width() < size + 2 * inset) rect.moveCenter({box.center().x(), rect.center().y()});
        if (box.height() < size + 2 * inset) rect.moveCenter({rect.center().x(), box.center().y()});
        // An L has no slab in that corner of its box.
        if (!path->intersects(rect)) rect.moveCenter(path->pointAtPercent(0.0));
        // What is hidden behind another part in elevation has its sign where it is seen.
        if (!scene_.projection().isAbove()) {
            const std::vector<Hit> hits = scene_.hitsAt(rect.center(), 0.0);
            if (!hits.empty() && hits.front().part != id) continue;
        }
        // Parts that lie on one another must not hide each other's signs.
        while (std::ranges::any_of(signs_, [&](const Sign& s) { return s.rect.intersects(rect); })) {
            rect.translate(-size * 1.15, 0.0);
        }
        signs_.push_back({rect, finding});
    }
}

void Overlay::paint(QPainter& painter, const QRectF& exposed)
{
    painter.setRenderHint(QPainter::Antialiasing);
    paintStage(painter, exposed);
    paintOutlines(painter);
    for (const Sign& sign : signs_) paintSeverityMark(painter, sign.rect, sign.finding.severity, scene_.style().ink);
    for (std::size_t i = 0; i < dimensions_.size(); ++i) {
        PaintStyle style = scene_.style();
        if (hoveredFigure_ && *hoveredFigure_ == dimensions_[i].target) style.ink.ink = style.ink.chosen;
        figures_[i] = paintDimension(painter, dimensions_[i], style);
        // Over concrete and timber the figure needs paper behind it; where it lies is only known once it is painted.
        QColor plate = style.ink.sheet;
        plate.setAlphaF(0.86f);
        painter.fillPath(figures_[i], plate);
        paintDimension(painter, dimensions_[i], style);
    }
    paintHandles(painter);
    paintGuides(painter);
    if (tool_) {
        painter.save();
        tool_->paint(painter, scene_.style());
        painter.restore();
    }
}

std::vector<Overlay::StageMark> Overlay::stageMarks() const
{
    std::vector<StageMark> marks;
    const AssessmentPtr assessment = live_.assessment();
    const bool layered = stage_ == Stage::steel || namesCastings(stage_);
    if (!assessment || !layered) return marks;
    const Plan& plan = *scene_.plan();
    for (const PlacedCasting& placed : assessment->castings) {
        const int index = placed.casting ? indexOfPart(plan, placed.casting->part) : -1;
        const QPainterPath* shape = index < 0 ? nullptr : scene_.shapeOf(placed.casting->part);
        if (!shape) continue;
        const QPointF centre = scene_.projection().map({placed.centroidMm[0], placed.centroidMm[1]},
                                                       placed.centroidMm[2]);
        CastingStrengthPtr strength;
        if (stage_ == Stage::lift) {
            const auto known = std::ranges::find(assessment->strength, placed.casting->id,
                                                 [](const CastingStrengthPtr& one) { return one->casting; });
            if (known != assessment->strength.end()) strength = *known;
        }
        MouldPtr mould;
        if (stage_ == Stage::mould) {
            const auto known = std::ranges::find(assessment->moulds, placed.casting->id,
                                                 [](const MouldPtr& one) { return one->casting; });
            if (known != assessment->moulds.end()) mould = *known;
        }
        CastingSteelLayoutPtr steel;
        if (stage_ == Stage::steel) {
            const auto known = std::ranges::find(assessment->steel.layouts, placed.casting->id,
                                                 [](const CastingSteelLayoutPtr& one) { return one->casting; });
            if (known != assessment->steel.layouts.end()) steel = *known;
        }
        marks.push_back({placed.casting, placed.centroidMm, plan.parts[static_cast<std::size_t>(index)], strength, mould,
                         steel,
                         (stage_ == Stage::lift || stage_ == Stage::mould) &&
                             selection_.contains(QString::fromStdString(placed.casting->part)),
                         shape->boundingRect().adjusted(-px(8.0), -px(8.0), px(8.0), px(8.0)) | around(centre, px(kMiddlePx))});
    }
    return marks;
}

std::vector<StageWords> Overlay::stageWords() const
{
    const AssessmentPtr assessment = live_.assessment();
    if (!assessment || (stage_ != Stage::steel && !namesCastings(stage_))) return {};
    WordsView view;
    view.visible = visible_;
    for (const QString& part : selection_.parts()) view.chosen.push_back(part.toStdString());
    for (const Sign& sign : signs_) view.keepClear.push_back(sign.rect);
    for (const Handle& handle : handles_) view.keepClear.push_back(around(handle.at, px(kHandlePx)));
    for (const Dimension& dimension : dimensions_) view.keepClear.push_back(dimensionBounds(dimension, scene_.style()));
    const Plan& plan = *scene_.plan();
    const auto words = stage_ == Stage::steel ? steelWords
                     : stage_ == Stage::mould ? mouldWords
                     : stage_ == Stage::pour  ? pourWords
                                              : liftWords;
    return words(plan, *assessment, scene_.projection(), scene_.style(), view);
}

std::vector<QRectF> Overlay::refreshStage()
{
    const std::vector<StageMark> before = std::exchange(stageMarks_, stageMarks());
    const std::vector<StageWords> wordsBefore = std::exchange(words_, stageWords());
    std::vector<QRectF> signs;
    for (const Sign& sign : signs_) signs.push_back(sign.rect);
    std::vector<QRectF> changed = strength_.refresh(stage_ == Stage::strength, signs);
    // Castings keep their order, so that what is the same mostly stands in the same place.
    const std::size_t most = std::max(before.size(), stageMarks_.size());
    for (std::size_t i = 0; i < most; ++i) {
        const bool was = i < before.size();
        const bool is = i < stageMarks_.size();
        if (was && is && before[i] == stageMarks_[i]) continue;
        if (was) changed.push_back(before[i].rect);
        if (is) changed.push_back(stageMarks_[i].rect);
    }
    const auto words = [&](const std::vector<StageWords>& from, const std::vector<StageWords>& than) {
        const double reach = px(3.0);
        for (const StageWords& one : from) {
            if (std::ranges::find(than, one) != than.end()) continue;
            changed.push_back(one.box.adjusted(-reach, -reach, reach, reach));
            if (one.lead.isNull()) continue;
            const QRectF lead = QRectF(one.lead.p1(), one.lead.p2()).normalized();
            changed.push_back(lead.adjusted(-reach, -reach, reach, reach));
        }
    };
    words(wordsBefore, words_);
    words(words_, wordsBefore);
    return changed;
}

void Overlay::paintStage(QPainter& painter, const QRectF& exposed)
{
    strength_.paint(painter, exposed);
    const AssessmentPtr assessment = live_.assessment();
    if (!assessment || stageMarks_.empty()) return;
    // Only of the castings in sight: painting is dear.
    Assessment inSight;
    std::vector<std::string> chosen;
    const Plan& plan = *scene_.plan();
    for (const StageMark& mark : stageMarks_) {
        if (!mark.rect.intersects(exposed)) continue;
        inSight.castings.push_back({mark.casting, mark.centroidMm});
        if (mark.strength) inSight.strength.push_back(mark.strength);
        if (mark.mould) inSight.moulds.push_back(mark.mould);
        if (mark.chosen) chosen.push_back(mark.part->id);
        if (mark.steel) inSight.steel.layouts.push_back(mark.steel);
    }
    painter.save();
    if (stage_ == Stage::steel) paintSteelLaid(painter, plan, inSight, scene_.projection(), scene_.style());
    if (stage_ == Stage::mould) paintMouldSigns(painter, plan, inSight, scene_.projection(), scene_.style(), chosen);
    if (stage_ == Stage::lift) paintLiftSigns(painter, plan, inSight, scene_.projection(), scene_.style(), chosen);
    paintStageWords(painter, words_, scene_.style(), exposed);
    painter.restore();
}

void Overlay::paintOutlines(QPainter& painter) const
{
    const PaintStyle& style = scene_.style();
    painter.setBrush(Qt::NoBrush);
    for (const Outline& outline : outlines_) {
        switch (outline.why) {
        case Outline::Why::highlighted: {
            QColor glow = style.ink.chosen;
            glow.setAlphaF(0.35f);
            painter.setPen(style.pen(glow, 7.0));
            break;
        }
        case Outline::Why::hovered: painter.setPen(style.pen(style.ink.hover, 2.0)); break;
        case Outline::Why::chosen: painter.setPen(style.pen(style.ink.chosen, 2.0)); break;
        case Outline::Why::within: painter.setPen(style.pen(style.ink.chosen, 1.0, Qt::DashLine)); break;
        }
        painter.drawPath(outline.path);
    }
}

void Overlay::paintHandles(QPainter& painter) const
{
    const PaintStyle& style = scene_.style();
    for (const Handle& handle : handles_) {
        const bool marked = handle.what == Handle::What::outlineCorner && handle.index == corner_;
        painter.setPen(style.pen(style.ink.chosen, 1.5));
        painter.setBrush(marked ? style.ink.chosen : style.ink.sheet);
        painter.save();
        painter.translate(handle.at);
        const double half = px(kHandlePx) / 2.0;
        if (handle.what == Handle::What::turn) {
            paintTurnHandle(painter);
        } else if (handle.what == Handle::What::grip) {
            painter.drawEllipse(QPointF(0, 0), half * 1.3, half * 1.3);
            painter.drawLine(QPointF(-half * 0.7, 0), QPointF(half * 0.7, 0));
            painter.drawLine(QPointF(0, -half * 0.7), QPointF(0, half * 0.7));
        } else if (handle.isCorner) {
            painter.drawRect(QRectF(-half, -half, 2 * half, 2 * half));
        } else {
            painter.rotate(handle.angleDeg);
            painter.drawRoundedRect(QRectF(-1.7 * half, -0.75 * half, 3.4 * half, 1.5 * half), px(2.0), px(2.0));
        }
        painter.restore();
    }
}

/// Three quarters of a circle with an arrow: it turns, and is taken for no corner.
void Overlay::paintTurnHandle(QPainter& painter) const
{
    const PaintStyle& style = scene_.style();
    const double radius = px(6.5);
    painter.setPen(Qt::NoPen);
    painter.drawEllipse(QPointF(0, 0), radius + px(3.0), radius + px(3.0));
    painter.setPen(style.pen(style.ink.chosen, 2.0));
    painter.setBrush(Qt::NoBrush);
    painter.drawArc(QRectF(-radius, -radius, 2 * radius, 2 * radius), 0, 270 * 16);
    const double tip = px(4.0);
    painter.setPen(Qt::NoPen);
    painter.setBrush(style.ink.chosen);
    painter.drawPolygon(QPolygonF{QPointF(radius - tip, 0.0), QPointF(radius + tip, 0.0), QPointF(radius, tip * 1.3)});
}

void Overlay::paintGuides(QPainter& painter) const
{
    const PaintStyle& style = scene_.style();
    for (const Guide& guide : guides_) {
        const QPointF from = drawn(guide.from);
        const QPointF to = drawn(guide.to);
        if (guide.what == Guide::What::line) {
            painter.setPen(style.pen(style.ink.chosen, 1.0, Qt::DashLine));
            painter.drawLine(from, to);
            continue;
        }
        painter.setPen(style.pen(style.ink.chosen, 2.0));
        painter.drawLine(from, to);
        const QPointF along = to - from;
        const double span = std::hypot(along.x(), along.y());
        if (!(span > 0.0)) continue;
        const QPointF across = QPointF(-along.y(), along.x()) / span * px(6.0);
        painter.drawLine(from - across, from + across);
        painter.drawLine(to - across, to + across);
    }
    if (snapped_) {
        painter.setPen(style.pen(style.ink.chosen, 1.5));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(*snapped_, px(5.0), px(5.0));
    }
}

std::vector<QRectF> Overlay::covered() const
{
    std::vector<QRectF> rects;
    const double line = px(5.0);
    const auto add = [&](const QRectF& rect, double margin) {
        rects.push_back(rect.adjusted(-margin, -margin, margin, margin));
    };
    for (const Outline& outline : outlines_) add(outline.path.boundingRect(), line);
    for (const Handle& handle : handles_) rects.push_back(around(handle.at, px(kHandlePx * 1.6)));
    for (const Dimension& dimension : dimensions_) add(dimensionBounds(dimension, scene_.style()), px(20.0));
    for (const Sign& sign : signs_) add(sign.rect, line);
    for (const Guide& guide : guides_) add(QRectF(drawn(guide.from), drawn(guide.to)).normalized(), px(8.0));
    if (snapped_) rects.push_back(around(*snapped_, px(8.0)));
    if (tool_) {
        const QRectF bounds = tool_->paintBounds();
        if (!bounds.isNull()) add(bounds, px(16.0));
    }
    return rects;
}

std::optional<Handle> Overlay::handleAt(QPointF drawing) const
{
    std::optional<Handle> best;
    double least = px(kHandleReachPx);
    for (const Handle& handle : handles_) {
        const QPointF off = handle.at - drawing;
        const double far = std::hypot(off.x(), off.y());
        if (far > least) continue;
        least = far;
        best = handle;
    }
    return best;
}

std::optional<Dimension> Overlay::figureAt(QPointF drawing) const
{
    const double reach = px(kFigureReachPx);
    for (std::size_t i = 0; i < dimensions_.size(); ++i) {
        if (figures_[i].boundingRect().adjusted(-reach, -reach, reach, reach).contains(drawing)
            && figures_[i].intersects(around(drawing, reach))) {
            return dimensions_[i];
        }
    }
    return std::nullopt;
}

QPointF Overlay::figureCentre(const Dimension& dimension) const
{
    for (std::size_t i = 0; i < dimensions_.size(); ++i) {
        if (!(dimensions_[i].target == dimension.target) || figures_[i].isEmpty()) continue;
        return figures_[i].boundingRect().center();
    }
    return (dimension.a + dimension.b) / 2.0;
}

const Finding* Overlay::findingAt(QPointF drawing) const
{
    const auto found = std::ranges::find_if(signs_, [&](const Sign& s) { return s.rect.contains(drawing); });
    return found == signs_.end() ? nullptr : &found->finding;
}

}  // namespace yardcast::ui
