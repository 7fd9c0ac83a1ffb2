#include "tests/ui/document/session_fixture.h"

#include "ui/document/clipboard.h"

using namespace yardcast;
using namespace yardcast::ui;
using namespace yardcast::ui::test;

class ClipboardTest : public QObject {
    Q_OBJECT

private slots:
    void partsGoFromOnePlanToAnother()
    {
        PlanDocument from;
        PlanDocument to;
        FileSession fromSession(from);
        FileSession toSession(to);
        QTemporaryDir folder;
        QVERIFY(fromSession.open(copyOfSample(folder, "grill-bench", "one.yardplan")).opened);
        QVERIFY(toSession.open(copyOfSample(folder, "grill-bench", "two.yardplan")).opened);
        QStringList ids;
        for (const PartPtr& part : from.plan()->parts) ids.append(QString::fromStdString(part->id));
        const auto data = partsToMime(*from.plan(), ids);
        QVERIFY(data != nullptr);
        QVERIFY(data->hasFormat("application/x-yardcast-parts"));
        QVERIFY(data->hasText());
        const std::vector<Part> parts = partsFromMime(data.get());
        QCOMPARE(int(parts.size()), int(ids.size()));
        const size_t before = to.plan()->parts.size();
        Ids made;
        to.apply("paste", [&](const Plan& plan) { return insertParts(plan, parts, {100.0, -100.0}, &made); });
        QCOMPARE(to.plan()->parts.size(), 2 * before);
        QCOMPARE(made.size(), before);
        for (size_t i = 0; i < made.size(); ++i) {
            const Part* pasted = findPart(*to.plan(), made[i]);
            QVERIFY(pasted != nullptr);
            const Part& original = *from.plan()->parts[i];
            QVERIFY(pasted->id != original.id);
            QCOMPARE(pasted->place.at.x, original.place.at.x + 100.0);
            QCOMPARE(pasted->place.at.y, original.place.at.y - 100.0);
            QCOMPARE(int(pasted->kind()), int(original.kind()));
        }
    }

    void throughATextEditorToo()
    {
        PlanDocument from;
        FileSession session(from);
        QTemporaryDir folder;
        QVERIFY(session.open(copyOfSample(folder, "corner-kitchen")).opened);
        const auto data = partsToMime(*from.plan(), {QString::fromStdString(from.plan()->parts.front()->id)});
        QMimeData text;
        text.setText("\n  " + data->text());
        const std::vector<Part> parts = partsFromMime(&text);
        QCOMPARE(int(parts.size()), 1);
        QVERIFY(parts.front() == *from.plan()->parts.front());
    }

    void otherTextIsNoPart()
    {
        QMimeData text;
        text.setText("two bags of cement");
        QVERIFY(partsFromMime(&text).empty());
        text.setText("{\"half\": ");
        QVERIFY(partsFromMime(&text).empty());
        text.setText("[1, 2, 3]");
        QVERIFY(partsFromMime(&text).empty());
        QVERIFY(partsFromMime(nullptr).empty());
        QVERIFY(partsToMime(Plan{}, {"C1"}) == nullptr);
    }
};

QTEST_GUILESS_MAIN(ClipboardTest)
#include "clipboard_test.moc"
