#include "ui/panels/line_view.h"

#include <QContextMenuEvent>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>

#include "ui/look/theme.h"
#include "ui/panels/line_delegate.h"
#include "ui/panels/line_model.h"

namespace yardcast::ui {

LineView::LineView(LineModel* model, QWidget* parent) : QTreeView(parent), model_(model)
{
    model->setParent(this);
    setModel(model);
    setItemDelegate(new LineDelegate(*model, this));
    setRootIsDecorated(false);
    setIndentation(0);
    setItemsExpandable(false);
    setExpandsOnDoubleClick(false);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setAllColumnsShowFocus(true);
    setFrameShape(QFrame::NoFrame);
    setTabKeyNavigation(false);
    setMouseTracking(false);
    header()->setSectionsMovable(false);
    header()->setSectionsClickable(false);
    header()->setStretchLastSection(false);
    header()->setSectionResizeMode(QHeaderView::Fixed);
    header()->setMinimumSectionSize(kStepPx);
    connect(model, &LineModel::modelAboutToBeReset, this, [this] {
        keptKey_ = currentIndex().isValid() ? model_->line(currentIndex().row()).key : QString();
        keptScroll_ = verticalScrollBar()->value();
    });
    connect(model, &LineModel::modelReset, this, [this] {
        const int row = keptKey_.isEmpty() ? -1 : model_->rowOf(keptKey_);
        if (row >= 0) setCurrentIndex(model_->index(row, 0));
        verticalScrollBar()->setValue(keptScroll_);
    });
    connect(model, &LineModel::linesChanged, this, [this] {
        measured_ = false;
        shareOutWidth();
    });
}

int LineView::currentRow() const { return currentIndex().isValid() ? currentIndex().row() : -1; }

int LineView::rowHeightAt(int row) const { return rowHeight(model_->index(row, 0)); }

QRect LineView::globalRectOf(int row) const
{
    const QRect cell = visualRect(model_->index(row, 0));
    return {viewport()->mapToGlobal(QPoint(0, cell.top())), QSize(viewport()->width(), cell.height())};
}

void LineView::measure()
{
    constexpr int pad = 2 * kStepPx;
    const QFontMetrics figures(figureFont(font()));
    QFont bold = figureFont(font());
    bold.setWeight(QFont::DemiBold);
    const QFontMetrics totals(bold);
    const QFontMetrics titles(header()->font());
    const QList<LineColumn>& columns = model_->columns();
    figureWidths_ = QList<int>(columns.size(), 0);
    for (qsizetype column = 1; column < columns.size(); ++column) {
        int widest = titles.size(0, columns[column].title).width();
        for (const Line& line : model_->lines()) {
            if (line.kind == Line::Kind::heading) continue;
            const QFontMetrics& metrics = line.kind == Line::Kind::total ? totals : figures;
            widest = qMax(widest, metrics.horizontalAdvance(line.cells.value(column)));
        }
        figureWidths_[column] = widest + pad;
    }
    measured_ = true;
}

void LineView::shareOutWidth()
{
    if (!measured_) measure();
    int left = viewport()->width();
    for (qsizetype column = 1; column < figureWidths_.size(); ++column) {
        left -= figureWidths_[column];
        if (header()->sectionSize(static_cast<int>(column)) != figureWidths_[column]) {
            header()->resizeSection(static_cast<int>(column), figureWidths_[column]);
        }
    }
    if (header()->sectionSize(0) != qMax(kLeastNamePx, left)) header()->resizeSection(0, qMax(kLeastNamePx, left));
}

void LineView::resizeEvent(QResizeEvent* event)
{
    QTreeView::resizeEvent(event);
    shareOutWidth();
    // The details of a line may need more or fewer rows now.
    scheduleDelayedItemsLayout();
}

void LineView::changeEvent(QEvent* event)
{
    QTreeView::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) {
        measured_ = false;
        shareOutWidth();
    }
}

void LineView::focusOutEvent(QFocusEvent* event)
{
    QTreeView::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) emit focusLeft();
}

void LineView::keyPressEvent(QKeyEvent* event)
{
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && currentIndex().isValid()) {
        emit lineChosen(currentIndex().row());
        event->accept();
        return;
    }
    if (event->key() == Qt::Key_Space && currentIndex().isValid()) {
        emit lineAsked(currentIndex().row());
        event->accept();
        return;
    }
    QTreeView::keyPressEvent(event);
}

void LineView::mouseReleaseEvent(QMouseEvent* event)
{
    QTreeView::mouseReleaseEvent(event);
    const QModelIndex index = indexAt(event->position().toPoint());
    if (event->button() != Qt::LeftButton || !index.isValid()) return;
    if (index.flags().testFlag(Qt::ItemIsSelectable)) emit lineChosen(index.row());
}

void LineView::mouseDoubleClickEvent(QMouseEvent* event)
{
    const QModelIndex index = indexAt(event->position().toPoint());
    if (event->button() == Qt::LeftButton && index.isValid()) emit lineAsked(index.row());
}

void LineView::contextMenuEvent(QContextMenuEvent* event)
{
    const QModelIndex index =
        event->reason() == QContextMenuEvent::Keyboard ? currentIndex() : indexAt(event->pos());
    if (index.isValid()) emit lineAsked(index.row());
}

void LineView::currentChanged(const QModelIndex& current, const QModelIndex& previous)
{
    QTreeView::currentChanged(current, previous);
    if (current.row() == previous.row() && current.isValid() == previous.isValid()) return;
    emit currentLineChanged(current.isValid() ? current.row() : -1);
}

void LineView::drawBranches(QPainter*, const QRect&, const QModelIndex&) const {}

void LineView::drawRow(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const Ink ink = inkOf(palette());
    const QRect row(0, option.rect.top(), viewport()->width(), option.rect.height());
    const Line& line = model_->line(index.row());
    const bool current = selectionModel()->isSelected(index);
    const bool pointed = model_->isPointedAt(index.row());
    if (current || pointed) {
        painter->fillRect(row, mixed(ink.sheet, ink.chosen, current ? 0.20 : 0.10));
        painter->fillRect(QRect(0, row.top(), current && hasFocus() ? 3 : 2, row.height()),
                          current ? ink.chosen : ink.hover);
    }
    for (int column = 0; column < model_->columnCount(); ++column) {
        QStyleOptionViewItem cell = option;
        cell.rect = QRect(header()->sectionViewportPosition(column), row.top(), header()->sectionSize(column),
                          row.height());
        itemDelegate()->paint(painter, cell, model_->index(index.row(), column));
    }
    const bool strong = line.kind == Line::Kind::total;
    if (strong) painter->fillRect(QRect(0, row.top(), row.width(), 1), ink.pencil);
    painter->fillRect(QRect(0, row.bottom(), row.width(), 1), mixed(ink.sheet, ink.line, 0.6));
}

}  // namespace yardcast::ui
