#include "ui/panels/saving_rows.h"

#include <algorithm>

#include <QCoreApplication>

#include "core/purchase/mould_sharing.h"
#include "ui/panels/counted.h"
#include "ui/wording/board_times.h"
#include "ui/wording/figures.h"
#include "ui/wording/readiness_names.h"

namespace yardcast::ui {

namespace {

struct Savings {
    Q_DECLARE_TR_FUNCTIONS(Savings)
};

QString none() { return QString(QChar(0x2013)); }

QString listed(const std::vector<std::string>& ids)
{
    QStringList names;
    for (const std::string& id : ids) names << QString::fromStdString(id);
    return names.join(QStringLiteral(", "));
}

QString mouldsText(int count) { return counted(count, Savings::tr("1 mould"), Savings::tr("%1 moulds")); }

/// "12, +3"
QString daysText(int days, int more)
{
    if (more == 0) return QString::number(days);
    return Savings::tr("%1 (%2)", "days, and how many more than now")
        .arg(days)
        .arg(more > 0 ? QLatin1Char('+') + QString::number(more) : QChar(0x2212) + QString::number(-more));
}

QString moneyOr(const std::optional<std::int64_t>& minor, const std::string& currency)
{
    return minor ? moneyText(*minor, currency) : none();
}

class Rows {
public:
    explicit Rows(const Plan& plan) : plan_(plan) {}

    void heading(const QString& key, const QString& text)
    {
        rows_.push_back({{.key = key, .kind = Line::Kind::heading, .cells = {text}}, {}, {}});
    }
    void line(Line line, std::optional<Remedy> remedy, std::vector<std::string> castings)
    {
        line.source = static_cast<int>(rows_.size());
        rows_.push_back({std::move(line), std::move(remedy), std::move(castings)});
    }

    void addGroup(const SharingGroup& group, int days, int usual)
    {
        const QString key = listed(group.castings);
        heading(QStringLiteral("group/") + key, Savings::tr("Same shape: %1").arg(key));
        line({.key = QStringLiteral("now/") + key,
              .cells = {Savings::tr("now: %1").arg(mouldsText(group.mouldsNow)), none(), QString::number(days), none()},
              .details = {Savings::tr("each lies %1 in its mould").arg(waitText(group.waitH))}},
             {}, group.castings);
        for (const SharingOption& option : group.options) {
            QStringList details;
            for (const std::vector<std::string>& mould : option.moulds) {
                if (mould.size() > 1) details << listed(mould).replace(QStringLiteral(", "), Savings::tr(", then "));
            }
            Line one{.key = QStringLiteral("option/%1/%2").arg(key).arg(option.moulds.size()),
                     .cells = {mouldsText(static_cast<int>(option.moulds.size())),
                               moneyOr(option.savesMinor, plan_.currency), daysText(option.days, option.moreDays),
                               QString::number(option.uses)},
                     .details = details};
            if (option.worn) {
                one.mark = Severity::note;
                one.details << Savings::tr("worn: a face like this usually stands %1").arg(usual);
            }
            line(std::move(one), optionRemedy(plan_, group, option), group.castings);
        }
    }

    void addOldBoards(const LaterBoards& later, int days)
    {
        heading(QStringLiteral("later"), Savings::tr("Old bases, if you saw them up"));
        std::vector<std::string> all;
        int uses = 1;
        for (const LaterCut& cut : later.cuts) {
            all.push_back(cut.casting);
            uses = std::max(uses, cut.uses + 1);
        }
        line({.key = QStringLiteral("later/all"),
              .cells = {counted(later.boardCount(), Savings::tr("1 board"), Savings::tr("%1 boards")),
                        moneyOr(later.savesMinor, plan_.currency), QString::number(days), QString::number(uses)},
              .details = {counted(later.baseCount(), Savings::tr("out of 1 base"), Savings::tr("out of %1 bases")),
                          Savings::tr("the shopping list buys all of them")}},
             {}, all);
        for (const LaterCut& cut : later.cuts) {
            QStringList details;
            for (const LaterPiece& piece : cut.pieces) details << laterPieceText(piece);
            line({.key = QStringLiteral("later/%1/%2/%3")
                             .arg(QString::fromStdString(cut.board))
                             .arg(cut.day)
                             .arg(rows_.size()),
                  .cells = {Savings::tr("Day %1: base %2").arg(cut.day).arg(QString::fromStdString(cut.board)), {},
                            {}, QString::number(cut.uses + 1)},
                  .details = details},
                 {}, {cut.casting});
        }
    }

    std::vector<SavingRow> take() { return std::move(rows_); }

private:
    const Plan& plan_;
    std::vector<SavingRow> rows_;
};

}  // namespace

QList<LineColumn> savingColumns()
{
    return {{Savings::tr("Build"), false},
            {Savings::tr("saves"), true},
            {Savings::tr("days\n(more)"), true},
            {Savings::tr("uses\nof one"), true}};
}

std::vector<SavingRow> savingRows(const Plan& plan, const MouldSavings& savings)
{
    Rows rows(plan);
    const int usual = usualUses(assumptionsOf(plan).mouldSurface);
    for (const SharingGroup& group : savings.sharing.groups) rows.addGroup(group, savings.sharing.days, usual);
    if (!savings.later.cuts.empty()) rows.addOldBoards(savings.later, savings.sharing.days);
    if (savings.sharing.groups.empty() && savings.later.cuts.empty()) {
        rows.heading(QStringLiteral("none"), Savings::tr("No two castings are alike, and no base is free in time."));
    }
    return rows.take();
}

}  // namespace yardcast::ui
