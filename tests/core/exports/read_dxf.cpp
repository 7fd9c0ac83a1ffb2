#include "tests/core/exports/read_dxf.h"

#include <cmath>
#include <sstream>

#include <dl_creationadapter.h>
#include <dl_dxf.h>

namespace yardcast::test {

namespace {

class Reader final : public DL_CreationAdapter {
public:
    ReadDxf result;

    void addLayer(const DL_LayerData& layer) override
    {
        result.dashed[layer.name] = getAttributes().getLinetype() == "DASHED";
    }
    void setVariableInt(const std::string& key, int value, int) override
    {
        if (key == "$INSUNITS") result.unit = value;
    }
    void setVariableString(const std::string& key, const std::string& value, int) override
    {
        if (key == "$ACADVER") result.version = value;
    }
    void addPolyline(const DL_PolylineData& data) override
    {
        result.drawing.outlines.push_back({layer(), {}, (data.flags & 1) != 0});
    }
    void addVertex(const DL_VertexData& data) override
    {
        result.drawing.outlines.back().corners.push_back({{data.x, data.y}, data.bulge});
    }
    void addCircle(const DL_CircleData& data) override
    {
        result.drawing.circles.push_back({layer(), {data.cx, data.cy}, 2 * data.radius});
    }
    void addText(const DL_TextData& data) override
    {
        result.drawing.texts.push_back({layer(), {data.apx, data.apy}, data.height, data.text});
    }
    void addLine(const DL_LineData&) override { ++result.other["line"]; }
    void addPoint(const DL_PointData&) override { ++result.other["point"]; }
    void addArc(const DL_ArcData&) override { ++result.other["arc"]; }

private:
    std::string layer() { return getAttributes().getLayer(); }
};

}  // namespace

ReadDxf readDxf(const std::string& text)
{
    Reader reader;
    DL_Dxf dxf;
    std::stringstream stream(text);
    reader.result.read = dxf.in(stream, &reader);
    return reader.result;
}

double areaWithArcsMm2(const DxfDrawing::Outline& outline)
{
    Ring ring;
    double arcs = 0.0;
    for (std::size_t i = 0; i < outline.corners.size(); ++i) {
        const DxfDrawing::Corner& corner = outline.corners[i];
        ring.push_back(corner.at);
        if (corner.bulge == 0.0) continue;
        const double chord = distance(corner.at, outline.corners[(i + 1) % outline.corners.size()].at);
        const double angle = 4 * std::atan(corner.bulge);
        const double radius = chord / 2 / std::sin(angle / 2);
        arcs += radius * radius / 2 * (angle - std::sin(angle));
    }
    return signedArea(ring) + arcs;
}

std::vector<const DxfDrawing::Outline*> outlinesOn(const DxfDrawing& drawing, const std::string& layer)
{
    std::vector<const DxfDrawing::Outline*> found;
    for (const DxfDrawing::Outline& outline : drawing.outlines) {
        if (outline.layer == layer) found.push_back(&outline);
    }
    return found;
}

}  // namespace yardcast::test
