#pragma once

#include <functional>
#include <optional>

#include <QAbstractTableModel>
#include <QList>
#include <QSet>
#include <QString>
#include <QStringList>

#include "core/plan/finding.h"

namespace yardcast::ui {

/// A row of a live table, made of plain text so that two states of it can be compared.
struct Line {
    enum class Kind {
        line,
        heading,  ///< the name of what follows, across all columns
        total
    };
    QString key{};                    ///< the same row in the next state has the same key; unique in the table
    Kind kind = Kind::line;
    QStringList cells{};               ///< one a column; the first is the name
    QStringList details{};             ///< under the name, in second ink; broken between, never within
    QString tip{};                    ///< more of the name, when the pointer rests on it
    std::optional<Severity> mark{};    ///< sign before the name
    std::optional<double> share{};     ///< bar in the last column, 1 is the limit
    int source = -1;                  ///< index in the list it was made from

    friend bool operator==(const Line&, const Line&) = default;
};

struct LineColumn {
    QString title;         ///< with the unit; may hold a line break
    bool isFigures = true; ///< set right; never elided
};

/// Rows that are brought from one state to the next by the least change: what stays keeps its selection, its place
/// on the screen and its pixels. Only where much comes and goes the model is reset; views then find their line again
/// by its key.
class LineModel : public QAbstractTableModel {
    Q_OBJECT

public:
    explicit LineModel(QList<LineColumn> columns, QObject* parent = nullptr);

    const QList<LineColumn>& columns() const { return columns_; }
    void setTitle(int column, const QString& title);
    /// Names are sentences: broken to the width instead of elided.
    void setWrapsNames(bool wraps) { wrapsNames_ = wraps; }
    bool wrapsNames() const { return wrapsNames_; }
    const QList<Line>& lines() const { return lines_; }
    const Line& line(int row) const { return lines_[row]; }
    int rowOf(const QString& key) const;
    void setLines(QList<Line> lines);

    /// Rows that the part under the pointer, or a chosen part, has a share in.
    void setPointedAt(const std::function<bool(const Line&)>& isPointedAt);
    bool isPointedAt(int row) const { return row < pointedAt_.size() && pointedAt_[row]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

signals:
    /// After `setLines` has changed anything.
    void linesChanged();

private:
    void sayChanged(const QList<bool>& changed);
    int stepsTo(const QList<Line>& lines, const QSet<QString>& kept) const;

    QList<LineColumn> columns_;
    QList<Line> lines_;
    QList<bool> pointedAt_;
    bool wrapsNames_ = false;
};

}  // namespace yardcast::ui
