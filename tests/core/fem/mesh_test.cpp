#include "core/fem/mesh.h"

#include <gtest/gtest.h>

namespace yardcast {
namespace {

MeshRequest slabWithCutout(double sizeMm)
{
    MeshRequest request;
    request.domain = {{{{0, 0}, {2000, 0}, {2000, 600}, {0, 600}}, {}}};
    request.domain = subtract(request.domain, regionOf(rectangleRing({900, 300}, {560, 400}, 0, 20)));
    request.domain = subtract(request.domain, regionOf(circleRing({1320, 480}, 35)));
    request.lines = {{{60, 60}, {1940, 60}, {1940, 540}, {60, 540}, {60, 60}},
                     {{300, 0}, {300, 600}}, {{1400, 0}, {1400, 600}}, {{1800, 0}, {1800, 600}}};
    request.sizeMm = sizeMm;
    for (const double x : {620.0, 1180.0})
        for (const double y : {100.0, 500.0}) request.fine.push_back({{x, y}, 8});
    return request;
}

TEST(Mesh, FillsASlabWithACutoutWithGoodTriangles)
{
    for (const double sizeMm : {80.0, 50.0, 30.0, 20.0}) {
        SCOPED_TRACE(sizeMm);
        const MeshRequest request = slabWithCutout(sizeMm);
        const TriangleMesh mesh = meshOf(request);
        ASSERT_FALSE(mesh.triangles.empty());
        EXPECT_NEAR(mesh.areaMm2() / areaMm2(request.domain), 1.0, 5e-4);
        EXPECT_GE(mesh.leastAngleDeg(), 15.0);
    }
}

TEST(Mesh, IsEmptyWhereThereIsNothingToMesh)
{
    EXPECT_TRUE(meshOf({}).triangles.empty());
    MeshRequest flat;
    flat.domain = {{{{0, 0}, {100, 0}, {200, 0}}, {}}};
    EXPECT_TRUE(meshOf(flat).triangles.empty());
}

}  // namespace
}  // namespace yardcast
