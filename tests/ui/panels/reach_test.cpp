#include <set>

#include <QAbstractButton>
#include <QApplication>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLabel>
#include <QTest>

#include "full_plan.h"
#include "property_fixture.h"
#include "ui/look/number_text.h"
#include "ui/look/theme.h"
#include "ui/panels/fields/edges_field.h"
#include "ui/panels/line_view.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

/// Every key of the file format (resources/yardplan.schema.json) as the path of its field: lists stand for their
/// elements, points and sizes for themselves.
class SchemaKeys {
public:
    SchemaKeys()
    {
        QFile file(QStringLiteral(YARDCAST_SOURCE_DIR "/resources/yardplan.schema.json"));
        if (!file.open(QIODevice::ReadOnly)) qFatal("no schema");
        const QJsonObject root = QJsonDocument::fromJson(file.readAll()).object();
        defs_ = root[QLatin1String("$defs")].toObject();
        const QJsonObject properties = root[QLatin1String("properties")].toObject();
        for (const QString& key : properties.keys()) {
            if (key == QLatin1String("yardplan") || key == QLatin1String("parts")) continue;
            walk(key == QLatin1String("site") ? key : QStringLiteral("plan.") + key, properties[key].toObject());
        }
        for (const char* kind : {"counter", "support", "panel", "front", "appliance"}) {
            walk(QLatin1String(kind), defs_[QLatin1String(kind)].toObject());
        }
    }
    QStringList keys() const { return QStringList(keys_.begin(), keys_.end()); }

private:
    void walk(const QString& path, QJsonObject schema)
    {
        const QString ref = schema[QLatin1String("$ref")].toString().section(QLatin1Char('/'), -1);
        if (ref == QLatin1String("point") || ref == QLatin1String("size")) {
            keys_.insert(path);
            return;
        }
        if (!ref.isEmpty()) schema = defs_[ref].toObject();
        if (schema.contains(QLatin1String("items"))) {
            const QJsonObject items = schema[QLatin1String("items")].toObject();
            if (items.contains(QLatin1String("$ref"))) {
                walk(path, items);
            } else {
                keys_.insert(path);  // a list of plain numbers: the edges of a rim
            }
            return;
        }
        const QJsonObject properties = schema[QLatin1String("properties")].toObject();
        if (properties.isEmpty()) {
            keys_.insert(path);
            return;
        }
        for (const QString& key : properties.keys()) {
            if (key == QLatin1String("kind") && properties[key].toObject().contains(QLatin1String("const"))) continue;
            const bool ofEveryPart = !path.contains(QLatin1Char('.')) && path != QLatin1String("site") &&
                                     QStringList({"id", "name", "at", "turn_deg"}).contains(key);
            walk((ofEveryPart ? QStringLiteral("part") : path) + QLatin1Char('.') + key, properties[key].toObject());
        }
    }

    QJsonObject defs_;
    std::set<QString> keys_;
};

void chooseTargets(EditorFixture& fixture, const std::function<void()>& look)
{
    fixture.selection.clear();
    look();
    for (const char* part : {"C1", "S1", "P1", "F1", "A1"}) {
        fixture.selection.setParts({QLatin1String(part)});
        look();
    }
    for (const char* cutout : {"K1", "K2"}) {
        fixture.selection.setCutout({QStringLiteral("C1"), QLatin1String(cutout)});
        look();
    }
    fixture.selection.setFixture(QStringLiteral("X1"));
    look();
}

}  // namespace

/// Nothing of the file format is out of reach, and whatever can be reached works and can be undone.
class ReachTest : public QObject {
    Q_OBJECT

private slots:
    void everyKeyOfTheFormatHasAField()
    {
        QSet<QString> there;
        // A mix is of bags or of a recipe, and the first one is shown.
        Plan ofRecipe = fullPlan();
        std::swap(ofRecipe.mixes.front(), ofRecipe.mixes.back());
        for (const Plan& plan : {fullPlan(), ofRecipe}) {
            EditorFixture fixture(plan);
            chooseTargets(fixture, [&] {
                for (const Field* field : fixture.editor.sheet().findChildren<Field*>()) {
                    if (!field->isThere()) continue;
                    const QString path = field->objectName();
                    // A field of "a.b.c" is within "a.b".
                    for (qsizetype dot = path.size(); dot > 0; dot = path.lastIndexOf(QLatin1Char('.'), dot - 1)) {
                        there.insert(path.left(dot));
                    }
                }
            });
        }
        // The card of the pour plan brings castings forward and back.
        there.insert(QStringLiteral("plan.pour.order"));
        const QStringList keys = SchemaKeys().keys();
        QVERIFY(keys.size() > 90);
        QStringList missing;
        for (const QString& key : keys) {
            if (!there.contains(key)) missing.append(key);
        }
        QVERIFY2(missing.isEmpty(), qPrintable(missing.join(QStringLiteral(", "))));
    }

