#pragma once

#include <memory>

#include "core/plan/plan.h"
#include "ui/canvas/tool.h"
#include "ui/canvas/tool_kind.h"

namespace yardcast::ui {

/// What the tools that serve several things make.
struct ToolChoice {
    ToolKind kind = ToolKind::select;
    CutoutPurpose purpose = CutoutPurpose::sink;
    CutoutShape shape = CutoutShape::rectangle;
    FixtureKind fixture = FixtureKind::water;
    friend bool operator==(const ToolChoice&, const ToolChoice&) = default;
};

std::unique_ptr<Tool> makeTool(ToolHost& host, const ToolChoice& choice);
/// Only choosing, moving and measuring make sense in elevation.
bool worksInElevation(ToolKind kind);

}  // namespace yardcast::ui
