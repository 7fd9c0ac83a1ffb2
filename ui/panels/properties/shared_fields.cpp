#include "ui/panels/properties/shared_fields.h"

#include <QCoreApplication>

#include "ui/look/number_text.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

}  // namespace

NumberRules sizeRules() { return {.least = 0.0, .most = 1e5, .aboveLeast = true}; }

NumberRules placeRules() { return {.least = -1e6, .most = 1e6}; }

NumberRules coverRules() { return {.least = 0.0, .most = 1e5}; }

NumberRules within(const QString& unit, NumberLimits limits) { return rules(unit, limits.least, limits.most); }

NumberRules rules(const QString& unit, double least, double most, int decimals)
{
    return {.unit = unit, .least = least, .most = most, .decimals = decimals};
}

NumberRules optional(NumberRules own, const QString& emptyText)
{
    own.mayBeEmpty = true;
    own.emptyText = emptyText;
    return own;
}

void addPointFields(FieldColumn& column, const QString& path, const QString& acrossLabel, const QString& upLabel,
                    const Scope<Point>& point)
{
    column.length(path + QStringLiteral(".x"), acrossLabel, point.member([](auto& p) { return &p.x; }), placeRules());
    column.length(path + QStringLiteral(".y"), upLabel, point.member([](auto& p) { return &p.y; }), placeRules());
}

void addSizeFields(FieldColumn& column, const QString& path, const Scope<Size>& size)
{
    column.length(path + QStringLiteral(".width"), tr("Width"), size.member([](auto& s) { return &s.width; }),
                  sizeRules());
    column.length(path + QStringLiteral(".depth"), tr("Depth"), size.member([](auto& s) { return &s.depth; }),
                  sizeRules());
}

void addMixChoice(FieldColumn& column, const QString& path, const Scope<std::string>& mix)
{
    column.choiceBound(path, tr("Mix"), bindText(mix), [](const Plan& plan) {
        QList<Option> options;
        for (const Mix& m : plan.mixes) options.append({QString::fromStdString(m.id), QString::fromStdString(m.id)});
        return options;
    });
}

void addUprightCastChoice(FieldColumn& column, const QString& path, const Scope<UprightCast>& cast)
{
    column.choice(path, tr("Cast"), cast, fixedOptions({tr("flat, and stood up"), tr("upright")}));
}

void addCoreGroup(PropertySheet& sheet, const Scope<std::optional<Core>>& core, const QString& path)
{
    FieldColumn& column = sheet.group(tr("Core"));
    const Core fresh{.lengthMm = 300.0, .heightMm = 300.0, .thicknessMm = 30.0, .densityKgM3 = 20.0, .source = {}};
    column.check(path, tr("Foam inside"), tr("has a core"), bindPresence(core, fresh));
    const Scope<Core> content = contentOf(core);
    column.length(path + QStringLiteral(".length_mm"), tr("Length"),
                  content.member([](auto& c) { return &c.lengthMm; }), sizeRules());
    column.length(path + QStringLiteral(".height_mm"), tr("Height"),
                  content.member([](auto& c) { return &c.heightMm; }), sizeRules());
    column.length(path + QStringLiteral(".thickness_mm"), tr("Thickness"),
                  content.member([](auto& c) { return &c.thicknessMm; }), sizeRules());
    column.number(path + QStringLiteral(".density_kg_m3"), tr("Density"),
                  content.member([](auto& c) { return &c.densityKgM3; }), rules(tr("kg/m³"), 0, 1000));
}

void addMaterialChoice(FieldColumn& column, const QString& path, const QString& label,
                       const Scope<SteelMaterial>& material)
{
    column.choice(path, label, material,
                  fixedOptions({steelMaterialName(SteelMaterial::steel), steelMaterialName(SteelMaterial::galvanised),
                                steelMaterialName(SteelMaterial::stainless), steelMaterialName(SteelMaterial::glass),
                                steelMaterialName(SteelMaterial::basalt)}));
}

