#pragma once

#include <QApplication>
#include <QDir>
#include <QLineEdit>
#include <QMouseEvent>
#include <QSignalSpy>
#include <QTest>
#include <QUndoStack>

#include "core/io/plan_file.h"
#include "core/plan/edits.h"
#include "core/purchase/price_book.h"
#include "tests/ui/live/quick_strength.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/pointer_label.h"
#include "ui/canvas/sheet_view.h"
#include "ui/canvas/typed_size_field.h"
#include "ui/document/plan_document.h"
#include "ui/document/selection.h"
#include "ui/live/live_assessment.h"

namespace yardcast::ui {

/// One of the sample projects, by its file name.
inline Plan samplePlan(const std::string& name)
{
    const FileText file = readFile(std::string(YARDCAST_SOURCE_DIR "/sample-projects/") + name);
    if (!file.text) qFatal("no sample %s", name.c_str());
    PlanReading reading = readPlan(*file.text);
    if (!reading.plan) qFatal("sample %s cannot be read", name.c_str());
    return std::move(*reading.plan);
}

/// A shown canvas with what it stands on, and a hand: points are plan mm (along and height in elevation).
class CanvasFixture {
public:
    explicit CanvasFixture(const Plan& plan = {}, double pixelsPerMm = 0.25, Point centre = {1000, 500})
    {
        document.reset(plan);
        canvas.resize(1100, 760);
        canvas.show();
        QApplication::setActiveWindow(&canvas);
        if (!QTest::qWaitForWindowExposed(&canvas)) qFatal("no window");
        canvas.setFocus();
        canvas.setViewState({QPointF(centre.x, -centre.y), pixelsPerMm});
        QCoreApplication::processEvents();
    }

    SheetView& view() { return *canvas.findChild<SheetView*>(); }
    QPointF px(Point at) { return view().toView({at.x, -at.y}); }
    Point at(QPointF viewPx)
    {
        const QPointF drawing = view().toDrawing(viewPx);
        return {drawing.x(), -drawing.y()};
    }
    TypedSizeField& field() { return *canvas.findChild<TypedSizeField*>(); }
    /// With plain spaces: figures and units are joined by others.
    QString pointerText() { return canvas.findChild<PointerLabel*>()->text().replace(QChar(0xa0), u' '); }

    void send(QEvent::Type type, Point where, Qt::MouseButton button, Qt::MouseButtons buttons,
              Qt::KeyboardModifiers modifiers = {})
    {
        QWidget* viewport = view().viewport();
        const QPointF local = px(where);
        QMouseEvent event(type, local, viewport->mapToGlobal(local), button, buttons, modifiers);
        QApplication::sendEvent(viewport, &event);
    }
    void press(Point where, Qt::KeyboardModifiers modifiers = {})
    {
        send(QEvent::MouseMove, where, Qt::NoButton, Qt::NoButton, modifiers);
        send(QEvent::MouseButtonPress, where, Qt::LeftButton, Qt::LeftButton, modifiers);
    }
    void moveTo(Point where, Qt::KeyboardModifiers modifiers = {})
    {
        send(QEvent::MouseMove, where, Qt::NoButton, Qt::LeftButton, modifiers);
    }
    void hover(Point where, Qt::KeyboardModifiers modifiers = {})
    {
        send(QEvent::MouseMove, where, Qt::NoButton, Qt::NoButton, modifiers);
    }
    void release(Point where, Qt::KeyboardModifiers modifiers = {})
    {
        send(QEvent::MouseButtonRelease, where, Qt::LeftButton, Qt::NoButton, modifiers);
        QCoreApplication::processEvents();
    }
    void click(Point where, Qt::KeyboardModifiers modifiers = {})
    {
        press(where, modifiers);
        release(where, modifiers);
    }
    void doubleClick(Point where)
    {
        click(where);
        send(QEvent::MouseButtonDblClick, where, Qt::LeftButton, Qt::LeftButton);
        release(where);
    }
    void dragHalf(Point from, Point to, Qt::KeyboardModifiers modifiers = {})
    {
        press(from, modifiers);
        for (const double t : {0.2, 0.6, 1.0}) moveTo(from + (to - from) * t, modifiers);
    }
    void drag(Point from, Point to, Qt::KeyboardModifiers modifiers = {})
    {
        dragHalf(from, to, modifiers);
        release(to, modifiers);
    }
    void key(int key, Qt::KeyboardModifiers modifiers = {})
    {
        QTest::keyClick(&canvas, static_cast<Qt::Key>(key), modifiers);
        QCoreApplication::processEvents();
    }
    /// Digits at the canvas open the field; the rest goes into it.
    void type(const QString& text)
    {
        QTest::keyClicks(&canvas, text.left(1));
        QVERIFY2(field().isOpen(), "a digit opens no field");
        typeInField(text.mid(1));
    }
    void typeInField(const QString& text)
    {
        QLineEdit* edit = field().findChild<QLineEdit*>();
        QTest::keyClicks(edit, text);
        QTest::keyClick(edit, Qt::Key_Return);
        QCoreApplication::processEvents();
    }
    /// Repainted and assessed.
    void settle()
    {
        QVERIFY(QTest::qWaitFor([this] { return live.assessment() && live.isCurrent(); }, 20000));
        if (canvas.stage() == Stage::strength) {
            const StrengthState wanted = document.isPreviewing() ? StrengthState::draft : StrengthState::working;
            QVERIFY(QTest::qWaitFor([&] { return live.strengthState() >= wanted; }, 20000));
        }
        QCoreApplication::processEvents();
        canvas.grab();
    }

    const Plan& plan() const { return *document.plan(); }
    const Plan& committed() const { return *document.committed(); }
    const Part& part(const char* id) const
    {
        const Part* found = findPart(*document.plan(), id);
        if (!found) qFatal("no part %s", id);
        return *found;
    }
    template <class Body>
    const Body& body(const char* id) const
    {
        return std::get<Body>(part(id).body);
    }
    QString undoText() const { return document.undoStack()->undoText(); }
    int undoCount() const { return document.undoStack()->index(); }

    PlanDocument document;
    Selection selection{document};
    LiveAssessment live{document, exampleBook(), nullptr, QuickStrength()};
    Canvas canvas{document, selection, live};
};

/// Saves the picture where YARDCAST_PICTURES names a folder.
inline void keepPicture(QWidget& widget, const QString& name)
{
    const QString folder = qEnvironmentVariable("YARDCAST_PICTURES");
    if (!folder.isEmpty()) widget.grab().save(QDir(folder).filePath(name + QStringLiteral(".png")));
}

}  // namespace yardcast::ui
