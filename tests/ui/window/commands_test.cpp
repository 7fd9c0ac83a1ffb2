#include <QtTest>

#include <QAction>
#include <QLineEdit>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>
#include <QSpinBox>

#include "ui/look/icons.h"
#include "ui/window/commands.h"
#include "ui/window/field_keys.h"
#include "ui/window/menus.h"

using namespace yardcast::ui;

namespace {

/// Every action that can be reached from the menu bar.
void collect(const QMenu& menu, QList<QAction*>& found)
{
    for (QAction* action : menu.actions()) {
        found.append(action);
        if (action->menu()) collect(*action->menu(), found);
    }
}

QChar mnemonicOf(const QString& text)
{
    const qsizetype at = QString(text).replace("&&", "__").indexOf('&');
    return at < 0 ? QChar() : text.at(at + 1).toLower();
}

void checkMnemonics(const QString& where, const QMenu& menu)
{
    QHash<QChar, QString> taken;
    for (QAction* action : menu.actions()) {
        if (action->isSeparator()) continue;
        const QChar letter = mnemonicOf(action->text());
        QVERIFY2(!letter.isNull(), qPrintable(where + ": no underlined letter in " + action->text()));
        QVERIFY2(!taken.contains(letter), qPrintable(where + ": " + action->text() + " and " + taken.value(letter)));
        taken.insert(letter, action->text());
        if (action->menu()) checkMnemonics(where + " > " + action->text(), *action->menu());
    }
}

}  // namespace

class CommandsTest : public QObject {
    Q_OBJECT

private slots:
    void everyCommandHasTextIconAndKey()
    {
        QSet<int> ids;
        for (const CommandSpec& spec : commandTable()) {
            QVERIFY2(!ids.contains(int(spec.id)), spec.text);
            ids.insert(int(spec.id));
            QVERIFY2(!textOf(spec).isEmpty(), "a command without a text");
            QVERIFY2(hasIcon(spec.icon), spec.icon);
            QVERIFY2(!keysOf(spec).isEmpty(), spec.text);
            for (const QKeySequence& key : keysOf(spec)) {
                QVERIFY2(!key.isEmpty() && key[0].key() != Qt::Key_unknown, spec.keys);
            }
            QVERIFY2(*spec.section != '\0', spec.text);
        }
        // The ids run from newWindow to showAbout without a hole: none was forgotten in the table.
        QCOMPARE(int(ids.size()), int(Command::showAbout) + 1);
    }

    void keysAreUnique()
    {
        QHash<QString, const char*> taken;
        for (const CommandSpec& spec : commandTable()) {
            for (const QKeySequence& key : keysOf(spec)) {
                const QString text = key.toString(QKeySequence::PortableText);
                QVERIFY2(!taken.contains(text),
                         qPrintable(text + ": " + spec.text + " and " + taken.value(text)));
                taken.insert(text, spec.text);
            }
        }
    }

    void keysLeaveTheHandsOfTheSheetAlone()
    {
        // Arrows nudge, digits type a size, Space pans, Escape undoes the gesture, Return ends a field.
        for (const CommandSpec& spec : commandTable()) {
            for (const QKeySequence& key : keysOf(spec)) {
                if (key[0].keyboardModifiers() & (Qt::ControlModifier | Qt::AltModifier)) continue;
                const int code = key[0].key();
                QVERIFY2(code < Qt::Key_Left || code > Qt::Key_Down, spec.keys);
                QVERIFY2(code < Qt::Key_0 || code > Qt::Key_9, spec.keys);
                for (const int used : {Qt::Key_Space, Qt::Key_Escape, Qt::Key_Return, Qt::Key_Enter, Qt::Key_Tab}) {
                    QVERIFY2(code != used, spec.keys);
                }
            }
        }
    }

    void everyCommandHasAPlaceInAMenu()
    {
        QMainWindow window;
        Commands commands(window);
        QMenu samples;
        QMenu recent;
        samples.addAction("x");
        recent.addAction("x");
        buildMenus(window, commands, {{Command::newFromSample, &samples}, {Command::openRecent, &recent}});
        QList<QAction*> found;
        for (QAction* top : window.menuBar()->actions()) {
            QVERIFY(top->menu() != nullptr);
            found.append(top);
            collect(*top->menu(), found);
        }
        for (const CommandSpec& spec : commandTable()) {
            const bool isList = spec.id == Command::newFromSample || spec.id == Command::openRecent;
            const bool there = isList ? found.contains(samples.menuAction()) && found.contains(recent.menuAction())
                                      : found.contains(commands[spec.id]);
            QVERIFY2(there, spec.text);
        }
    }

    void underlinedLettersAreUniqueInEachMenu()
    {
        QMainWindow window;
        Commands commands(window);
        QMenu samples;
        QMenu recent;
        buildMenus(window, commands, {{Command::newFromSample, &samples}, {Command::openRecent, &recent}});
        QHash<QChar, QString> taken;
        for (QAction* top : window.menuBar()->actions()) {
            const QChar letter = mnemonicOf(top->text());
            QVERIFY2(!taken.contains(letter), qPrintable(top->text()));
            taken.insert(letter, top->text());
            checkMnemonics(top->text(), *top->menu());
        }
    }

    void aFieldKeepsTheKeysItTypesWith()
    {
        QMainWindow window;
        Commands commands(window);
        FieldKeys keys;
        qApp->installEventFilter(&keys);
        auto* field = new QLineEdit(&window);
        window.setCentralWidget(field);
        window.show();
        QVERIFY(QTest::qWaitForWindowActive(&window));
        field->setFocus();
        QStringList fired;
        for (const CommandSpec& spec : commandTable()) {
            connect(commands[spec.id], &QAction::triggered, this, [&fired, &spec] { fired.append(spec.text); });
        }
        QTest::keyClicks(field, "cssk 12Pk");
        QCOMPARE(field->text(), QString("cssk 12Pk"));
        QTest::keyClick(field, Qt::Key_Z, Qt::ControlModifier);
        QVERIFY(field->text() != "cssk 12Pk");
        field->setText("abc");
        field->setCursorPosition(0);
        QTest::keyClick(field, Qt::Key_Delete);
        QCOMPARE(field->text(), QString("bc"));
        QTest::keyClick(field, Qt::Key_Backspace);
        QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
        QCOMPARE(field->selectedText(), QString("bc"));
        QTest::keyClick(field, Qt::Key_X, Qt::ControlModifier);
        QVERIFY(field->text().isEmpty());
        QTest::keyClick(field, Qt::Key_PageUp);
        QTest::keyClick(field, Qt::Key_Home);
        QVERIFY2(fired.isEmpty(), qPrintable(fired.join(", ")));
        QTest::keyClick(field, Qt::Key_S, Qt::ControlModifier);
        QCOMPARE(fired.size(), 1);
        field->clearFocus();
        window.setFocus();
        QTest::keyClick(&window, Qt::Key_C);
        QCOMPARE(fired.size(), 2);
        QCOMPARE(fired.last(), QString("&Counter"));
    }
};

QTEST_MAIN(CommandsTest)
#include "commands_test.moc"
