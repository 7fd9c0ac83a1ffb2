#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QScrollBar>
#include <QTest>

#include "panel_fixture.h"
#include "ui/look/theme.h"
#include "ui/panels/concrete_card.h"
#include "ui/panels/findings_card.h"
#include "ui/panels/lifting_card.h"
#include "ui/panels/line_view.h"
#include "ui/panels/money_card.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/reinforcement_card.h"
#include "ui/panels/property_editor.h"
#include "ui/panels/shopping_card.h"

using namespace yardcast;
using namespace yardcast::ui;

/// Every panel at the widths of a dock, light and dark: nothing may be wider than the dock, and no table may need to be
/// scrolled sideways. With YARDCAST_PICTURES set the pictures are kept for looking at.
class PicturesTest : public QObject {
    Q_OBJECT

private:
    template <class Card>
    void card(PanelFixture& fixture, const char* name, bool opened)
    {
        for (const int width : {300, 360}) {
            for (const Appearance appearance : {Appearance::light, Appearance::dark}) {
                qApp->findChild<Theme*>()->setAppearance(appearance);
                Card panel(fixture.document, fixture.selection, fixture.live);
                panel.setOpened(opened);
                panel.resize(width, opened ? 420 : 150);
                panel.show();
                QVERIFY(QTest::qWaitForWindowExposed(&panel));
                QCoreApplication::processEvents();
                QVERIFY(panel.minimumSizeHint().width() <= 300);
                for (LineView* view : panel.template findChildren<LineView*>()) {
                    if (!view->isVisible()) continue;
                    QCOMPARE(view->horizontalScrollBar()->maximum(), 0);
                }
                const QString picture = QStringLiteral("%1-%2-%3-%4")
                                            .arg(QLatin1String(name))
                                            .arg(width)
                                            .arg(QLatin1String(opened ? "open" : "closed"))
                                            .arg(QLatin1String(appearance == Appearance::dark ? "dark" : "light"));
                keepPicture(panel.grab(), picture);
            }
        }
    }

private slots:
    void properties()
    {
        PanelFixture fixture(samplePlan("two-level-bar.yardplan"));
        const auto look = [&](const char* name) {
            for (const Appearance appearance : {Appearance::light, Appearance::dark}) {
                qApp->findChild<Theme*>()->setAppearance(appearance);
                PropertyEditor editor(fixture.document, fixture.selection, fixture.live);
                editor.resize(300, 700);
                editor.show();
                QVERIFY(QTest::qWaitForWindowExposed(&editor));
                QCoreApplication::processEvents();
                QVERIFY2(editor.sheet().minimumSizeHint().width() <= 300 - 12, name);
                // All of it, however long.
                editor.resize(300, editor.sheet().sizeHint().height() + 60);
                QCoreApplication::processEvents();
                keepPicture(editor.grab(), QStringLiteral("properties-%1-%2")
                                               .arg(QLatin1String(name),
                                                    QLatin1String(appearance == Appearance::dark ? "dark" : "light")));
            }
        };
        look("plan");
        fixture.selection.setParts({QStringLiteral("C3")});
        look("counter");
        fixture.selection.setCutout({QStringLiteral("C3"), QStringLiteral("K1")});
        look("cutout");
        fixture.selection.setParts({QStringLiteral("S1")});
        look("support");
        fixture.selection.setParts({QStringLiteral("P1")});
        look("panel");
        fixture.selection.setParts({QStringLiteral("F1")});
        look("front");
        fixture.selection.setParts({QStringLiteral("G1")});
        look("appliance");
        fixture.selection.setParts({QStringLiteral("C1a"), QStringLiteral("C2")});
        look("several");
        fixture.selection.setFixture(QStringLiteral("gas"));
        look("fixture");
    }

    /// What is said below a field can be read, whatever the light.
    void messages()
    {
        PanelFixture fixture(samplePlan("two-level-bar.yardplan"));
        fixture.selection.setCutout({QStringLiteral("C3"), QStringLiteral("K1")});
        PropertyEditor editor(fixture.document, fixture.selection, fixture.live);
        editor.resize(300, 420);
        editor.show();
        QVERIFY(QTest::qWaitForWindowExposed(&editor));
        const auto type = [&](const char* path, const char* text) {
            auto* edit = editor.field(QLatin1String(path))->findChild<QLineEdit*>();
            edit->setFocus();
            edit->selectAll();
            QTest::keyClicks(edit, QLatin1String(text));
        };
        type("counter.cutouts.diameter_mm", "38o");
        type("counter.cutouts.centre.x", "180");
        for (const Appearance appearance : {Appearance::light, Appearance::dark}) {
            qApp->findChild<Theme*>()->setAppearance(appearance);
            QCoreApplication::processEvents();
            int shown = 0;
            for (const QLabel* label : editor.sheet().findChildren<QLabel*>()) {
                if (!label->isVisible() || label->buddy()) continue;
                const QColor text = label->palette().color(label->foregroundRole());
                QVERIFY2(contrastRatio(text, editor.palette().color(QPalette::Window)) >= 4.5,
                         qPrintable(label->text()));
                ++shown;
            }
            QVERIFY(shown >= 2);
            keepPicture(editor.grab(), appearance == Appearance::dark ? QStringLiteral("messages-dark")
                                                                      : QStringLiteral("messages-light"));
        }
    }

    void cards()
    {
        PanelFixture fixture(samplePlan("two-level-bar.yardplan"));
        for (const bool opened : {false, true}) {
            card<ConcreteCard>(fixture, "concrete", opened);
            card<ReinforcementCard>(fixture, "reinforcement", opened);
            card<LiftingCard>(fixture, "lifting", opened);
            card<ShoppingCard>(fixture, "shopping", opened);
            card<MoneyCard>(fixture, "money", opened);
            card<FindingsCard>(fixture, "findings", opened);
        }
    }
};

int main(int argc, char** argv)
{
    QApplication application(argc, argv);
    Theme theme(application);
    PicturesTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "pictures_test.moc"
