#include "core/materials/materials.h"

#include <gtest/gtest.h>

namespace yardcast {
namespace {

TEST(Bars, AreaAndMassOfAnEightMillimetreBar)
{
    EXPECT_NEAR(barAreaMm2(8), 50.265, 1e-3);
    EXPECT_NEAR(barMassKgM(8), 0.39458, 1e-5);
    EXPECT_EQ(barMassKgM(0), 0.0);
}

TEST(ConcreteClasses, AreFoundByName)
{
    const auto c = concreteClass("C30/37");
    ASSERT_TRUE(c);
    EXPECT_EQ(c->fckMpa, 30.0);
    EXPECT_EQ(c->fckCubeMpa, 37.0);
    for (const char* other : {"", "C30", "c30/37", "C31/38", "C30/37 "}) EXPECT_FALSE(concreteClass(other)) << other;
}

TEST(Fibres, UnknownKindsGetTheFallback)
{
    EXPECT_EQ(fibreKgL("AR glass"), 2.68);
    EXPECT_EQ(fibreKgL("PP"), 0.91);
    EXPECT_EQ(fibreKgL("straw"), 2.6);
}

TEST(Timber, UnknownSpeciesGetTheFallback)
{
    EXPECT_GT(timberKgM3("oak"), timberKgM3("larch"));
    EXPECT_EQ(timberKgM3(""), 550.0);
}

}  // namespace
}  // namespace yardcast
