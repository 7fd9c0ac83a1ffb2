#include <cmath>

#include <QtTest>

#include "sheet_plans.h"
#include "ui/sheets/counter_section.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

/// Cut area of concrete, mm2.
double concreteArea(const std::vector<SectionPiece>& pieces)
{
    double area = 0.0;
    for (const SectionPiece& piece : pieces) {
        if (piece.kind != ZoneKind::filler && piece.kind != ZoneKind::core) {
            area += (piece.toYMm - piece.fromYMm) * (piece.bottomMm - piece.topMm);
        }
    }
    return area;
}

}  // namespace

class CounterSectionTest : public QObject {
    Q_OBJECT

private slots:
    void thePlainSlabIsCutThroughFieldAndRims()
    {
        // 600 deep, field 40, rims 60 wide and 60 deep at both ends of the cut.
        const Plan plan = counterPlan();
        const auto pieces = sectionPieces(castingsOf(*plan.parts[0]), 1600.0);
        QVERIFY(std::fabs(concreteArea(pieces) - (600.0 * 40.0 + 2.0 * 60.0 * 20.0)) < 0.1);
    }

    void throughTheSinkOnlyStripsAreCut()
    {
        const Plan plan = counterPlan();
        const auto& counter = std::get<Counter>(plan.parts[0]->body);
        QCOMPARE(sectionXMm(counter), 700.0);
        const auto pieces = sectionPieces(castingsOf(*plan.parts[0]), 700.0);
        // In front of it 110 and behind it 90, of which 60 each are rim.
        const double expected = 110.0 * 40.0 + 90.0 * 40.0 + 2.0 * 60.0 * 20.0;
        QVERIFY2(std::fabs(concreteArea(pieces) - expected) < 0.1, qPrintable(QString::number(concreteArea(pieces))));
    }

    void sectionsAddUpToTheVolume()
    {
        // The integral of the cut area along the slab is its volume (trapezoids of 1 mm).
        const Plan plan = samplePlan("corner-kitchen");
        for (const PartPtr& part : plan.parts) {
            const auto* counter = std::get_if<Counter>(&part->body);
            if (!counter) {
                continue;
            }
            const auto castings = castingsOf(*part);
            double litres = 0.0;
            for (const CastingPtr& casting : castings) {
                litres += casting->volumeL;
            }
            const std::optional<Box> box = boundsOf(counter->outline);
            double sum = 0.0;
            for (double x = box->low.x + 0.5; x < box->high.x; x += 1.0) {
                sum += concreteArea(sectionPieces(castings, x));
            }
            QVERIFY2(std::fabs(sum * 1e-6 - litres) < 0.002 * litres, part->id.c_str());
        }
    }

    void holesAreCutAtTheirTrueWidth()
    {
        const Plan plan = counterPlan();
        const auto& counter = std::get<Counter>(plan.parts[0]->body);
        auto pieces = sectionPieces(castingsOf(*plan.parts[0]), 1100.0);
        snapToCircles(pieces, counter, 1100.0);
        // The tap hole of 35 about y 540.
        double before = 0.0;
        double after = 1e9;
        for (const SectionPiece& piece : pieces) {
            if (piece.topMm == 0.0 && piece.toYMm < 540.0) {
                before = std::max(before, piece.toYMm);
            }
            if (piece.topMm == 0.0 && piece.fromYMm > 540.0) {
                after = std::min(after, piece.fromYMm);
            }
        }
        QCOMPARE(before, 522.5);
        QCOMPARE(after, 557.5);
    }
};

QTEST_MAIN(CounterSectionTest)
#include "counter_section_test.moc"
