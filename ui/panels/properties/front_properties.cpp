#include <QCoreApplication>

#include "ui/look/number_text.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

/// An opening that is as it was drawn.
MeasuredOpening asDrawn(double widthMm, double heightMm)
{
    MeasuredOpening opening;
    opening.bottomMm = opening.topMm = widthMm;
    opening.leftMm = opening.rightMm = heightMm;
    opening.diagonalRisingMm = opening.diagonalFallingMm = std::hypot(widthMm, heightMm);
    return opening;
}

void addBattens(PropertySheet& sheet, const Scope<Front>& front)
{
    const Scope<Batten> batten = front.member([](auto& f) { return &f.batten; });
    const QString path = QStringLiteral("front.batten");
    FieldColumn& column = sheet.group(tr("Battens"));
    column.length(path + QStringLiteral(".width_mm"), tr("Width"), batten.member([](auto& b) { return &b.widthMm; }),
                  sizeRules());
    column.length(path + QStringLiteral(".thickness_mm"), tr("Thickness"),
                  batten.member([](auto& b) { return &b.thicknessMm; }), sizeRules());
    column.length(path + QStringLiteral(".gap_mm"), tr("Gap wanted"), batten.member([](auto& b) { return &b.gapMm; }),
                  coverRules())
        .setHint(tr("The real gap is the nearest with all gaps equal."));
    column.choice(path + QStringLiteral(".run"), tr("Run"), batten.member([](auto& b) { return &b.run; }),
                  fixedOptions({tr("upright"), tr("level")}));
    column.number(path + QStringLiteral(".bevel_deg"), tr("Bevel"), batten.member([](auto& b) { return &b.bevelDeg; }),
                  rules(tr("°"), 0, 60));
    column.text(path + QStringLiteral(".species"), tr("Timber"), batten.member([](auto& b) { return &b.species; }),
                {.emptyText = tr("not said")});
}

void addDoors(PropertySheet& sheet, const Scope<Front>& fronts)
{
    const Scope<std::vector<Door>> doors = fronts.member([](auto& f) { return &f.doors; });
    sheet.group(tr("Doors"))
        .list(QStringLiteral("front.doors"),
              {tr("Doors"), tr("Add a door"), tr("Remove the door"), tr("No doors in this front."), false},
              {{tr("Hinges"), false}, {tr("from\nmm"), true}, {tr("to\nmm"), true}},
              listAccess<Door>(
                  doors,
                  [](const Door& door, int) {
                      return QStringList{door.hinges == HingeSide::left ? tr("left") : tr("right"),
                                         formatNumber(door.fromMm, 1), formatNumber(door.toMm, 1)};
                  },
                  [fronts](const Plan& plan) {
                      const std::vector<const Front*> found = fronts.read(plan);
                      Door door;
                      if (!found.empty() && !found[0]->doors.empty()) door.fromMm = found[0]->doors.back().toMm;
                      door.toMm = door.fromMm + 500.0;
                      return door;
                  }),
              [doors](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  const Scope<Door> door = elementOf(doors, index);
                  form.length(QStringLiteral("front.doors.from_mm"), tr("From, along the front"),
                              door.member([](auto& d) { return &d.fromMm; }), placeRules());
                  form.length(QStringLiteral("front.doors.to_mm"), tr("To, along the front"),
                              door.member([](auto& d) { return &d.toMm; }), placeRules());
                  form.choice(QStringLiteral("front.doors.hinges"), tr("Hinges"),
                              door.member([](auto& d) { return &d.hinges; }), fixedOptions({tr("left"), tr("right")}));
              });
}

void addMeasured(PropertySheet& sheet, const Scope<Front>& front)
{
    const QString path = QStringLiteral("front.measured");
    const Binding<bool> presence = bindAs<bool>(
        front, [](const Front& f) { return f.measured.has_value(); },
        [](Front& f, bool there) {
            if (there == f.measured.has_value()) return;
            f.measured = there ? std::optional(asDrawn(distance(f.from, f.to), f.topMm - f.bottomMm)) : std::nullopt;
        });
    FieldColumn& column = sheet.group(tr("Opening as measured"));
    column.check(path, tr("Opening"), tr("was measured"), presence)
        .setHint(tr("Measure the opening itself, never the drawing or the old door."));
    const Scope<MeasuredOpening> opening = contentOf(front.member([](auto& f) { return &f.measured; }));
    const auto side = [&](const char* key, const QString& label, double MeasuredOpening::* member) {
        column.length(path + QLatin1String(key), label, opening.member([member](auto& o) { return &(o.*member); }),
                      sizeRules());
    };
    side(".bottom_mm", tr("Bottom"), &MeasuredOpening::bottomMm);
    side(".top_mm", tr("Top"), &MeasuredOpening::topMm);
    side(".left_mm", tr("Left"), &MeasuredOpening::leftMm);
    side(".right_mm", tr("Right"), &MeasuredOpening::rightMm);
    side(".diagonal_rising_mm", tr("Diagonal, rising to the right"), &MeasuredOpening::diagonalRisingMm);
    side(".diagonal_falling_mm", tr("Diagonal, falling to the right"), &MeasuredOpening::diagonalFallingMm);
}

}  // namespace

void describeFront(PropertySheet& sheet, const Scope<Part>& parts)
{
    const Scope<Front> front = bodyScope<Front>(parts);
    FieldColumn& size = sheet.group(tr("Size"));
    size.length(QStringLiteral("front.bottom_mm"), tr("Bottom above datum"),
                front.member([](auto& f) { return &f.bottomMm; }), placeRules());
    size.length(QStringLiteral("front.top_mm"), tr("Top above datum"), front.member([](auto& f) { return &f.topMm; }),
                placeRules());
    addPointFields(size, QStringLiteral("front.from"), tr("Left end, across"), tr("Left end, back"),
                   front.member([](auto& f) { return &f.from; }));
    addPointFields(size, QStringLiteral("front.to"), tr("Right end, across"), tr("Right end, back"),
                   front.member([](auto& f) { return &f.to; }));
    addBattens(sheet, front);
    addDoors(sheet, front);
    addMeasured(sheet, front);
}

}  // namespace yardcast::ui
