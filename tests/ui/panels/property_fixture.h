#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QUndoStack>

#include "panel_fixture.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/property_editor.h"

namespace yardcast::ui {

/// The editor on a plan, and hands to use it with.
struct EditorFixture : PanelFixture {
    PropertyEditor editor{document, selection, live};

    explicit EditorFixture(const Plan& plan) : PanelFixture(plan)
    {
        editor.resize(320, 700);
        editor.show();
        (void)QTest::qWaitForWindowExposed(&editor);
        editor.activateWindow();
    }
    const Plan& plan() const { return *document.plan(); }
    int undoCount() const { return document.undoStack()->count(); }
    QString undoText() const { return document.undoStack()->undoText(); }

    Field& field(const char* path)
    {
        Field* found = editor.field(QLatin1String(path));
        if (!found) qFatal("no field %s", path);
        return *found;
    }
    QLineEdit& line(const char* path)
    {
        auto* found = field(path).findChild<QLineEdit*>();
        if (!found) qFatal("field %s is not typed in", path);
        return *found;
    }
    QComboBox& box(const char* path) { return *field(path).findChild<QComboBox*>(); }
    ListField& list(const char* path) { return dynamic_cast<ListField&>(field(path)); }

    /// As a person does it: select all that is there, type, Enter.
    void type(const char* path, const QString& text, bool enter = true)
    {
        QLineEdit& edit = line(path);
        edit.setFocus();
        edit.selectAll();
        QTest::keyClicks(&edit, text);
        if (text.isEmpty()) QTest::keyClick(&edit, Qt::Key_Delete);
        if (enter) QTest::keyClick(&edit, Qt::Key_Return);
    }
    void tick(const char* path) { field(path).findChild<QCheckBox*>()->click(); }
    void choose(const char* path, int index)
    {
        box(path).setCurrentIndex(index);
        emit box(path).activated(index);
    }
    void press(const QString& button) { editor.sheet().findChild<QAbstractButton*>(button)->click(); }
};

}  // namespace yardcast::ui
