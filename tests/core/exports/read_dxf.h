#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/exports/dxf.h"

namespace yardcast::test {

/// What the library's own reader finds in the text of a DXF file.
struct ReadDxf {
    bool read = false;
    int unit = -1;                          ///< $INSUNITS; 4 is mm
    std::string version;
    std::map<std::string, bool> dashed;     ///< layers and whether they are
    DxfDrawing drawing;                     ///< its layers are left empty
    std::map<std::string, int> other;       ///< entities that our drawings do not have
};
ReadDxf readDxf(const std::string& text);

/// Area within a closed outline with its arcs, mm2.
double areaWithArcsMm2(const DxfDrawing::Outline& outline);
std::vector<const DxfDrawing::Outline*> outlinesOn(const DxfDrawing& drawing, const std::string& layer);

}  // namespace yardcast::test
