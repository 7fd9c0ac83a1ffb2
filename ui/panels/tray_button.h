#pragma once

#include <QAbstractButton>
#include <QKeySequence>

namespace yardcast::ui {

/// One thing of the tray: picture, word and key; without room only the picture. A drag carries its word.
class TrayButton : public QAbstractButton {
    Q_OBJECT

public:
    TrayButton(const QString& word, const QString& text, QWidget* parent);

    const QString& word() const { return word_; }
    void setKey(const QKeySequence& key);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QString word_;
    QString key_;
    QPoint pressedAt_;
};

}  // namespace yardcast::ui
