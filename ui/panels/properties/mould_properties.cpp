#include <QCoreApplication>

#include "ui/look/number_text.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

QString path(const char* key) { return QStringLiteral("plan.mould.") + QLatin1String(key); }

void addBuilding(FieldColumn& column, const Scope<Moulding>& content)
{
    column.length(path("board_mm"), tr("Board"), content.member([](auto& m) { return &m.boardMm; }),
                  within({}, kBoardLimits))
        .setHint(tr("Thickness as measured, not as named: every board's length follows from it."));
    column.choice(path("sides"), tr("Sides"), content.member([](auto& m) { return &m.sides; }),
                  fixedOptions({tr("stand on the base"), tr("stand around the base")}));
    column.choice(path("edge"), tr("Edges of the face"), content.member([](auto& m) { return &m.edge; }),
                  fixedOptions({tr("rounded with silicone"), tr("chamfered with a strip"), tr("sharp")}));
    column.length(path("edge_mm"), tr("Radius or leg"), content.member([](auto& m) { return &m.edgeMm; }),
                  within({}, kEdgeLimits));
    column.choice(path("former"), tr("Formers of"), content.member([](auto& m) { return &m.former; }),
                  fixedOptions({tr("board"), tr("foam")}));
    column.number(path("draft_deg"), tr("Draft"), content.member([](auto& m) { return &m.draftDeg; }),
                  within(tr("°"), kDraftLimits))
        .setHint(tr("Formers are narrower where they leave the casting, so that they come out."));
    column.length(path("tolerance_mm"), tr("Board tolerance"), content.member([](auto& m) { return &m.toleranceMm; }),
                  within({}, kToleranceLimits))
        .setHint(tr("A sawn board may be so much longer or shorter."));
    column.length(path("bow_mm"), tr("Sides may bow"), content.member([](auto& m) { return &m.bowMm; }),
                  within({}, kBowLimits))
        .setHint(tr("Outwards between two brackets, under the fresh concrete."));
    column.length(path("bracket_mm"), tr("Brackets every"), content.member([](auto& m) { return &m.bracketMm; }),
                  optional(within({}, kBracketLimits), tr("by the bow")));
}

void addSawing(FieldColumn& column, const Scope<Moulding>& content)
{
    column.length(path("saw_mm"), tr("Saw cut"), content.member([](auto& m) { return &m.sawMm; }),
                  within({}, kSawLimits))
        .setHint(tr("Width that each cut of the store's panel saw takes away."));
    column.length(path("trim_mm"), tr("Trimmed off"), content.member([](auto& m) { return &m.trimMm; }),
                  within({}, kTrimLimits))
        .setHint(tr("All around a sheet before it is used."));
    column.length(path("least_strip_mm"), tr("Narrowest strip"),
                  content.member([](auto& m) { return &m.leastStripMm; }), within({}, kLeastStripLimits))
        .setHint(tr("That the store cuts; what is narrower is ripped at home."));
}

void addOffcuts(PropertySheet& sheet, const Scope<Moulding>& content)
{
    const Scope<std::vector<Offcut>> offcuts = content.member([](auto& m) { return &m.offcuts; });
    sheet.group(tr("Boards at hand"))
        .list(path("offcuts"),
              {tr("Used before a sheet is bought"), tr("Add a board"), tr("Remove the board"),
               tr("Boards that are already there are used first.")},
              {{tr("Size\nmm"), false}, {tr("thick\nmm"), true}, {tr("pieces"), true}},
              listAccess<Offcut>(
                  offcuts,
                  [](const Offcut& o, int) {
                      return QStringList{tr("%1 × %2").arg(formatNumber(o.size.width, 0), formatNumber(o.size.depth, 0)),
                                         formatNumber(o.thicknessMm, 1), QString::number(o.count)};
                  },
                  [](const Plan& plan) { return Offcut{{600.0, 400.0}, mouldingOf(plan).boardMm, 1, {}}; }),
              [offcuts](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  const Scope<Offcut> one = elementOf(offcuts, index);
                  addSizeFields(form, path("offcuts.size"), one.member([](auto& o) { return &o.size; }));
                  form.length(path("offcuts.thickness_mm"), tr("Thickness"),
                              one.member([](auto& o) { return &o.thicknessMm; }), within({}, kBoardLimits));
                  form.number(path("offcuts.count"), tr("Pieces"), one.member([](auto& o) { return &o.count; }),
                              rules({}, 1, 1000, 0));
              });
}

/// Ids parted by commas or spaces.
Binding<QString> bindIds(const Scope<std::vector<std::string>>& ids)
{
    return bindAs<QString>(
        ids,
        [](const std::vector<std::string>& value) {
            QStringList words;
            for (const std::string& id : value) words.append(QString::fromStdString(id));
            return words.join(QStringLiteral(", "));
        },
        [](std::vector<std::string>& target, const QString& text) {
            QString spaced = text;
            spaced.replace(QLatin1Char(','), QLatin1Char(' ')).replace(QLatin1Char(';'), QLatin1Char(' '));
            target.clear();
            for (const QString& id : spaced.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
                target.push_back(id.toStdString());
            }
        });
}

void addShared(PropertySheet& sheet, const Scope<Moulding>& content)
{
    const Scope<std::vector<SharedMould>> shared = content.member([](auto& m) { return &m.shared; });
    sheet.group(tr("Shared moulds"))
        .list(path("shared"),
              {tr("One mould, one casting after the other"), tr("Share a mould"), tr("Share it no more"),
               tr("Castings of the same shape and the same hand may come out of one mould, one after the other: less "
                  "board, more days.")},
              {{tr("Castings in their order"), false}},
              listAccess<SharedMould>(
                  shared, [](const SharedMould& s, int) {
                      QStringList words;
                      for (const std::string& id : s.castings) words.append(QString::fromStdString(id));
                      return QStringList{words.isEmpty() ? tr("none yet") : words.join(tr(", then "))};
                  },
                  [](const Plan&) { return SharedMould(); }),
              [shared](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  TextRules text;
                  text.emptyText = tr("such as S1, S2");
                  form.textBound(path("shared.castings"), tr("Castings"),
                                 bindIds(elementOf(shared, index).member([](auto& s) { return &s.castings; })), text);
              });
}

}  // namespace

void describeMoulding(PropertySheet& sheet)
{
    const Scope<std::optional<Moulding>> own = planScope().member([](auto& p) { return &p.moulding; });
    const Scope<Moulding> content = contentOf(own);
    FieldColumn& column = sheet.group(tr("Moulds"));
    column.check(QStringLiteral("plan.mould"), tr("Moulds"), tr("their own way"), bindPresence(own, Moulding()))
        .setHint(tr("How moulds are built and sawn. Without a tick the usual way holds."));
    addBuilding(column, content);
    addSawing(column, content);
    addOffcuts(sheet, content);
    addShared(sheet, content);
}

}  // namespace yardcast::ui
