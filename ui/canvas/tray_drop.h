#pragma once

#include <optional>

#include <QString>

#include "core/plan/plan.h"
#include "ui/canvas/tool.h"
#include "ui/canvas/tool_kind.h"
#include "ui/canvas/toolbox.h"

class QMimeData;

namespace yardcast::ui {

/// What a word of the tray stands for.
struct TrayThing {
    enum class What { part, cutout, fixture };
    What what = What::part;
    PartKind part = PartKind::counter;
    CutoutPurpose purpose = CutoutPurpose::sink;
    CutoutShape shape = CutoutShape::rectangle;
    FixtureKind fixture = FixtureKind::water;
};
std::optional<TrayThing> trayThing(const QString& word);
std::optional<TrayThing> trayThing(const QMimeData* data);

/// A thing from the tray while it is dragged over the sheet: it is in the plan already, as a preview, and snaps.
class TrayDrop {
public:
    TrayDrop(ToolHost& host, TrayThing thing);

    void moveTo(Point at, Qt::KeyboardModifiers modifiers);
    /// False where it cannot be put (a cutout beside every counter).
    bool canDrop() const { return canDrop_; }
    void drop();
    void cancel();

private:
    void movePart(Point at, Qt::KeyboardModifiers modifiers);
    void moveCutout(Point at, Qt::KeyboardModifiers modifiers);
    void moveFixture(Point at, Qt::KeyboardModifiers modifiers);

    ToolHost& host_;
    TrayThing thing_;
    SnapTargets targets_;
    bool canDrop_ = false;
    std::string made_;
    std::string counter_;
};

}  // namespace yardcast::ui
