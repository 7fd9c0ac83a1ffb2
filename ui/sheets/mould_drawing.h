#pragma once

#include <vector>

#include "ui/drawing/mould_painter.h"
#include "ui/sheets/drawing_fit.h"

namespace yardcast::ui {

/// The mould as one stands in front of it, with all its dimensions and numbers, and the marks of section A–A.
ScaledDrawing mouldDrawing(const MouldSubject& subject, double sectionXMm);
/// The casting as it stands.
ScaledDrawing standingDrawing(const MouldSubject& subject);
/// Section A–A in the position of pouring, with heights above the base.
ScaledDrawing mouldSectionDrawing(const MouldSubject& subject, double sectionXMm);

/// Drawings in one row, the same scale.
ScaledDrawing inARow(const std::vector<ScaledDrawing>& drawings);

}  // namespace yardcast::ui
