#pragma once

#include <optional>
#include <string>

#include <QWidget>

#include "ui/drawing/mould_painter.h"

namespace yardcast::ui {

/// The picture of one mould as one stands in front of it, as large as there is room; or the casting as it stands.
class MouldView : public QWidget {
    Q_OBJECT

public:
    enum class Shows { mould, standing };
    explicit MouldView(Shows shows, QWidget* parent = nullptr);

    void setSubject(const std::optional<MouldSubject>& subject);
    /// The part that is chosen in the list, by its name; empty for none.
    void setMarked(const std::string& part);
    const std::string& marked() const { return marked_; }
    /// The middle of a part in this widget; null where it is not there.
    QPoint placeOf(const std::string& part) const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

signals:
    /// A piece of the picture was clicked.
    void partClicked(const QString& name);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

private:
    /// How the drawing is brought into a box of this size.
    struct Fit {
        PaintStyle style;
        QRectF bounds;
    };
    QRectF boundsAt(const PaintStyle& style) const;
    Fit fitIn(QSizeF room) const;
    MouldLook look() const;

    Shows shows_;
    std::optional<MouldSubject> subject_;
    std::string marked_;
};

}  // namespace yardcast::ui
