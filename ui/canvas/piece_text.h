#pragma once

#include <QString>

#include "core/plan/plan.h"

/// The figures that go with the pointer: how large, how heavy, how many people.
namespace yardcast::ui {

/// "1850 x 620 mm" (with a times sign), whole mm where they are whole.
QString sizeMm(double firstMm, double secondMm);
QString lengthMm(double mm);
/// "120 mm right, 40 mm back" of a move from above; "up" and "down" in elevation.
QString wayText(Point by, bool fromAbove);

/// "106 kg  ·  6 people" of the whole part: the heaviest casting says how many; empty for what is not cast or cannot
/// be computed.
QString massText(const Plan& plan, const Part& part);
/// Of each casting of the part: "58 kg + 48 kg  ·  3 + 2 people".
QString castingsText(const Plan& plan, const Part& part);
/// Figures joined as the measure line shows them.
QString joined(const QStringList& figures);

/// The part in words: its name, or "counter C1".
QString partCalled(const Part& part);
QString cutoutCalled(const Cutout& cutout);
QString kindCalled(PartKind kind);
QString purposeCalled(CutoutPurpose purpose);
QString fixtureCalled(FixtureKind kind);

}  // namespace yardcast::ui