    /// Types into, chooses and ticks every field once, and undoes it.
    void everyFieldChangesThePlanAndUndoes()
    {
        const Plan before = fullPlan();
        EditorFixture fixture(before);
        int changed = 0;
        const auto expectOneEdit = [&](const Field& field) {
            QVERIFY2(fixture.undoCount() == 1, qPrintable(field.objectName()));
            QVERIFY2(!(fixture.plan() == before), qPrintable(field.objectName()));
            QVERIFY2(!fixture.undoText().isEmpty(), qPrintable(field.objectName()));
            fixture.document.undoStack()->undo();
            QVERIFY2(fixture.plan() == before, qPrintable(field.objectName()));
            fixture.document.undoStack()->clear();
            ++changed;
        };
        const auto once = [&](Field& field) {
            if (auto* number = dynamic_cast<NumberField*>(&field)) {
                QLineEdit& edit = number->edit();
                const double value = parseNumber(edit.text()).value;
                for (const double candidate : {value + 1.0, value - 1.0, value * 0.5}) {
                    edit.setFocus();
                    edit.selectAll();
                    QTest::keyClicks(&edit, formatNumber(candidate).replace(QChar(0x2212), QLatin1Char('-')));
                    if (number->fault().isEmpty()) break;
                }
                QTest::keyClick(&edit, Qt::Key_Return);
                expectOneEdit(field);
            } else if (auto* choice = dynamic_cast<ChoiceField*>(&field)) {
                const int other = choice->box().currentIndex() == 0 ? choice->box().count() - 1 : 0;
                if (choice->box().count() < 2) return;
                emit choice->box().activated(other);
                expectOneEdit(field);
            } else if (auto* check = dynamic_cast<CheckField*>(&field)) {
                check->box().click();
                expectOneEdit(field);
            } else if (auto* edges = dynamic_cast<EdgesField*>(&field)) {
                edges->boxes()[2]->click();
                expectOneEdit(field);
            }
        };
        chooseTargets(fixture, [&] {
            // By name: what is changed may be built anew.
            QStringList names;
            for (const Field* field : fixture.editor.sheet().findChildren<Field*>()) {
                if (field->isThere()) names.append(field->objectName());
            }
            for (const QString& name : names) {
                Field* field = fixture.editor.field(name);
                QVERIFY2(field, qPrintable(name));
                once(*field);
            }
        });
        QVERIFY2(changed > 110, qPrintable(QString::number(changed)));
    }

    /// Every list can be added to and taken from, and each is one entry to undo.
    void everyListGrowsAndShrinks()
    {
        const Plan before = fullPlan();
        EditorFixture fixture(before);
        QSet<QString> lists;
        chooseTargets(fixture, [&] {
            QStringList names;
            for (const ListField* list : fixture.editor.sheet().findChildren<ListField*>()) {
                if (list->isThere()) names.append(list->objectName());
            }
            for (const QString& name : names) {
                const auto rows = [&] {
                    return static_cast<ListField*>(fixture.editor.field(name))->table().model()->rowCount();
                };
                const int count = rows();
                fixture.press(name + QStringLiteral("+"));
                QCOMPARE(rows(), count + 1);
                QCOMPARE(fixture.undoCount(), 1);
                // The new one is chosen, so that it can be filled in at once.
                QCOMPARE(static_cast<ListField*>(fixture.editor.field(name))->currentIndex(),
                         qMax(0, count > 0 ? 1 : 0));
                fixture.press(name + QStringLiteral("-"));
                QCOMPARE(rows(), count);
                QVERIFY2(fixture.plan() == before, qPrintable(name));
                while (fixture.document.undoStack()->canUndo()) fixture.document.undoStack()->undo();
                fixture.document.undoStack()->clear();
                lists.insert(name);
            }
        });
        for (const char* name : {"counter.outline", "counter.ribs", "counter.cutouts", "counter.joints",
                                 "counter.steel.bars", "counter.loads", "counter.lift.grips", "panel.steel.bars",
                                 "front.doors", "site.outline.corners", "site.fixtures", "plan.mixes",
                                 "plan.mixes.fibres", "plan.owned", "plan.prices", "plan.mould.offcuts", "plan.mould.shared"}) {
            QVERIFY2(lists.contains(QLatin1String(name)), name);
        }
    }