void addSteelGroup(PropertySheet& sheet, const Scope<std::optional<Steel>>& steel, const QString& path)
{
    FieldColumn& column = sheet.group(tr("Steel"));
    Steel fresh;
    fresh.mesh = Mesh();
    column.check(path, tr("Steel"), tr("has steel"), bindPresence(steel, fresh));
    const Scope<Steel> content = contentOf(steel);
    const Scope<std::optional<Mesh>> mesh = content.member([](auto& s) { return &s.mesh; });
    column.check(path + QStringLiteral(".mesh"), tr("Mesh"), tr("has mesh"), bindPresence(mesh, Mesh()));
    const Scope<Mesh> inMesh = contentOf(mesh);
    column.length(path + QStringLiteral(".mesh.bar_mm"), tr("Mesh bars"),
                  inMesh.member([](auto& m) { return &m.barMm; }), sizeRules());
    column.length(path + QStringLiteral(".mesh.pitch_mm"), tr("Mesh pitch"),
                  inMesh.member([](auto& m) { return &m.pitchMm; }), sizeRules());
    column
        .length(path + QStringLiteral(".mesh.cover_mm"), tr("Mesh cover"),
                inMesh.member([](auto& m) { return &m.coverMm; }), coverRules())
        .setHint(tr("From the face to the nearer bars."));
    addMaterialChoice(column, path + QStringLiteral(".mesh.material"), tr("Mesh of"),
                      inMesh.member([](auto& m) { return &m.material; }));

    const Scope<std::vector<BarGroup>> bars = content.member([](auto& s) { return &s.bars; });
    column.list(
        path + QStringLiteral(".bars"),
        {tr("Bars"), tr("Add bars"), tr("Remove these bars"), tr("No bars besides the mesh.")},
        {{tr("Bars"), false}, {tr("Ø\nmm"), true}, {tr("cover\nmm"), true}},
        listAccess<BarGroup>(
            bars,
            [](const BarGroup& bar, int) {
                const double lengthMm = distance(bar.from, bar.to);
                return QStringList{tr("%1 × %2 mm").arg(bar.count).arg(formatNumber(lengthMm, 0)),
                                   formatNumber(bar.diameterMm, 1), formatNumber(bar.coverMm, 1)};
            },
            [](const Plan&) {
                BarGroup bar;
                bar.from = {60.0, 60.0};
                bar.to = {560.0, 60.0};
                return bar;
            }),
        [bars, path](FieldColumn& form, const std::shared_ptr<const int>& index) {
            const Scope<BarGroup> bar = elementOf(bars, index);
            const QString own = path + QStringLiteral(".bars");
            form.number(own + QStringLiteral(".count"), tr("How many"), bar.member([](auto& b) { return &b.count; }),
                        rules({}, 1, 999, 0));
            form.length(own + QStringLiteral(".diameter_mm"), tr("Diameter"),
                        bar.member([](auto& b) { return &b.diameterMm; }), sizeRules());
            form.length(own + QStringLiteral(".spacing_mm"), tr("Apart"),
                        bar.member([](auto& b) { return &b.spacingMm; }), optional(sizeRules(), tr("40")));
            form.length(own + QStringLiteral(".cover_mm"), tr("Cover"), bar.member([](auto& b) { return &b.coverMm; }),
                        coverRules())
                .setHint(tr("From the face to the bars."));
            addMaterialChoice(form, own + QStringLiteral(".material"), tr("Of"),
                              bar.member([](auto& b) { return &b.material; }));
            addPointFields(form, own + QStringLiteral(".from"), tr("From, from left"), tr("From, from front"),
                           bar.member([](auto& b) { return &b.from; }));
            addPointFields(form, own + QStringLiteral(".to"), tr("To, from left"), tr("To, from front"),
                           bar.member([](auto& b) { return &b.to; }));
        });
}

