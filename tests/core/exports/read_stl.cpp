#include "tests/core/exports/read_stl.h"

#include <cmath>
#include <cstdint>
#include <cstring>
#include <map>
#include <stdexcept>

namespace yardcast::test {

namespace {

float numberAt(const std::string& bytes, std::size_t offset)
{
    std::uint32_t bits = 0;
    for (std::size_t i = 0; i < 4; ++i)
        bits |= std::uint32_t(static_cast<unsigned char>(bytes[offset + i])) << (8 * i);
    float value = 0.0F;
    std::memcpy(&value, &bits, 4);
    return value;
}

}  // namespace

Solid readStl(const std::string& bytes)
{
    if (bytes.size() < 84 || bytes.substr(0, 5) == "solid") throw std::runtime_error("no binary STL");
    std::uint32_t count = 0;
    for (std::size_t i = 0; i < 4; ++i)
        count |= std::uint32_t(static_cast<unsigned char>(bytes[80 + i])) << (8 * i);
    if (bytes.size() != 84 + 50 * std::size_t(count)) throw std::runtime_error("length and count differ");
    Solid solid;
    std::map<SolidPoint, int> numbers;
    for (std::size_t t = 0; t < count; ++t) {
        std::array<int, 3> corners{};
        std::array<SolidPoint, 4> vectors;
        for (std::size_t v = 0; v < 4; ++v) {
            for (std::size_t k = 0; k < 3; ++k) vectors[v][k] = numberAt(bytes, 84 + 50 * t + 12 * v + 4 * k);
            if (v == 0) continue;
            const auto [found, isNew] = numbers.insert({vectors[v], int(solid.points.size())});
            if (isNew) solid.points.push_back(vectors[v]);
            corners[v - 1] = found->second;
        }
        solid.triangles.push_back(corners);
        SolidPoint u{}, w{};
        for (std::size_t k = 0; k < 3; ++k) {
            u[k] = vectors[2][k] - vectors[1][k];
            w[k] = vectors[3][k] - vectors[1][k];
        }
        const SolidPoint n{u[1] * w[2] - u[2] * w[1], u[2] * w[0] - u[0] * w[2], u[0] * w[1] - u[1] * w[0]};
        const double size = std::hypot(n[0], n[1], n[2]);
        // Single floats move the corners of a thin triangle; of those its normal says little.
        const double along = n[0] * vectors[0][0] + n[1] * vectors[0][1] + n[2] * vectors[0][2];
        if (size > 1.0 && along < 0.99 * size) throw std::runtime_error("a normal is not that of its triangle");
    }
    return solid;
}

}  // namespace yardcast::test
