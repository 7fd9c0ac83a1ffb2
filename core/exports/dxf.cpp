#include "core/exports/dxf.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstdio>

#include <dl_dxf.h>
#include <dl_writer_ascii.h>

namespace yardcast {

namespace {

constexpr int kMillimetres = 4;   // of $INSUNITS
constexpr int kClosed = 1;
constexpr int kByLayer = 256;
constexpr int kWidthByLayer = -1;
constexpr int kLineWidth = 25;    // hundredths of a mm
constexpr int kCentre = 1;        // of texts, across
constexpr int kMiddle = 2;        // of texts, up
constexpr auto kDashed = "DASHED";

/// Writes into memory and with numbers that no locale changes.
class TextWriter final : public DL_WriterA {
public:
    TextWriter() : DL_WriterA("", DL_VERSION_2000) {}

    void dxfReal(int code, double value) const override
    {
        std::array<char, 64> buffer{};
        const double sound = std::isfinite(value) ? value : 0.0;
        const auto end =
            std::to_chars(buffer.data(), buffer.data() + buffer.size(), sound, std::chars_format::fixed, 6);
        std::string text(buffer.data(), end.ec == std::errc() ? end.ptr : buffer.data());
        while (text.size() > 3 && text.back() == '0' && text[text.size() - 2] != '.') text.pop_back();
        line(code, text.empty() ? "0.0" : text);
    }
    void dxfInt(int code, int value) const override { line(code, std::to_string(value)); }
    void dxfHex(int code, int value) const override
    {
        std::array<char, 16> buffer{};
        std::snprintf(buffer.data(), buffer.size(), "%X", static_cast<unsigned>(value));
        line(code, buffer.data());
    }
    void dxfString(int code, const char* value) const override { line(code, value ? value : ""); }
    void dxfString(int code, const std::string& value) const override { line(code, value); }

    std::string text() const { return text_; }

private:
    void line(int code, const std::string& value) const
    {
        text_ += (code < 10 ? "  " : code < 100 ? " " : "") + std::to_string(code) + "\n" + value + "\n";
    }

