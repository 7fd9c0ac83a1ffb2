#pragma once

#include <optional>
#include <string>

#include <QRectF>

#include "core/assess/assessment.h"
#include "core/mould/mould.h"
#include "core/plan/plan.h"
#include "ui/drawing/hand_marks.h"
#include "ui/drawing/part_painter.h"

class QPainter;

/// Pictures of one mould: as one stands in front of it, and beside it the casting as it stands, so that left and right
/// cannot be taken for one another. Drawing mm, the front edge at the bottom.
namespace yardcast::ui {

/// All that is known of one casting's mould.
struct MouldSubject {
    PartPtr part;
    CastingPtr casting;
    MouldPtr mould;
    CastingSteelLayoutPtr steel;    ///< may be null
};
/// Nothing where there is no such casting or its mould is not worked out.
std::optional<MouldSubject> mouldSubject(const Plan& plan, const Assessment& assessment, const std::string& casting);

Hand handOf(const Mould& mould);

/// From the own frame of the part to the mould frame.
Point ownToMould(const MouldSubject& subject, Point own);
/// The corner both pictures mark and all dimensions begin at: front left of the finished piece. In the own frame.
Point datumCorner(const MouldSubject& subject);

struct MouldLook {
    bool dimensions = true;
    bool numbers = true;
    std::string marked{};       ///< name of the part that is chosen
    std::optional<double> sectionXMm{};  ///< where a section is marked A–A, mould frame
};

/// Everything the picture covers, head and words included.
QRectF mouldPictureBounds(const MouldSubject& subject, const MouldLook& look, const PaintStyle& style);
void paintMouldPicture(QPainter& painter, const MouldSubject& subject, const MouldLook& look, const PaintStyle& style);
/// Which part lies under the point of the picture, drawing mm: the uppermost. Empty where none does.
std::string mouldPartAt(const MouldSubject& subject, QPointF at);

/// The casting as it stands: a counter from above, an upright from the front.
QRectF standingPictureBounds(const MouldSubject& subject, const PaintStyle& style);
void paintStandingPicture(QPainter& painter, const MouldSubject& subject, const PaintStyle& style);

/// Fills of ISO 128: board with its grain, foam with crosses. In drawing mm.
void fillBoard(QPainter& painter, const QPainterPath& path, const PaintStyle& style);

}  // namespace yardcast::ui