    /// From a plan without any of it, every optional thing can be made.
    void everythingOptionalCanBeMade()
    {
        Plan bare;
        Mix mix;
        mix.id = "worktop";
        bare.mixes = {mix};
        Counter counter;
        counter.outline = {{0, 0}, {900, 0}, {900, 600}, {0, 600}};
        counter.mix = "worktop";
        bare = addPart(bare, Part{"C1", std::nullopt, {}, counter, {}});
        bare = addPart(bare, Part{"S1", std::nullopt, {}, Support{}, {}});
        Front front;
        front.to = {900, 0};
        bare = addPart(bare, Part{"F1", std::nullopt, {}, front, {}});
        EditorFixture fixture(bare);
        for (const char* path :
             {"plan.mixer", "plan.budget", "plan.assumptions", "plan.mould", "site.ground", "site.outline"}) {
            fixture.tick(path);
        }
        QVERIFY(fixture.plan().mixer && fixture.plan().budget && fixture.plan().site.ground);
        QVERIFY(fixture.plan().assumptions && fixture.plan().moulding);
        QVERIFY(fixture.plan().site.outline->size() >= 3);
        fixture.selection.setParts({QStringLiteral("C1")});
        for (const char* path : {"counter.rim", "counter.filler", "counter.steel", "counter.lift", "counter.drip",
                                 "counter.rebate"}) {
            fixture.tick(path);
        }
        const auto& made = std::get<Counter>(findPart(fixture.plan(), "C1")->body);
        QVERIFY(made.rim && made.filler && made.steel && made.steel->mesh && made.lift);
        QVERIFY(made.drip && made.rebate);
        // Water drips off the front edge; a splash panel stands along the back.
        QCOMPARE(made.drip->edges, std::vector<int>{0});
        QCOMPARE(made.rebate->edges, std::vector<int>{2});
        fixture.selection.setParts({QStringLiteral("S1")});
        for (const char* path : {"support.core", "support.pads"}) fixture.tick(path);
        const auto& support = std::get<Support>(findPart(fixture.plan(), "S1")->body);
        QVERIFY(support.core && support.pads);
        fixture.selection.setParts({QStringLiteral("F1")});
        fixture.tick("front.measured");
        const auto& measured = std::get<Front>(findPart(fixture.plan(), "F1")->body).measured;
        QVERIFY(measured);
        QCOMPARE(measured->bottomMm, 900.0);  // begins as it is drawn
    }

    void everyFieldHasAName()
    {
        EditorFixture fixture(fullPlan());
        chooseTargets(fixture, [&] {
            for (Field* field : fixture.editor.sheet().findChildren<Field*>()) {
                if (!field->isThere() || dynamic_cast<ListField*>(field)) continue;
                const auto labels = field->findChildren<QLabel*>();
                const auto buddy = std::ranges::find_if(labels, [](const QLabel* l) { return l->buddy(); });
                QVERIFY2(buddy != labels.end(), qPrintable(field->objectName()));
                QVERIFY2(!(*buddy)->text().isEmpty(), qPrintable(field->objectName()));
                QVERIFY2(!(*buddy)->buddy()->accessibleName().isEmpty(), qPrintable(field->objectName()));
                QVERIFY2(!field->editName().isEmpty(), qPrintable(field->objectName()));
            }
        });
    }
};

int main(int argc, char** argv)
{
    QApplication application(argc, argv);
    Theme theme(application);
    ReachTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "reach_test.moc"
