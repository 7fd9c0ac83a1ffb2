#include "ui/panels/line_model.h"

#include <utility>

#include <QHash>
#include <QSet>

namespace yardcast::ui {

namespace {
/// Views lay out their rows after every row that comes or goes; from here on it is cheaper to begin anew.
constexpr int kMostSteps = 24;
}  // namespace

LineModel::LineModel(QList<LineColumn> columns, QObject* parent)
    : QAbstractTableModel(parent), columns_(std::move(columns))
{
}

void LineModel::setTitle(int column, const QString& title)
{
    if (columns_[column].title == title) return;
    columns_[column].title = title;
    emit headerDataChanged(Qt::Horizontal, column, column);
    emit linesChanged();
}

int LineModel::rowOf(const QString& key) const
{
    for (qsizetype row = 0; row < lines_.size(); ++row) {
        if (lines_[row].key == key) return static_cast<int>(row);
    }
    return -1;
}

void LineModel::sayChanged(const QList<bool>& changed)
{
    // Run by run: a view adds up all its rows at every word of change.
    for (qsizetype row = 0; row < changed.size(); ++row) {
        if (!changed[row]) continue;
        const qsizetype first = row;
        while (row + 1 < changed.size() && changed[row + 1]) ++row;
        emit dataChanged(index(static_cast<int>(first), 0), index(static_cast<int>(row), columnCount() - 1));
    }
}

int LineModel::stepsTo(const QList<Line>& lines, const QSet<QString>& kept) const
{
    int steps = 0;
    QHash<QString, qsizetype> before;
    before.reserve(lines_.size());
    for (const Line& line : lines_) {
        if (!kept.contains(line.key)) ++steps;
        before.insert(line.key, before.size());
    }
    qsizetype last = -1;
    for (const Line& line : lines) {
        const qsizetype at = before.value(line.key, -1);
        if (at < 0 || at < last) ++steps;  // new, or its place in the order has changed
        last = qMax(last, at);
    }
    return steps;
}

void LineModel::setLines(QList<Line> lines)
{
    if (lines == lines_) return;
    QSet<QString> kept;
    kept.reserve(lines.size());
    for (const Line& line : std::as_const(lines)) kept.insert(line.key);

    if (stepsTo(lines, kept) > kMostSteps) {
        beginResetModel();
        lines_ = std::move(lines);
        pointedAt_.clear();
        endResetModel();
        emit linesChanged();
        return;
    }

    QSet<QString> there;
    for (int row = static_cast<int>(lines_.size()) - 1; row >= 0; --row) {
        if (kept.contains(lines_[row].key)) {
            there.insert(lines_[row].key);
            continue;
        }
        int first = row;
        while (first > 0 && !kept.contains(lines_[first - 1].key)) --first;
        beginRemoveRows({}, first, row);
        lines_.remove(first, row - first + 1);
        endRemoveRows();
        row = first;
    }

    const auto insertRun = [&](int at) {
        int end = at;
        while (end < lines.size() && !there.contains(lines[end].key)) ++end;
        beginInsertRows({}, at, end - 1);
        for (int row = at; row < end; ++row) {
            lines_.insert(row, lines[row]);
            there.insert(lines[row].key);
        }
        endInsertRows();
    };
    QList<bool> changed(lines.size(), false);
    for (int row = 0; row < lines.size(); ++row) {
        if (row < lines_.size() && lines_[row].key == lines[row].key) {
            if (lines_[row] == lines[row]) continue;
            lines_[row] = lines[row];
            changed[row] = true;
            continue;
        }
        if (!there.contains(lines[row].key)) {
            insertRun(row);
            continue;
        }
        // It is further down: its place in the order has changed.
        const int from = rowOf(lines[row].key);
        beginMoveRows({}, from, from, {}, row);
        lines_.move(from, row);
        endMoveRows();
        --row;
    }
    sayChanged(changed);
    emit linesChanged();
}

void LineModel::setPointedAt(const std::function<bool(const Line&)>& isPointedAt)
{
    QList<bool> next(lines_.size(), false);
    for (qsizetype row = 0; row < lines_.size(); ++row) next[row] = isPointedAt && isPointedAt(lines_[row]);
    const QList<bool> before = std::exchange(pointedAt_, next);
    for (qsizetype row = 0; row < next.size(); ++row) {
        const bool was = row < before.size() && before[row];
        if (was == next[row]) continue;
        const int at = static_cast<int>(row);
        emit dataChanged(index(at, 0), index(at, columnCount() - 1), {Qt::BackgroundRole});
    }
}

int LineModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

int LineModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(columns_.size());
}

QVariant LineModel::data(const QModelIndex& index, int role) const
{
    const Line& line = lines_[index.row()];
    switch (role) {
    case Qt::DisplayRole: return line.cells.value(index.column());
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(Qt::AlignVCenter |
                                   (columns_[index.column()].isFigures ? Qt::AlignRight : Qt::AlignLeft));
    case Qt::ToolTipRole:
        return index.column() == 0 && !line.tip.isEmpty() ? line.tip : line.cells.value(index.column());
    case Qt::AccessibleTextRole: {
        QString text = line.cells.value(index.column());
        if (index.column() == 0 && !line.details.isEmpty()) {
            text += QStringLiteral(", ") + line.details.join(QStringLiteral(", "));
        }
        return text;
    }
    default: return {};
    }
}

QVariant LineModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::DisplayRole) return columns_[section].title;
    if (role == Qt::TextAlignmentRole) {
        return QVariant::fromValue(Qt::AlignBottom | (columns_[section].isFigures ? Qt::AlignRight : Qt::AlignLeft));
    }
    return {};
}

Qt::ItemFlags LineModel::flags(const QModelIndex& index) const
{
    if (!index.isValid()) return {};
    const bool heading = lines_[index.row()].kind == Line::Kind::heading;
    return heading ? Qt::ItemFlags(Qt::ItemIsEnabled)
                   : Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
}

}  // namespace yardcast::ui
