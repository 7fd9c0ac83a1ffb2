#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QUndoStack>

#include "tests/ui/panels/panel_fixture.h"
#include "ui/panels/remedy_list.h"
#include "ui/panels/search_box.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

QPushButton* button(QWidget& box, const QString& text)
{
    for (QPushButton* one : box.findChildren<QPushButton*>()) {
        if (one->text() == text) return one;
    }
    return nullptr;
}

/// A slab that is far thicker than it needs to be, on three walls.
Plan stout()
{
    Plan plan;
    Mix mix;
    mix.id = "M";
    mix.strengthClass = "C30/37";
    plan.mixes.push_back(mix);
    const auto add = [&](const char* id, PartBody body, Placement place) {
        Part part;
        part.id = id;
        part.body = std::move(body);
        part.place = place;
        plan.parts.push_back(std::make_shared<const Part>(std::move(part)));
    };
    Counter counter;
    counter.outline = {{0, 0}, {1500, 0}, {1500, 600}, {0, 600}};
    counter.thicknessMm = 70;
    counter.mix = "M";
    counter.lift = Lift{72.0, {}, 4, CarryWay::flat, {}};
    add("C1", counter, {});
    Support wall;
    wall.lengthMm = 600;
    wall.widthMm = 100;
    wall.heightMm = 830;
    wall.mix = "M";
    add("S1", wall, {{100, 0}, 90.0});
    add("S2", wall, {{800, 0}, 90.0});
    add("S3", wall, {{1500, 0}, 90.0});
    return plan;
}

}  // namespace

class SearchBoxTest : public QObject {
    Q_OBJECT

private slots:
    void findsALighterFormWhichIsOneUndoableEdit()
    {
        PanelFixture fixture(stout());
        SearchBox box(fixture.document, fixture.live);
        box.show();
        QVERIFY(!button(box, "Find the lightest")->isEnabled());
        box.setPart("C1");
        QVERIFY(button(box, "Find the lightest")->isEnabled());
        button(box, "Find the lightest")->click();
        QVERIFY(box.isSearching());
        QVERIFY(box.findChild<QProgressBar*>()->isVisible());
        QTRY_VERIFY_WITH_TIMEOUT(!box.isSearching(), 60000);
        auto* offered = box.findChild<RemedyList*>();
        QCOMPARE(offered->buttons().size(), 1);

        const PlanPtr before = fixture.document.plan();
        offered->buttons().first()->click();
        const auto& after = std::get<Counter>(findPart(*fixture.document.plan(), "C1")->body);
        QVERIFY(after.thicknessMm < 70.0);
        fixture.document.undoStack()->undo();
        QVERIFY(*fixture.document.plan() == *before);
    }

    void cancelEndsIt()
    {
        PanelFixture fixture(stout());
        SearchBox box(fixture.document, fixture.live);
        box.show();
        box.setPart("C1");
        button(box, "Find the cheapest")->click();
        button(box, "Cancel")->click();
        QVERIFY(!box.isSearching());
        QVERIFY(button(box, "Find the cheapest")->isVisible());
        QVERIFY(box.findChild<RemedyList*>()->buttons().isEmpty());
    }

    void anotherPlanEndsIt()
    {
        PanelFixture fixture(stout());
        SearchBox box(fixture.document, fixture.live);
        box.show();
        box.setPart("C1");
        button(box, "Find the lightest")->click();
        fixture.document.apply("title", [](Plan plan) {
            plan.title = "another";
            return plan;
        });
        QVERIFY(!box.isSearching());
    }

    void supportsCannotBeSearched()
    {
        PanelFixture fixture(stout());
        SearchBox box(fixture.document, fixture.live);
        box.setPart("C1");
        box.setPart("S1");
        QVERIFY(!button(box, "Find the cheapest")->isEnabled());
    }
};

QTEST_MAIN(SearchBoxTest)
#include "search_box_test.moc"
