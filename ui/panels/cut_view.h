#pragma once

#include <QWidget>

#include "core/purchase/cut_lists.h"

namespace yardcast::ui {

struct PaintStyle;

/// The picture of one sheet, or of all lengths of one kind, in a card.
class CutView : public QWidget {
    Q_OBJECT

public:
    explicit CutView(QWidget* parent = nullptr);

    void showSheet(SheetCutsPtr cuts, int sheet);
    void showBars(BarCutsPtr cuts);
    void clear();

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QRectF bounds(const PaintStyle& style) const;
    /// mm of material a pixel, so that all of it finds room.
    double mmPerPixel(QSizeF roomPx) const;
    void changed(const QString& words);

    SheetCutsPtr sheets_;
    BarCutsPtr bars_;
    int sheet_ = 0;
};

}  // namespace yardcast::ui
