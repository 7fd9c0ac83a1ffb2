#pragma once

#include <string>
#include <vector>

#include "core/geometry/region.h"

namespace yardcast {

/// A flat drawing for programs that read DXF: mm, 1:1, x to the right, y up.
struct DxfDrawing {
    struct Layer {
        std::string name;       ///< plain English
        int colour = 7;         ///< colour number of the format: 1 red ... 7 black or white
        bool dashed = false;    ///< what is hidden, or only a help
    };
    /// A corner of an outline; the way to the next one is an arc where `bulge` is not 0: the tangent of a quarter of
    /// its angle, positive counter-clockwise.
    struct Corner {
        Point at;
        double bulge = 0.0;
    };
    struct Outline {
        std::string layer;
        std::vector<Corner> corners;
        bool closed = true;
    };
    struct Circle {
        std::string layer;
        Point centre;
        double diameterMm = 0.0;
    };
    struct Text {
        std::string layer;
        Point middle;           ///< of the text
        double heightMm = 0.0;
        std::string text;       ///< UTF-8
    };

    std::vector<Layer> layers;
    std::vector<Outline> outlines;
    std::vector<Circle> circles;
    std::vector<Text> texts;

    /// What a ring bounds.
    void add(const std::string& layer, const Ring& ring);
    /// Every boundary of a region.
    void add(const std::string& layer, const Region& region);
    void addLine(const std::string& layer, Point from, Point to);
};

/// The text of an ASCII DXF file, version AC1015 (later than R12; what reads newer
/// versions reads it), with its unit set to mm.
/// Letters beyond ASCII are written as \U+XXXX, as that version has them. Numbers have six decimals at most.
std::string dxfText(const DxfDrawing& drawing);

}  // namespace yardcast
