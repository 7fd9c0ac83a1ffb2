#pragma once

#include <QKeySequence>
#include <QWidget>

namespace yardcast::ui {

/// MIME type of a drag from the tray; the data is one word: "counter", "support", "panel", "front", "appliance",
/// "sink", "hob", "tap", "drain", "opening", "water", "waste", "power", "gas", "wall", "tree" or "door".
inline constexpr char kTrayMime[] = "application/x-yardcast-part-kind";

/// What can be drawn, as pictures with words and keys: to be dragged onto the sheet, or clicked to draw it there.
class PartsTray : public QWidget {
    Q_OBJECT

public:
    explicit PartsTray(QWidget* parent = nullptr);

    QStringList words() const;
    /// The key shown beside the word; the window's commands own the keys themselves.
    void setKey(const QString& word, const QKeySequence& key);

signals:
    /// Clicked: drawing is to begin.
    void drawingAsked(const QString& word);

protected:
    void changeEvent(QEvent* event) override;

private:
    void loadIcons();
};

}  // namespace yardcast::ui
