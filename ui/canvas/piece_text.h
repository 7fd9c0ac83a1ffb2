#pragma once

#include <QString>
#include <QStringList>

#include "core/plan/plan.h"

/// The figures that go with the pointer: how large, how heavy, how many people; and names for the undo list.
namespace yardcast::ui {

/// "120 mm right, 40 mm back" of a way in the plane of the view; "up" and "down" in elevation.
QString wayText(Point by, bool fromAbove);

/// "106 kg  ·  6 people" of the whole part: the heaviest casting says how many; empty for what is not cast or cannot
/// be computed.
QString massAndPeople(const Plan& plan, const Part& part);
/// Of each casting of the part: "58 kg + 48 kg  ·  3 + 2 people".
QString massesAndPeople(const Plan& plan, const Part& part);
/// Figures joined as the measure line shows them; empty ones are left out.
QString joined(const QStringList& figures);

/// "C1 Sink slab" of one part, "3 parts" of several.
QString partsCalled(const Plan& plan, const QStringList& ids);
/// "sink K1", "tap hole K2".
QString cutoutCalled(const Cutout& cutout);

}  // namespace yardcast::ui
