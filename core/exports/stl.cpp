#include "core/exports/stl.h"

#include <bit>
#include <cmath>
#include <cstdint>

namespace yardcast {

namespace {

constexpr std::size_t kHeaderBytes = 80;

void put(std::string& bytes, std::uint32_t value, int count)
{
    for (int i = 0; i < count; ++i) bytes += char((value >> (8 * i)) & 0xFF);
}

void put(std::string& bytes, const SolidPoint& p)
{
    for (const double value : p) put(bytes, std::bit_cast<std::uint32_t>(float(value)), 4);
}

SolidPoint normalOf(const SolidPoint& a, const SolidPoint& b, const SolidPoint& c)
{
    const SolidPoint u{b[0] - a[0], b[1] - a[1], b[2] - a[2]};
    const SolidPoint v{c[0] - a[0], c[1] - a[1], c[2] - a[2]};
    SolidPoint n{u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
    const double size = std::hypot(n[0], n[1], n[2]);
    for (double& value : n) value = size > 0.0 ? value / size : 0.0;
    return n;
}

}  // namespace

std::string stlBytes(const std::vector<ModelPiece>& pieces, const std::string& header)
{
    std::string bytes;
    for (const char c : header) bytes += static_cast<unsigned char>(c) < 0x80 ? c : '?';
    if (bytes.rfind("solid", 0) == 0) bytes.insert(0, "a ");
    bytes.resize(kHeaderBytes, ' ');
    std::size_t count = 0;
    for (const ModelPiece& piece : pieces) count += piece.solid.triangles.size();
    bytes.reserve(kHeaderBytes + 4 + 50 * count);
    put(bytes, std::uint32_t(count), 4);
    for (const ModelPiece& piece : pieces) {
        const Solid& solid = piece.solid;
        for (const std::array<int, 3>& t : solid.triangles) {
            const SolidPoint& a = solid.points[std::size_t(t[0])];
            const SolidPoint& b = solid.points[std::size_t(t[1])];
            const SolidPoint& c = solid.points[std::size_t(t[2])];
            put(bytes, normalOf(a, b, c));
            for (const SolidPoint* p : {&a, &b, &c}) put(bytes, *p);
            put(bytes, 0, 2);
        }
    }
    return bytes;
}

}  // namespace yardcast
