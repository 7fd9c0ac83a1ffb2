#include "app/cli_text_table.h"

#include <algorithm>

namespace yardcast::cli {

QString TextTable::text(const QString& indent) const
{
    std::vector<qsizetype> widths;
    for (const QStringList& row : rows_) {
        if (widths.size() < static_cast<std::size_t>(row.size())) widths.resize(static_cast<std::size_t>(row.size()));
        for (qsizetype i = 0; i < row.size(); ++i) {
            auto& width = widths[static_cast<std::size_t>(i)];
            width = std::max(width, row[i].size());
        }
    }
    QString text;
    for (const QStringList& row : rows_) {
        QString line = indent;
        for (qsizetype i = 0; i < row.size(); ++i) {
            const qsizetype width = widths[static_cast<std::size_t>(i)];
            const bool right = i < alignment_.size() && alignment_[i] == QLatin1Char('r');
            line += right ? row[i].rightJustified(width) : row[i].leftJustified(width);
            if (i + 1 < row.size()) line += QStringLiteral("  ");
        }
        while (line.endsWith(QLatin1Char(' '))) line.chop(1);
        text += line + QLatin1Char('\n');
    }
    return text;
}

}  // namespace yardcast::cli
