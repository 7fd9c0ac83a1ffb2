#include "ui/sheets/saw_rows.h"

#include <algorithm>
#include <cmath>
#include <utility>

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
    Rows(const SheetJob& job, const CutSheet& sheet, int firstStrip)
        : job_(job), sheet_(sheet), firstStrip_(firstStrip),
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
        case SawnInto::blank:
            return Sheets::tr("strip %1 for home, %2: %3")
                .arg(firstStrip_ + part.index)
                .arg(plainSize(size), blankNames(part.index));
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
    int firstStrip_;
    std::vector<SawnStep> steps_;
};

/// Numbers that follow each other as a range.
QString rangesOf(const std::vector<int>& numbers)
{
    QStringList words;
    for (std::size_t i = 0; i < numbers.size();) {
        std::size_t last = i;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
        words << (last == i ? QString::number(numbers[i]) : Sheets::tr("%1–%2").arg(numbers[i]).arg(numbers[last]));
        i = last + 1;
    }
    return words.join(QStringLiteral(", "));
}

/// Cuts at home of all sheets, gathered by the setting of the fence.
class Rips {
public:
    void add(const SheetJob& job, const CutSheet& sheet, int firstStrip)
    {
        const std::vector<SawnStep> steps = sawnSteps(job.list.stock[static_cast<std::size_t>(sheet.stock)].size, sheet);
        std::vector<int> rounds(steps.size(), 0);
        for (std::size_t i = 0; i < steps.size(); ++i) {
            const SawnStep& step = steps[i];
            if (!step.atHome) continue;
            for (const SawnPart& part : {step.low, step.high}) {
                if (part.into != SawnInto::further) continue;
                // The saw turns the other way for it: another round.
                const auto next = static_cast<std::size_t>(part.index);
                rounds[next] = rounds[i] + (steps[next].run == step.run ? 0 : 1);
            }
            const int strip = firstStrip + stripOf(sheet, step);
            Group& group = groupOf(rounds[i], step);
            group.row.count += sheet.times;
            if (group.from.empty() || group.from.back().first != strip) group.from.push_back({strip, {}});
            group.from.back().second.push_back(static_cast<int>(i) + 1);
            addPart(group.gives, job, sheet, step.low, steps, step.run);
            if (step.high.into == SawnInto::piece) group.leaves << nameOf(job, sheet, step.high.index);
        }
    }

    std::vector<RipRow> take()
    {
        std::stable_sort(groups_.begin(), groups_.end(), [](const Group& a, const Group& b) {
            if (a.row.round != b.row.round) return a.row.round < b.row.round;
            if (a.row.fenceMm != b.row.fenceMm) return a.row.fenceMm > b.row.fenceMm;
            return a.row.longMm > b.row.longMm;
        });
        std::vector<RipRow> rows;
        for (Group& group : groups_) {
            QStringList from;
            for (const auto& [strip, cuts] : group.from) from << Sheets::tr("%1 (%2)").arg(strip).arg(rangesOf(cuts));
            group.row.from = from.join(QStringLiteral(", "));
            group.row.gives = countedNames(group.gives);
            group.row.leaves = countedNames(group.leaves);
            rows.push_back(std::move(group.row));
        }
        return rows;
    }

private:
    struct Group {
        RipRow row;
        std::vector<std::pair<int, std::vector<int>>> from;
        QStringList gives;
        QStringList leaves;
    };

    static int stripOf(const CutSheet& sheet, const SawnStep& step)
    {
        constexpr double kSlackMm = 0.01;
        for (std::size_t b = 0; b < sheet.blanks.size(); ++b) {
            const SheetArea& blank = sheet.blanks[b];
            if (step.cut.at.x >= blank.at.x - kSlackMm && step.cut.at.y >= blank.at.y - kSlackMm
                && step.cut.at.x + step.cut.size.width <= blank.at.x + blank.size.width + kSlackMm
                && step.cut.at.y + step.cut.size.depth <= blank.at.y + blank.size.depth + kSlackMm)
                return static_cast<int>(b);
        }
        return -1;
    }

    Group& groupOf(int round, const SawnStep& step)
    {
        constexpr double kSameMm = 0.05;
        const double longMm = step.run == SawRun::alongY ? step.cut.size.depth : step.cut.size.width;
        const auto same = std::find_if(groups_.begin(), groups_.end(), [&](const Group& group) {
            return group.row.round == round && std::abs(group.row.fenceMm - step.atMm) < kSameMm
                && std::abs(group.row.longMm - longMm) < kSameMm;
        });
        if (same != groups_.end()) return *same;
        Group group;
        group.row.round = round;
        group.row.fenceMm = step.atMm;
        group.row.longMm = longMm;
        groups_.push_back(std::move(group));
        return groups_.back();
    }

    static void addPart(QStringList& names, const SheetJob& job, const CutSheet& sheet, const SawnPart& part,
                        const std::vector<SawnStep>& steps, SawRun run)
    {
        if (part.into == SawnInto::piece) {
            names << nameOf(job, sheet, part.index);
        } else if (part.into == SawnInto::further && steps[static_cast<std::size_t>(part.index)].run != run) {
            names << Sheets::tr("%1, cut on below").arg(plainSize(part.area.size));
        }
    }

    std::vector<Group> groups_;
};

}  // namespace

QString plainSize(Size size) { return Sheets::tr("%1 × %2").arg(plain(size.width), plain(size.depth)); }

std::vector<SawRow> sawRows(const SheetJob& job, const CutSheet& sheet, bool atHome, int firstStrip)
{
    return Rows(job, sheet, firstStrip).make(atHome);
}

std::vector<RipRow> ripRows(const SheetCuts& cuts)
{
    Rips rips;
    int firstStrip = 1;
    for (const CutSheet& sheet : cuts.plan.sheets) {
        rips.add(cuts.job, sheet, firstStrip);
        firstStrip += static_cast<int>(sheet.blanks.size());
    }
    return rips.take();
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
