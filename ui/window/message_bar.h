#pragma once

#include <functional>
#include <vector>

#include <QString>
#include <QStringList>
#include <QWidget>

class QVBoxLayout;

namespace yardcast::ui {

/// An answer to a message: a word on a button and what it does. The message goes away with any answer.
struct Answer {
    QString text;
    std::function<void()> act;
};

/// Something to be told without stopping the hand.
struct Message {
    enum class Weight { note, caution, stop };
    QString id;               ///< one message of an id at a time; a new one takes the place of the old
    Weight weight = Weight::note;
    QString text;
    QStringList details;      ///< shown below, each on its own line, scrolling when there are many
    std::vector<Answer> answers;
    std::function<void()> onDismiss;  ///< the cross was clicked
};

/// The messages of the window, above the drawing, newest below. Never modal, never takes the focus.
class MessageBar : public QWidget {
    Q_OBJECT

public:
    explicit MessageBar(QWidget* parent = nullptr);

    void show(const Message& message);
    void dismiss(const QString& id);
    bool isShown(const QString& id) const;
    QStringList shown() const;

private:
    class Strip;
    Strip* find(const QString& id) const;

    QVBoxLayout* layout_;
};

}  // namespace yardcast::ui