    mutable std::string text_;
};

/// UTF-8 as the format's version has it. What is no UTF-8 or a control character becomes a question mark.
std::string plainText(const std::string& utf8)
{
    std::string plain;
    for (std::size_t i = 0; i < utf8.size();) {
        const auto first = static_cast<unsigned char>(utf8[i]);
        const std::size_t length = first < 0x80 ? 1 : first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC0 ? 2 : 0;
        if (length == 1) {
            plain += first < 0x20 || first == 0x7F ? '?' : char(first);
            ++i;
            continue;
        }
        std::uint32_t letter = length == 0 ? 0 : first & (0xFFu >> (length + 1));
        bool sound = length > 0 && i + length <= utf8.size();
        for (std::size_t k = 1; sound && k < length; ++k) {
            const auto next = static_cast<unsigned char>(utf8[i + k]);
            sound = (next & 0xC0) == 0x80;
            letter = letter << 6 | (next & 0x3F);
        }
        if (!sound || letter > 0xFFFF) {
            plain += '?';
            i += sound ? length : 1;
            continue;
        }
        std::array<char, 16> code{};
        std::snprintf(code.data(), code.size(), "\\U+%04X", static_cast<unsigned>(letter));
        plain += code.data();
        i += length;
    }
    return plain;
}

DL_Attributes on(const std::string& layer)
{
    return {layer, kByLayer, kWidthByLayer, "BYLAYER", 1.0};
}

void writeTables(DL_Dxf& dxf, TextWriter& out, const std::vector<DxfDrawing::Layer>& layers)
{
    out.sectionTables();
    dxf.writeVPort(out);
    out.tableLinetypes(4);
    dxf.writeLinetype(out, DL_LinetypeData("BYBLOCK", "", 0, 0, 0.0));
    dxf.writeLinetype(out, DL_LinetypeData("BYLAYER", "", 0, 0, 0.0));
    dxf.writeLinetype(out, DL_LinetypeData("CONTINUOUS", "Solid line", 0, 0, 0.0));
    std::array<double, 2> dashes{30.0, -15.0};
    dxf.writeLinetype(out, DL_LinetypeData(kDashed, "Hidden edges", 0, 2, 45.0, dashes.data()));
    out.tableEnd();
    out.tableLayers(int(layers.size()) + 1);
    dxf.writeLayer(out, DL_LayerData("0", 0), DL_Attributes("", 7, kLineWidth, "CONTINUOUS", 1.0));
    for (const DxfDrawing::Layer& layer : layers) {
        dxf.writeLayer(out, DL_LayerData(layer.name, 0),
                       DL_Attributes("", layer.colour, kLineWidth, layer.dashed ? kDashed : "CONTINUOUS", 1.0));
    }
    out.tableEnd();
    out.tableStyle(1);
    dxf.writeStyle(out, DL_StyleData("Standard", 0, 0.0, 1.0, 0.0, 0, 2.5, "txt", ""));
    out.tableEnd();
    dxf.writeView(out);
    dxf.writeUcs(out);
    out.tableAppid(1);
    dxf.writeAppid(out, "ACAD");
    out.tableEnd();
    dxf.writeDimStyle(out, 2.5, 1.25, 0.625, 0.625, 2.5);
    dxf.writeBlockRecord(out);
    out.tableEnd();
    out.sectionEnd();
}

void writeEntities(DL_Dxf& dxf, TextWriter& out, const DxfDrawing& drawing)
{
    out.sectionEntities();
    for (const DxfDrawing::Outline& outline : drawing.outlines) {
        dxf.writePolyline(out, DL_PolylineData(int(outline.corners.size()), 0, 0, outline.closed ? kClosed : 0),
                          on(outline.layer));
        for (const DxfDrawing::Corner& corner : outline.corners)
            dxf.writeVertex(out, DL_VertexData(corner.at.x, corner.at.y, 0.0, corner.bulge));
        dxf.writePolylineEnd(out);
    }
    for (const DxfDrawing::Circle& circle : drawing.circles)
        dxf.writeCircle(out, DL_CircleData(circle.centre.x, circle.centre.y, 0.0, circle.diameterMm / 2),
                        on(circle.layer));
    for (const DxfDrawing::Text& text : drawing.texts) {
        const Point at = text.middle;
        dxf.writeText(out, DL_TextData(at.x, at.y, 0.0, at.x, at.y, 0.0, text.heightMm, 1.0, 0, kCentre, kMiddle,
                                       plainText(text.text), "Standard", 0.0),
                      on(text.layer));
    }
    out.sectionEnd();
}

}  // namespace

void DxfDrawing::add(const std::string& layer, const Ring& ring)
{
    Outline outline{layer, {}, true};
    for (const Point p : ring) outline.corners.push_back({p, 0.0});
    if (ring.size() > 1) outlines.push_back(std::move(outline));
}

void DxfDrawing::add(const std::string& layer, const Region& region)
{
    for (const Polygon& polygon : region) {
        add(layer, polygon.outer);
        for (const Ring& hole : polygon.holes) add(layer, hole);
    }
}

void DxfDrawing::addLine(const std::string& layer, Point from, Point to)
{
    outlines.push_back({layer, {{from, 0.0}, {to, 0.0}}, false});
}

std::string dxfText(const DxfDrawing& drawing)
{
    DL_Dxf dxf;
    TextWriter out;
    dxf.writeHeader(out);
    out.dxfString(9, "$INSUNITS");
    out.dxfInt(70, kMillimetres);
    out.dxfString(9, "$MEASUREMENT");
    out.dxfInt(70, 1);
    out.dxfString(9, "$TEXTSTYLE");
    out.dxfString(7, "Standard");
    out.sectionEnd();
    writeTables(dxf, out, drawing.layers);
    out.sectionBlocks();
    for (const char* space : {"*Model_Space", "*Paper_Space", "*Paper_Space0"}) {
        dxf.writeBlock(out, DL_BlockData(space, 0, 0.0, 0.0, 0.0));
        dxf.writeEndBlock(out, space);
    }
    out.sectionEnd();
    writeEntities(dxf, out, drawing);
    dxf.writeObjects(out);
    dxf.writeObjectsEnd(out);
    out.dxfEOF();
    return out.text();
}

}  // namespace yardcast
