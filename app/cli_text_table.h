#pragma once

#include <vector>

#include <QString>
#include <QStringList>

namespace yardcast::cli {

/// Rows of cells in aligned columns, two spaces apart; columns whose mark is 'r' are flush right.
class TextTable {
public:
    explicit TextTable(const QString& alignment) : alignment_(alignment) {}

    void add(const QStringList& cells) { rows_.push_back(cells); }
    bool isEmpty() const { return rows_.empty(); }
    QString text(const QString& indent = QStringLiteral("  ")) const;

private:
    QString alignment_;
    std::vector<QStringList> rows_;
};

}  // namespace yardcast::cli
