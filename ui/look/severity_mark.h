#pragma once

#include <QColor>
#include <QRectF>

#include "core/plan/finding.h"
#include "ui/look/ink.h"

class QPainter;

namespace yardcast::ui {

QColor colourOf(Severity severity, const Ink& ink);
/// The sign of a finding, told apart by its shape without the colour: a barred square, a triangle, a ring.
void paintSeverityMark(QPainter& painter, const QRectF& rect, Severity severity, const Ink& ink);

}  // namespace yardcast::ui
