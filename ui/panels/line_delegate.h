#pragma once

#include <QFont>
#include <QHash>
#include <QStyledItemDelegate>

#include "ui/panels/line_model.h"

namespace yardcast::ui {

/// Draws lines without the detour over style items, because tables are redrawn while a part is dragged.
class LineDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    LineDelegate(const LineModel& model, QObject* parent);

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    bool helpEvent(QHelpEvent* event, QAbstractItemView* view, const QStyleOptionViewItem& option,
                   const QModelIndex& index) override;

    /// Details of a line broken to the width, as they are drawn.
    static QStringList flow(const QStringList& details, const QFontMetrics& metrics, int widthPx);

private:
    int detailWidth(const QWidget* view) const;
    int nameHeight(const QFont& font, const Line& line, const QWidget* view) const;
    int nameRoom(const Line& line, const QWidget* view) const;
    QStringList wrapped(const QString& text, const QFont& font, int widthPx) const;

    const LineModel& model_;
    // Hundreds of sentences are laid out anew when their figures change; their words are mostly the same.
    mutable QHash<QString, int> wordWidths_;
    mutable QFont wordFont_;
};

}  // namespace yardcast::ui
