#include "ui/sheets/sheet_table.h"

#include <algorithm>

#include <QPainter>

#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"

namespace yardcast::ui {

namespace {

constexpr double kPad = 1.3;
constexpr double kAbove = 0.8;
constexpr double kBelow = 0.9;

Type cellType(const SheetTable& table, const SheetColumn& column, bool bold)
{
    Type type;
    type.sizeMm = table.sizeMm;
    type.bold = bold;
    type.align = column.isFigures ? Qt::AlignRight : Qt::AlignLeft;
    return type;
}

Type noteType(const SheetTable& table)
{
    Type type;
    type.sizeMm = 0.86 * table.sizeMm;
    return type;
}

Type headType(const SheetTable& table, const SheetColumn& column)
{
    Type type = cellType(table, column, false);
    type.sizeMm = 0.9 * table.sizeMm;
    return type;
}

QStringList linesOf(const SheetTable& table, const SheetColumn& column, const QString& text, bool bold)
{
    if (column.isFigures) return {text};
    return wrapped(text, column.widthMm - 2.0 * kPad, cellType(table, column, bold));
}

QStringList noteLines(const SheetTable& table, const SheetRow& row)
{
    return row.note.isEmpty() ? QStringList() : wrapped(row.note, table.widthMm() - 2.0 * kPad, noteType(table));
}

double heightOf(qsizetype lines, const Type& type)
{
    return lineHeightMm(type) * static_cast<double>(lines);
}

}  // namespace

double SheetTable::widthMm() const
{
    double width = 0.0;
    for (const SheetColumn& column : columns) width += column.widthMm;
    return width;
}

double SheetTable::headHeightMm() const
{
    double height = 0.0;
    for (const SheetColumn& column : columns) {
        const Type type = headType(*this, column);
        height = std::max(height, heightOf(wrapped(column.title, column.widthMm - 2.0 * kPad, type).size(), type));
    }
    return height + kAbove + kBelow;
}

double SheetTable::rowHeightMm(const SheetRow& row) const
{
    double height = 0.0;
    for (std::size_t i = 0; i < columns.size() && static_cast<qsizetype>(i) < row.cells.size(); ++i) {
        const QStringList lines = linesOf(*this, columns[i], row.cells[static_cast<qsizetype>(i)], row.bold);
        height = std::max(height, heightOf(lines.size(), cellType(*this, columns[i], row.bold)));
    }
    return height + heightOf(noteLines(*this, row).size(), noteType(*this)) + kAbove + kBelow;
}

double SheetTable::heightMm() const
{
    double height = headHeightMm();
    for (const SheetRow& row : rows) height += rowHeightMm(row);
    return height;
}

SheetTable SheetTable::scaledTo(double width) const
{
    SheetTable table = *this;
    const double factor = widthMm() > 0.0 ? width / widthMm() : 1.0;
    for (SheetColumn& column : table.columns) column.widthMm *= factor;
    return table;
}

std::vector<SheetTable> SheetTable::split(double firstHeightMm, double heightMm) const
{
    SheetTable empty = *this;
    empty.rows.clear();
    std::vector<SheetTable> tables{empty};
    double room = firstHeightMm - headHeightMm();
    const SheetRow* head = nullptr;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const SheetRow& row = rows[i];
        const double height = rowHeightMm(row);
        double wanted = height;
        if (row.headsNext && i + 1 < rows.size()) wanted += rowHeightMm(rows[i + 1]);
        if (wanted > room && (!tables.back().rows.empty() || tables.size() == 1)) {
            tables.push_back(empty);
            room = heightMm - headHeightMm();
            if (head && !row.headsNext) {
                SheetRow again = *head;
                if (!again.cells.empty()) again.cells.front() = Sheets::tr("%1, continued").arg(again.cells.front());
                for (qsizetype cell = 1; cell < again.cells.size(); ++cell) again.cells[cell].clear();
                again.note.clear();
                room -= rowHeightMm(again);
                tables.back().rows.push_back(std::move(again));
            }
        }
        if (row.headsNext) head = &row;
        tables.back().rows.push_back(row);
        room -= height;
    }
    return tables;
}

double paintTable(QPainter& painter, QPointF topLeft, const SheetTable& table)
{
    double y = topLeft.y();
    const double width = table.widthMm();
    const auto box = [&](double x, double columnMm, double heightMm) {
        return QRectF(x + kPad, y + kAbove, columnMm - 2.0 * kPad, heightMm);
    };
    double x = topLeft.x();
    const double head = table.headHeightMm();
    for (const SheetColumn& column : table.columns) {
        paintWrapped(painter, box(x, column.widthMm, head), column.title, headType(table, column));
        x += column.widthMm;
    }
    y += head;
    painter.setPen(QPen(Qt::black, 0.35));
    painter.drawLine(QPointF(topLeft.x(), y), QPointF(topLeft.x() + width, y));
    for (const SheetRow& row : table.rows) {
        x = topLeft.x();
        double lowest = y;
        for (std::size_t i = 0; i < table.columns.size() && static_cast<qsizetype>(i) < row.cells.size(); ++i) {
            const SheetColumn& column = table.columns[i];
            const QString& text = row.cells[static_cast<qsizetype>(i)];
            Type type = cellType(table, column, row.bold);
            if (column.isFigures) type = fittedType(text, column.widthMm - 2.0 * kPad, type);
            const QStringList lines = linesOf(table, column, text, row.bold);
            lowest = std::max(lowest, y + paintLines(painter, box(x, column.widthMm, 0.0), lines, type));
            x += column.widthMm;
        }
        if (!row.note.isEmpty()) {
            paintLines(painter, QRectF(topLeft.x() + kPad, lowest + kAbove, width - 2.0 * kPad, 0.0),
                       noteLines(table, row), noteType(table));
        }
        y += table.rowHeightMm(row);
        painter.setPen(QPen(QColor("#8C8C8C"), 0.2));
        painter.drawLine(QPointF(topLeft.x(), y), QPointF(topLeft.x() + width, y));
    }
    return y - topLeft.y();
}

}  // namespace yardcast::ui
