#pragma once

#include <string>
#include <vector>

#include <QPainter>

#include "core/assess/assessment.h"
#include "ui/drawing/part_painter.h"
#include "ui/drawing/projection.h"

/// What lies over the drawing at a stage. Each works in both views where it makes sense; in elevation the steel is
/// left out. An assessment that is older than the plan is painted as far as its castings still exist.
namespace yardcast::ui {

/// The sheets of mesh with their laps and the bars of counters as they are laid; proposed bars dashed.
void paintSteelLaid(QPainter& painter, const Plan& plan, const Assessment& assessment, const Projection& projection,
                    const PaintStyle& style);
/// These with the mark of each and how far above the mould base it lies, for paper; on the screen words are placed once.
void paintSteelOverlay(QPainter& painter, const Plan& plan, const Assessment& assessment,
                       const Projection& projection, const PaintStyle& style);
/// The edge each counter is tilted about, where hands take it, and centres of gravity; `chosen` parts.
void paintLiftSigns(QPainter& painter, const Plan& plan, const Assessment& assessment, const Projection& projection,
                    const PaintStyle& style, const std::vector<std::string>& chosen);
/// These with mass and people of each casting, for paper; on the screen words are placed once (ui/drawing/stage_words).
void paintLiftOverlay(QPainter& painter, const Plan& plan, const Assessment& assessment,
                      const Projection& projection, const PaintStyle& style);
/// Whether the mould of each casting is built as the mirror of what one sees; `chosen` parts.
void paintMouldSigns(QPainter& painter, const Plan& plan, const Assessment& assessment, const Projection& projection,
                     const PaintStyle& style, const std::vector<std::string>& chosen);
/// These with the name of each mould and which others look alike, for paper.
void paintMouldOverlay(QPainter& painter, const Plan& plan, const Assessment& assessment,
                       const Projection& projection, const PaintStyle& style);
/// Half of a ring filled crosswise: the sign of a centre of gravity.
void paintCentreOfGravity(QPainter& painter, QPointF at, const PaintStyle& style, const QColor& colour);

}  // namespace yardcast::ui
