#include "ui/sheets/saw_rows.h"

#include <algorithm>
#include <map>

#include <QStringList>

#include "core/cutting/sheet_parts.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

QString plain(double mm) { return shortNumberText(mm, 1); }

QString nameOf(const SheetJob& job, const CutSheet& sheet, int placed)
{
    const int piece = sheet.pieces[static_cast<std::size_t>(placed)].piece;
    return QString::fromStdString(job.pieces[static_cast<std::size_t>(piece)].name);
}

/// "2 × C1-4, C1-5".
QString countedNames(const QStringList& names)
{
    QStringList parts;
    for (qsizetype i = 0; i < names.size();) {
        qsizetype same = i;
        while (same < names.size() && names[same] == names[i]) ++same;
        const qsizetype count = same - i;
        parts << (count == 1 ? names[i] : Sheets::tr("%1 × %2").arg(count).arg(names[i]));
        i = same;
    }
    return parts.join(QStringLiteral(", "));
}

class Rows {
public:
    Rows(const SheetJob& job, const CutSheet& sheet)
        : job_(job), sheet_(sheet),
          steps_(sawnSteps(job.list.stock[static_cast<std::size_t>(sheet.stock)].size, sheet))
    {
    }

    std::vector<SawRow> make(bool atHome) const
    {
        std::vector<SawRow> rows;
        for (std::size_t i = 0; i < steps_.size();) {
            std::size_t last = i;
            while (isRepeated(last)) ++last;
            if (steps_[i].atHome == atHome) rows.push_back(rowOf(i, last));
            i = last + 1;
        }
        return rows;
    }

private:
    /// Whether the next cut takes as much off what this one leaves, and both give a piece.
    bool isRepeated(std::size_t i) const
    {
        if (i + 1 >= steps_.size()) return false;
        const SawnStep& one = steps_[i];
        const SawnStep& two = steps_[i + 1];
        return one.high.into == SawnInto::further && one.high.index == static_cast<int>(i) + 1
            && one.atMm == two.atMm && one.run == two.run && one.atHome == two.atHome
            && one.low.into == SawnInto::piece && two.low.into == SawnInto::piece;
    }

    SawRow rowOf(std::size_t first, std::size_t last) const
    {
        const SawnStep& step = steps_[first];
        SawRow row;
        row.number = first == last ? QString::number(first + 1) : Sheets::tr("%1–%2").arg(first + 1).arg(last + 1);
        row.onSaw = plainSize(step.cut.size);
        const double whole = step.run == SawRun::alongY ? step.cut.size.width : step.cut.size.depth;
        row.measureOff = first == last ? Sheets::tr("%1 of %2").arg(plain(step.atMm), plain(whole))
                                       : Sheets::tr("%1 × %2 of %3").arg(last - first + 1).arg(plain(step.atMm), plain(whole));
        if (first == last) {
            row.gives = words(step.low);
        } else {
            QStringList names;
            for (std::size_t i = first; i <= last; ++i) names << nameOf(job_, sheet_, steps_[i].low.index);
            row.gives = countedNames(names);
        }
        row.leaves = words(steps_[last].high);
        return row;
    }

    QString words(const SawnPart& part) const
    {
        const Size size = part.area.size;
        switch (part.into) {
        case SawnInto::piece: return nameOf(job_, sheet_, part.index);
        case SawnInto::further:
            return Sheets::tr("%1, on at cut %2").arg(plainSize(size)).arg(part.index + 1);
        case SawnInto::blank: return Sheets::tr("%1 for home: %2").arg(plainSize(size), blankNames(part.index));
        case SawnInto::remainder: return Sheets::tr("left over %1").arg(plainSize(size));
        case SawnInto::waste: break;
        }
        constexpr double kSliverMm = 0.05;
        return std::min(size.width, size.depth) < kSliverMm ? QStringLiteral("–")
                                                           : Sheets::tr("waste %1").arg(plainSize(size));
    }

    QString blankNames(int blank) const
    {
        QStringList names;
        for (std::size_t p = 0; p < sheet_.pieces.size(); ++p) {
            if (sheet_.pieces[p].blank == blank) names << nameOf(job_, sheet_, static_cast<int>(p));
        }
        return countedNames(names);
    }

    const SheetJob& job_;
    const CutSheet& sheet_;
    std::vector<SawnStep> steps_;
};

}  // namespace

QString plainSize(Size size) { return Sheets::tr("%1 × %2").arg(plain(size.width), plain(size.depth)); }

std::vector<SawRow> sawRows(const SheetJob& job, const CutSheet& sheet, bool atHome)
{
    return Rows(job, sheet).make(atHome);
}

std::vector<SawnPieceRow> sawnPieces(const CutSheet& sheet)
{
    std::vector<SawnPieceRow> rows;
    for (const PlacedPiece& placed : sheet.pieces) {
        const bool atHome = placed.blank >= 0;
        const auto found = std::find_if(rows.begin(), rows.end(), [&](const SawnPieceRow& row) {
            return row.piece == placed.piece && row.atHome == atHome;
        });
        if (found == rows.end()) {
            rows.push_back({placed.piece, 1, atHome});
        } else {
            ++found->count;
        }
    }
    return rows;
}

}  // namespace yardcast::ui
