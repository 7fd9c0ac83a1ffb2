#pragma once

#include <vector>

#include <QRectF>
#include <QString>
#include <QStringList>

class QPainter;

namespace yardcast::ui {

/// A table on paper: words are wrapped, figures set smaller where they must be; nothing is cut.
struct SheetColumn {
    QString title;          ///< with the unit
    double widthMm = 20.0;
    bool isFigures = false; ///< set right, on one line
};

struct SheetRow {
    QStringList cells;
    QString note;           ///< across all columns under the cells, smaller; empty for none
    bool bold = false;
    bool headsNext = false; ///< a name of what follows: never last on a page, said again on the next

    friend bool operator==(const SheetRow&, const SheetRow&) = default;
};

struct SheetTable {
    std::vector<SheetColumn> columns;
    std::vector<SheetRow> rows;
    double sizeMm = 3.1;    ///< of the type

    double widthMm() const;
    double headHeightMm() const;
    double rowHeightMm(const SheetRow& row) const;
    double heightMm() const;
    /// The columns made wider or narrower alike.
    SheetTable scaledTo(double widthMm) const;
    /// The same head over so many rows as fit the height each. Only the first may be without rows, where its room holds
    /// none.
    std::vector<SheetTable> split(double firstHeightMm, double heightMm) const;
};

/// Paints down from the box's top left corner; returns the height.
double paintTable(QPainter& painter, QPointF topLeft, const SheetTable& table);

}  // namespace yardcast::ui
