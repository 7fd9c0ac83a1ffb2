#pragma once

#include <QTreeView>

namespace yardcast::ui {

class LineModel;

/// A flat table for a narrow dock: the name takes what is left and is elided; figures are set right and never are; it
/// has no sideways scroll. A line becomes current by click or arrow key.
class LineView : public QTreeView {
    Q_OBJECT

public:
    explicit LineView(LineModel* model, QWidget* parent = nullptr);

    LineModel& lineModel() const { return *model_; }
    /// Row of the current line, -1 without one.
    int currentRow() const;
    int rowHeightAt(int row) const;
    /// Of the whole line, in coordinates of the screen.
    QRect globalRectOf(int row) const;

    /// Least room that is left to the name, px.
    static constexpr int kLeastNamePx = 76;

signals:
    /// -1 when no line is current any more.
    void currentLineChanged(int row);
    /// Clicked, or Enter.
    void lineChosen(int row);
    /// Double click, right button, or Space: how do its figures come about?
    void lineAsked(int row);
    void focusLeft();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void drawBranches(QPainter* painter, const QRect& rect, const QModelIndex& index) const override;
    void drawRow(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    void shareOutWidth();
    void measure();

    LineModel* model_;
    QList<int> figureWidths_;
    bool measured_ = false;
    QString keptKey_;
    int keptScroll_ = 0;
};

}  // namespace yardcast::ui