void addCutoutFields(FieldColumn& column, const Scope<Cutout>& cutout)
{
    const QString path = QStringLiteral("counter.cutouts");
    column.choice(path + QStringLiteral(".purpose"), tr("For"), cutout.member([](auto& c) { return &c.purpose; }),
                  fixedOptions({purposeName(CutoutPurpose::sink), purposeName(CutoutPurpose::hob),
                                purposeName(CutoutPurpose::tap), purposeName(CutoutPurpose::drain),
                                purposeName(CutoutPurpose::other)}));
    const Binding<QString> shape = bindAs<QString>(
        cutout, [](const Cutout& c) { return QString::number(static_cast<int>(c.shape)); },
        [](Cutout& c, const QString& word) {
            c.shape = static_cast<CutoutShape>(word.toInt());
            // The other shape begins as large as this one.
            if (c.shape == CutoutShape::circle && c.diameterMm <= 0.0)
                c.diameterMm = std::min(c.size.width, c.size.depth);
            if (c.shape == CutoutShape::rectangle && c.size == Size()) c.size = {c.diameterMm, c.diameterMm};
        });
    column.choiceBound(path + QStringLiteral(".shape"), tr("Shape"), shape,
                       fixedOptions({tr("rectangle"), tr("circle")}));
    addPointFields(column, path + QStringLiteral(".centre"), tr("Centre from left"), tr("Centre from front"),
                   cutout.member([](auto& c) { return &c.centre; }));
    addSizeFields(column, path + QStringLiteral(".size"), cutout.member([](auto& c) {
        return c.shape == CutoutShape::rectangle ? &c.size : nullptr;
    }));
    column.length(path + QStringLiteral(".diameter_mm"), tr("Diameter"),
                  cutout.member([](auto& c) { return c.shape == CutoutShape::circle ? &c.diameterMm : nullptr; }),
                  sizeRules());
    column.number(path + QStringLiteral(".turn_deg"), tr("Turned"), cutout.member([](auto& c) {
        return c.shape == CutoutShape::rectangle ? &c.turnDeg : nullptr;
    }),
                  optional(rules(tr("°"), -360, 360), tr("0")));
    column.length(path + QStringLiteral(".corner_radius_mm"), tr("Corner radius"), cutout.member([](auto& c) {
        return c.shape == CutoutShape::rectangle ? &c.cornerRadiusMm : nullptr;
    }),
                  optional(coverRules(), tr("0")));
    column
        .length(path + QStringLiteral(".rim_mm"), tr("Rim around it"), cutout.member([](auto& c) { return &c.rimMm; }),
                optional(coverRules(), tr("none")))
        .setHint(tr("Width of a deeper strip around the opening, as deep as the rim of the counter."));
}

void addFixtureFields(FieldColumn& column, const Scope<Fixture>& fixture)
{
    const QString path = QStringLiteral("site.fixtures");
    column.choice(path + QStringLiteral(".kind"), tr("What"), fixture.member([](auto& f) { return &f.kind; }),
                  fixedOptions({fixtureName(FixtureKind::water), fixtureName(FixtureKind::waste),
                                fixtureName(FixtureKind::power), fixtureName(FixtureKind::gas),
                                fixtureName(FixtureKind::wall), fixtureName(FixtureKind::tree),
                                fixtureName(FixtureKind::door), fixtureName(FixtureKind::other)}));
    addPointFields(column, path + QStringLiteral(".at"), tr("From left"), tr("From front"),
                   fixture.member([](auto& f) { return &f.at; }));
    const Scope<std::optional<Size>> size = fixture.member([](auto& f) { return &f.size; });
    column.check(path + QStringLiteral(".size"), tr("Size"), tr("takes up room"), bindPresence(size, Size{200, 200}));
    addSizeFields(column, path + QStringLiteral(".size"), contentOf(size));
}

}  // namespace yardcast::ui
