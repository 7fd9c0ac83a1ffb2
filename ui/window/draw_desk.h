#pragma once

#include <QObject>

#include "ui/canvas/tool_kind.h"

namespace yardcast::ui {

class Canvas;
class Commands;

/// The commands of the menus Draw and View that turn to the canvas: tools, views, zoom, snapping, stages.
class DrawDesk : public QObject {
    Q_OBJECT

public:
    DrawDesk(QObject& owner, const Commands& commands, Canvas& canvas);

    /// From where the elevation is looked at, degrees as in Projection::front.
    double lookDeg() const { return lookDeg_; }

private:
    void connectTools();
    void connectView();
    void showTool(ToolKind tool);
    void showProjection();
    void walkRound(double byDeg);

    const Commands& commands_;
    Canvas& canvas_;
    double lookDeg_ = 90.0;
};

}  // namespace yardcast::ui
