#include "ui/canvas/toolbox.h"

#include "ui/canvas/tools/across_tool.h"
#include "ui/canvas/tools/cutout_tool.h"
#include "ui/canvas/tools/draw_rect_tool.h"
#include "ui/canvas/tools/fixture_tool.h"
#include "ui/canvas/tools/front_tool.h"
#include "ui/canvas/tools/measure_tool.h"
#include "ui/canvas/tools/polygon_tool.h"
#include "ui/canvas/tools/select_tool.h"

namespace yardcast::ui {

std::unique_ptr<Tool> makeTool(ToolHost& host, const ToolChoice& choice)
{
    switch (choice.kind) {
    case ToolKind::select: return std::make_unique<SelectTool>(host);
    case ToolKind::counter: return std::make_unique<DrawRectTool>(host, PartKind::counter);
    case ToolKind::counterPolygon: return std::make_unique<PolygonTool>(host, PolygonTool::Makes::counter);
    case ToolKind::support: return std::make_unique<DrawRectTool>(host, PartKind::support);
    case ToolKind::panel: return std::make_unique<DrawRectTool>(host, PartKind::panel);
    case ToolKind::front: return std::make_unique<FrontTool>(host);
    case ToolKind::appliance: return std::make_unique<DrawRectTool>(host, PartKind::appliance);
    case ToolKind::cutout: return std::make_unique<CutoutTool>(host, choice.purpose, choice.shape);
    case ToolKind::joint: return std::make_unique<AcrossTool>(host, AcrossTool::Makes::joint);
    case ToolKind::rib: return std::make_unique<AcrossTool>(host, AcrossTool::Makes::rib);
    case ToolKind::siteOutline: return std::make_unique<PolygonTool>(host, PolygonTool::Makes::siteOutline);
    case ToolKind::fixture: return std::make_unique<FixtureTool>(host, choice.fixture);
    case ToolKind::measure: return std::make_unique<MeasureTool>(host);
    }
    return std::make_unique<SelectTool>(host);
}

bool worksInElevation(ToolKind kind) { return kind == ToolKind::select || kind == ToolKind::measure; }

}  // namespace yardcast::ui
