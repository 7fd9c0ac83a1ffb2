#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include <QPainterPath>
#include <QRegion>

#include "core/assess/assessment.h"
#include "core/plan/finding.h"
#include "ui/canvas/handles.h"
#include "ui/canvas/hit.h"
#include "ui/canvas/snapping.h"
#include "ui/canvas/strength_layer.h"
#include "ui/drawing/dimension_painter.h"
#include "ui/drawing/stage_words.h"
#include "ui/look/stage.h"

class QPainter;

namespace yardcast::ui {

class LiveAssessment;
class PlanScene;
class Selection;
class Tool;

/// What lies over the drawing: the stage's own layer, marks of what is chosen, pointed at or found wanting, dimensions,
/// handles, guides and what the tool paints.
class Overlay {
public:
    Overlay(const PlanScene& scene, const Selection& selection, const LiveAssessment& live);

    void setStage(Stage stage) { stage_ = stage; }
    /// The part of the drawing in view, drawing mm.
    void setVisible(const QRectF& drawing) { visible_ = drawing; }
    void setTool(Tool* tool) { tool_ = tool; }
    void setHovered(const Hit& hit) { hovered_ = hit; }
    const Hit& hovered() const { return hovered_; }
    void setChosenCorner(int corner) { corner_ = corner; }
    /// Handles and dimensions only help the select tool.
    void setEditing(bool editing) { editing_ = editing; }
    void setGuides(const std::vector<Guide>& guides, std::optional<QPointF> snapped);
    /// True when it is another one than before.
    bool setHoveredFigure(const std::optional<Dimension>& figure);

    /// Finds out anew what there is to paint: everything, or the outlines alone (the pointer is over something else).
    void rebuild();
    void rebuildOutlines();
    /// The findings of the newest assessment, by part.
    void takeFindings();
    /// Where the stage's layer has changed since the last call, drawing mm: only what was poured, lifted or solved anew.
    std::vector<QRectF> refreshStage();
    /// `exposed` is what has to be painted, drawing mm.
    void paint(QPainter& painter, const QRectF& exposed);
    /// What it covers now, drawing mm.
    std::vector<QRectF> covered() const;

    std::optional<Handle> handleAt(QPointF drawing) const;
    std::optional<Dimension> figureAt(QPointF drawing) const;
    /// The gravest finding whose sign is under the point.
    const Finding* findingAt(QPointF drawing) const;
    const std::vector<Handle>& handles() const { return handles_; }
    const StrengthLayer& strength() const { return strength_; }
    const std::vector<Dimension>& dimensions() const { return dimensions_; }
    QPointF figureCentre(const Dimension& dimension) const;

private:
    /// Where hands take the one counter that is chosen, in the stages that show it; own frame.
    std::vector<Point> gripsOfChosen() const;
    struct Outline {
        enum class Why { highlighted, hovered, chosen, within };
        QPainterPath path;
        Why why;
    };
    struct Sign {
        QRectF rect;
        Finding finding;
    };

    /// What the stage's layer shows of one casting, and where.
    struct StageMark {
        CastingPtr casting;
        std::array<double, 3> centroidMm{};
        PartPtr part;
        CastingStrengthPtr strength;   ///< stage Lift: proposed grips and the edge it is tilted about
        MouldPtr mould;                ///< stage Mould
        CastingSteelLayoutPtr steel;   ///< stage Steel
        bool chosen = false;           ///< stage Lift: what a counter hides is shown then
        QRectF rect;
        bool operator==(const StageMark&) const = default;
    };

    double px(double pixels) const;
    std::vector<StageMark> stageMarks() const;
    /// Words of the stage about all castings, wherever one looks: placed once, so that a picture made of
    /// pieces is one picture.
    std::vector<StageWords> stageWords() const;
    void addDimensions();
    void addSigns();
    void paintStage(QPainter& painter, const QRectF& exposed);
    void paintOutlines(QPainter& painter) const;
    void paintHandles(QPainter& painter) const;
    void paintTurnHandle(QPainter& painter) const;
    void paintGuides(QPainter& painter) const;

    const PlanScene& scene_;
    const Selection& selection_;
    const LiveAssessment& live_;
    Tool* tool_ = nullptr;
    Stage stage_ = Stage::layOut;
    QRectF visible_;
    Hit hovered_;
    int corner_ = -1;
    bool editing_ = true;
    std::vector<Guide> guides_;
    std::optional<QPointF> snapped_;
    std::optional<DimensionTarget> hoveredFigure_;

    std::vector<Outline> outlines_;
    std::vector<Handle> handles_;
    std::vector<Dimension> dimensions_;
    std::vector<QPainterPath> figures_;  ///< shapes of the figures of dimensions_, from the last painting
    std::vector<std::pair<std::string, Finding>> findings_;  ///< the gravest of each part
    std::vector<Sign> signs_;
    std::vector<StageMark> stageMarks_;
    std::vector<StageWords> words_;
    StrengthLayer strength_;
};

}  // namespace yardcast::ui
