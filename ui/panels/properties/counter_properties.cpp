#include <QCoreApplication>

#include "ui/look/number_text.h"
#include "ui/panels/fields/edges_field.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

const Counter* onlyOne(const Scope<Counter>& counters, const Plan& plan)
{
    const std::vector<const Counter*> found = counters.read(plan);
    return found.size() == 1 ? found[0] : nullptr;
}

Box boundsOf(const Scope<Counter>& counters, const Plan& plan)
{
    const Counter* counter = onlyOne(counters, plan);
    return counter ? boundsOf(counter->outline).value_or(Box{}) : Box{};
}

/// Width and depth of a counter with four corners square to its own axes.
std::optional<Size> rectangleOf(const Counter& counter)
{
    if (counter.outline.size() != 4) return std::nullopt;
    const Box box = boundsOf(counter.outline).value_or(Box{});
    for (const Point& p : counter.outline) {
        if ((p.x != box.low.x && p.x != box.high.x) || (p.y != box.low.y && p.y != box.high.y)) return std::nullopt;
    }
    return Size{box.width(), box.height()};
}

Binding<Number> rectangleSide(const Scope<Counter>& counters, const Ids& ids, double Size::* side)
{
    Binding<Number> binding;
    binding.read = [counters, side](const Plan& plan) {
        Reading<Number> reading;
        for (const Counter* counter : counters.read(plan)) {
            const std::optional<Size> size = rectangleOf(*counter);
            if (!size) return Reading<Number>();
            if (reading.there && reading.value != (*size).*side) reading.mixed = true;
            reading.there = true;
            reading.value = (*size).*side;
        }
        return reading;
    };
    binding.write = [ids, side](const Plan& plan, const Number& value) {
        Plan changed = plan;
        for (const std::string& id : ids) {
            const Part* part = findPart(changed, id);
            const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
            std::optional<Size> size = counter ? rectangleOf(*counter) : std::nullopt;
            if (!size || !value) continue;
            (*size).*side = *value;
            changed = resizePart(changed, id, *size);
        }
        return changed;
    };
    return binding;
}

void addSize(PropertySheet& sheet, const Scope<Counter>& counters, const Ids& ids)
{
    FieldColumn& column = sheet.group(tr("Size"));
    column.lengthBound(QStringLiteral("counter.outline.width"), tr("Width"),
                       rectangleSide(counters, ids, &Size::width), sizeRules());
    column.lengthBound(QStringLiteral("counter.outline.depth"), tr("Depth"),
                       rectangleSide(counters, ids, &Size::depth), sizeRules());
    column.length(QStringLiteral("counter.thickness_mm"), tr("Thickness"),
                  counters.member([](auto& c) { return &c.thicknessMm; }), sizeRules())
        .setHint(tr("Of the field; a rim makes it look thicker."));
    column.length(QStringLiteral("counter.top_mm"), tr("Top above datum"),
                  counters.member([](auto& c) { return &c.topMm; }), placeRules());
}

void addOutline(PropertySheet& sheet, const Scope<Counter>& counters, const std::string& id)
{
    FieldColumn& column = sheet.group(tr("Corners"));
    const Scope<std::vector<Point>> outline = counters.member([](auto& c) { return &c.outline; });
    ListAccess access = listAccess<Point>(
        outline,
        [](const Point& p, int index) {
            return QStringList{QString::number(index + 1), formatNumber(p.x, 1), formatNumber(p.y, 1)};
        },
        [](const Plan&) { return Point(); });
    // Corners bring the numbers of edges along, so they go through the edits that know of rims.
    access.add = [id, counters](const Plan& plan, int after) {
        const Counter* counter = onlyOne(counters, plan);
        if (!counter || counter->outline.empty()) return plan;
        const auto count = counter->outline.size();
        const auto edge = static_cast<std::size_t>(std::max(after, 0)) % count;
        const Point middle = (counter->outline[edge] + counter->outline[(edge + 1) % count]) * 0.5;
        return insertOutlineCorner(plan, id, static_cast<int>(edge), middle);
    };
    access.remove = [id](const Plan& plan, int index) { return removeOutlineCorner(plan, id, index); };
    access.canRemove = [counters](const Plan& plan, int) {
        const Counter* counter = onlyOne(counters, plan);
        return counter && counter->outline.size() > 3;
    };
    column.list(QStringLiteral("counter.outline"),
                {tr("Outline, counter-clockwise"), tr("Add a corner"), tr("Remove the corner"), {}},
                {{tr("Corner"), false}, {tr("from left\nmm"), true}, {tr("from front\nmm"), true}}, access,
                [outline](FieldColumn& form, const std::shared_ptr<const int>& index) {
                    addPointFields(form, QStringLiteral("counter.outline.corner"), tr("From left"), tr("From front"),
                                   elementOf(outline, index));
                });
}

void addRimAndFiller(PropertySheet& sheet, const Scope<Counter>& counters)
{
    const Scope<std::optional<Rim>> rim = counters.member([](auto& c) { return &c.rim; });
    const Scope<Rim> inRim = contentOf(rim);
    FieldColumn& rimColumn = sheet.group(tr("Rim"));
    rimColumn.check(QStringLiteral("counter.rim"), tr("Rim"), tr("has a rim"), bindPresence(rim, Rim()));
    rimColumn
        .length(QStringLiteral("counter.rim.depth_mm"), tr("Depth"), inRim.member([](auto& r) { return &r.depthMm; }),
                sizeRules())
        .setHint(tr("From the face down: how thick the edge looks."));
    rimColumn.length(QStringLiteral("counter.rim.width_mm"), tr("Width"),
                     inRim.member([](auto& r) { return &r.widthMm; }), sizeRules());
    rimColumn.put(new EdgesField(rimColumn.host(), QStringLiteral("counter.rim.edges"), tr("Along"), counters,
                                 rimEdges(), &rimColumn));

    const Scope<std::optional<Filler>> filler = counters.member([](auto& c) { return &c.filler; });
    const Scope<Filler> inFiller = contentOf(filler);
    FieldColumn& fillerColumn = sheet.group(tr("Filler"));
    fillerColumn.check(QStringLiteral("counter.filler"), tr("Foam behind the field"), tr("has a filler"),
                       bindPresence(filler, Filler()));
    fillerColumn.number(QStringLiteral("counter.filler.density_kg_m3"), tr("Density"),
                        inFiller.member([](auto& f) { return &f.densityKgM3; }), rules(tr("kg/m³"), 0, 1000));
    fillerColumn.check(QStringLiteral("counter.filler.stays"), tr("After stripping"), tr("stays in the piece"),
                       bindYesNo(inFiller.member([](auto& f) { return &f.stays; })));
}

/// The back edge, where a rebate is of use, or the front edge, where water drips.
std::vector<int> edgeFacing(const Counter& counter, bool back)
{
    if (counter.outline.empty()) return {};
    std::size_t best = 0;
    for (std::size_t i = 0; i < counter.outline.size(); ++i) {
        const auto middleY = [&](std::size_t edge) {
            return counter.outline[edge].y + counter.outline[(edge + 1) % counter.outline.size()].y;
        };
        if (back ? middleY(i) > middleY(best) : middleY(i) < middleY(best)) best = i;
    }
    return {static_cast<int>(best)};
}

void addDripAndRebate(PropertySheet& sheet, const Scope<Counter>& counters)
{
    const auto startsAlong = [counters](auto member, bool back) {
        using T = typename std::remove_cvref_t<decltype(std::declval<Counter>().*member)>::value_type;
        Binding<bool> binding = bindPresence(counters.member([member](auto& c) { return &(c.*member); }), T());
        binding.write = [counters, member, back](const Plan& plan, bool on) {
            return counters.change(plan, [&](Counter& counter) {
                if (on == (counter.*member).has_value()) return;
                (counter.*member).reset();
                if (!on) return;
                counter.*member = T();
                (counter.*member)->edges = edgeFacing(counter, back);
            });
        };
        return binding;
    };
    const Scope<std::optional<Drip>> drip = counters.member([](auto& c) { return &c.drip; });
    const Scope<Drip> inDrip = contentOf(drip);
    FieldColumn& groove = sheet.group(tr("Drip groove"));
    groove.check(QStringLiteral("counter.drip"), tr("Drip groove"), tr("has a groove below"),
                 startsAlong(&Counter::drip, false))
        .setHint(tr("In the underside along an edge: water drips off there and does not run back to the fronts."));
    groove.length(QStringLiteral("counter.drip.from_edge_mm"), tr("From the edge"),
                  inDrip.member([](auto& d) { return &d.fromEdgeMm; }), sizeRules());
    groove.length(QStringLiteral("counter.drip.width_mm"), tr("Width"), inDrip.member([](auto& d) { return &d.widthMm; }),
                  sizeRules());
    groove.length(QStringLiteral("counter.drip.depth_mm"), tr("Depth"), inDrip.member([](auto& d) { return &d.depthMm; }),
                  sizeRules());
    groove.put(new EdgesField(groove.host(), QStringLiteral("counter.drip.edges"), tr("Along"), counters, dripEdges(),
                              &groove));

    const Scope<std::optional<Rebate>> rebate = counters.member([](auto& c) { return &c.rebate; });
    const Scope<Rebate> inRebate = contentOf(rebate);
    FieldColumn& step = sheet.group(tr("Splash rebate"));
    step.check(QStringLiteral("counter.rebate"), tr("Splash rebate"), tr("has a step in its face"),
               startsAlong(&Counter::rebate, true))
        .setHint(tr("Along an edge, for a splash panel to stand in."));
    step.length(QStringLiteral("counter.rebate.width_mm"), tr("Width"),
                inRebate.member([](auto& r) { return &r.widthMm; }), sizeRules())
        .setHint(tr("The panel's thickness and room for its joint."));
    step.length(QStringLiteral("counter.rebate.depth_mm"), tr("Depth"),
                inRebate.member([](auto& r) { return &r.depthMm; }), sizeRules());
    step.put(new EdgesField(step.host(), QStringLiteral("counter.rebate.edges"), tr("Along"), counters, rebateEdges(),
                            &step));
}

/// Ribs and joints: lines across the counter.
template <class T>
void addLineFields(FieldColumn& form, const QString& path, const Scope<T>& line)
{
    addPointFields(form, path + QStringLiteral(".from"), tr("From, from left"), tr("From, from front"),
                   line.member([](auto& l) { return &l.from; }));
    addPointFields(form, path + QStringLiteral(".to"), tr("To, from left"), tr("To, from front"),
                   line.member([](auto& l) { return &l.to; }));
}

QString lineText(const Point& from, const Point& to)
{
    return tr("%1, %2 to %3, %4")
        .arg(formatNumber(from.x, 0), formatNumber(from.y, 0), formatNumber(to.x, 0), formatNumber(to.y, 0));
}

void addRibsAndJoints(PropertySheet& sheet, const Scope<Counter>& counters)
{
    const Scope<std::vector<Rib>> ribs = counters.member([](auto& c) { return &c.ribs; });
    sheet.group(tr("Ribs"))
        .list(QStringLiteral("counter.ribs"),
              {tr("Ribs"), tr("Add a rib"), tr("Remove the rib"), tr("Strips as deep as the rim, across the field."),
               false},
              {{tr("From, to"), false}, {tr("width\nmm"), true}},
              listAccess<Rib>(
                  ribs,
                  [](const Rib& rib, int) {
                      return QStringList{lineText(rib.from, rib.to), formatNumber(rib.widthMm, 1)};
                  },
                  [counters](const Plan& plan) {
                      const Box box = boundsOf(counters, plan);
                      Rib rib;
                      rib.from = {box.centre().x, box.low.y};
                      rib.to = {box.centre().x, box.high.y};
                      return rib;
                  }),
              [ribs](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  const Scope<Rib> rib = elementOf(ribs, index);
                  form.length(QStringLiteral("counter.ribs.width_mm"), tr("Width"),
                              rib.member([](auto& r) { return &r.widthMm; }), sizeRules());
                  addLineFields(form, QStringLiteral("counter.ribs"), rib);
              });

    const Scope<std::vector<Joint>> joints = counters.member([](auto& c) { return &c.joints; });
    sheet.group(tr("Joints"))
        .list(QStringLiteral("counter.joints"),
              {tr("Joints"), tr("Add a joint"), tr("Remove the joint"),
               tr("A joint divides the counter into pieces that are cast and lifted apart."), false},
              {{tr("From, to"), false}, {tr("gap\nmm"), true}},
              listAccess<Joint>(
                  joints,
                  [](const Joint& joint, int) {
                      return QStringList{lineText(joint.from, joint.to),
                                         formatNumber(joint.gapMm.value_or(kDefaultJointGapMm), 1)};
                  },
                  [counters](const Plan& plan) {
                      const Box box = boundsOf(counters, plan);
                      Joint joint;
                      joint.from = {box.centre().x, box.low.y};
                      joint.to = {box.centre().x, box.high.y};
                      return joint;
                  }),
              [joints](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  const Scope<Joint> joint = elementOf(joints, index);
                  form.length(QStringLiteral("counter.joints.gap_mm"), tr("Gap"),
                              joint.member([](auto& j) { return &j.gapMm; }),
                              optional(coverRules(), formatNumber(kDefaultJointGapMm)));
                  addLineFields(form, QStringLiteral("counter.joints"), joint);
              });
}

void addCutouts(PropertySheet& sheet, const Scope<Counter>& counters)
{
    const Scope<std::vector<Cutout>> cutouts = counters.member([](auto& c) { return &c.cutouts; });
    sheet.group(tr("Cutouts"))
        .list(QStringLiteral("counter.cutouts"),
              {tr("Cutouts"), tr("Add a cutout"), tr("Remove the cutout"), tr("Openings through the slab."), false},
              {{tr("Cutout"), false}, {tr("size\nmm"), true}},
              listAccess<Cutout>(
                  cutouts,
                  [](const Cutout& cutout, int) {
                      const QString size = cutout.shape == CutoutShape::circle
                                               ? tr("Ø %1").arg(formatNumber(cutout.diameterMm, 1))
                                               : tr("%1 × %2").arg(formatNumber(cutout.size.width, 1),
                                                                   formatNumber(cutout.size.depth, 1));
                      return QStringList{
                          tr("%1  %2").arg(QString::fromStdString(cutout.id), purposeName(cutout.purpose)), size};
                  },
                  [counters](const Plan& plan) {
                      const Box box = boundsOf(counters, plan);
                      Cutout cutout;
                      if (const Counter* counter = onlyOne(counters, plan)) cutout.id = freeCutoutId(*counter);
                      cutout.centre = box.centre();
                      cutout.size = {100.0, 100.0};
                      return cutout;
                  }),
              [cutouts](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  addCutoutFields(form, elementOf(cutouts, index));
              });
}

void addLoads(PropertySheet& sheet, const Scope<Counter>& counters)
{
    const Scope<std::vector<PlacedLoad>> loads = counters.member([](auto& c) { return &c.loads; });
    const QString path = QStringLiteral("counter.loads");
    FieldColumn& column = sheet.group(tr("Loads"));
    column.choice(QStringLiteral("counter.imposed"), tr("Used as"), counters.member([](auto& c) { return &c.imposed; }),
                  optionalOptions(tr("worktop (unless said otherwise)"),
                                  {tr("worktop"), tr("something a person may stand on")}));
    column.list(path,
                {tr("Things that stand on it"), tr("Add a load"), tr("Remove the load"),
                 tr("What weighs on the counter besides itself, such as an oven.")},
                {{tr("Load"), false}, {tr("kg"), true}},
                listAccess<PlacedLoad>(
                    loads,
                    [](const PlacedLoad& load, int) {
                        return QStringList{QString::fromStdString(load.name), formatNumber(load.massKg, 1)};
                    },
                    [counters](const Plan& plan) {
                        const Box box = boundsOf(counters, plan);
                        PlacedLoad load;
                        load.name = tr("load").toStdString();
                        load.centre = box.centre();
                        load.size = {300.0, 300.0};
                        load.massKg = 10.0;
                        return load;
                    }),
                [loads, path](FieldColumn& form, const std::shared_ptr<const int>& index) {
                    const Scope<PlacedLoad> load = elementOf(loads, index);
                    form.text(path + QStringLiteral(".name"), tr("Name"), load.member([](auto& l) { return &l.name; }));
                    form.number(path + QStringLiteral(".mass_kg"), tr("Mass"),
                                load.member([](auto& l) { return &l.massKg; }), rules(tr("kg"), 0, 1e5));
                    addPointFields(form, path + QStringLiteral(".centre"), tr("Centre from left"),
                                   tr("Centre from front"), load.member([](auto& l) { return &l.centre; }));
                    addSizeFields(form, path + QStringLiteral(".size"), load.member([](auto& l) { return &l.size; }));
                });
}

void addLift(PropertySheet& sheet, const Scope<Counter>& counters)
{
    const Scope<std::optional<Lift>> lift = counters.member([](auto& c) { return &c.lift; });
    const Scope<Lift> content = contentOf(lift);
    FieldColumn& column = sheet.group(tr("Lifting"));
    column.check(QStringLiteral("counter.lift"), tr("Lifting"), tr("planned for this piece"),
                 bindPresence(lift, Lift()));
    column.number(QStringLiteral("counter.lift.age_h"), tr("Age then"), content.member([](auto& l) { return &l.ageH; }),
                  optional(rules(tr("h"), 0, 10000, 1), tr("48")));
    column.number(QStringLiteral("counter.lift.people"), tr("People"),
                  content.member([](auto& l) { return &l.people; }), optional(rules({}, 1, 50, 0), tr("the crew")));
    column.choice(QStringLiteral("counter.lift.carry"), tr("Carried"), content.member([](auto& l) { return &l.carry; }),
                  fixedOptions({tr("lying flat"), tr("standing on edge")}));
    const Scope<std::vector<Point>> grips = content.member([](auto& l) { return &l.grips; });
    column.list(QStringLiteral("counter.lift.grips"),
                {tr("Grips"), tr("Add a grip"), tr("Remove the grip"), tr("Where hands or straps take hold.")},
                {{tr("Grip"), false}, {tr("from left\nmm"), true}, {tr("from front\nmm"), true}},
                listAccess<Point>(
                    grips,
                    [](const Point& p, int index) {
                        return QStringList{QString::number(index + 1), formatNumber(p.x, 1), formatNumber(p.y, 1)};
                    },
                    [counters](const Plan& plan) {
                        const Box box = boundsOf(counters, plan);
                        return Point{box.low.x + 100.0, box.low.y};
                    }),
                [grips](FieldColumn& form, const std::shared_ptr<const int>& index) {
                    addPointFields(form, QStringLiteral("counter.lift.grips.at"), tr("From left"), tr("From front"),
                                   elementOf(grips, index));
                });
}

}  // namespace

void describeCounter(PropertySheet& sheet, const Scope<Part>& parts, const Ids& ids)
{
    const Scope<Counter> counters = bodyScope<Counter>(parts);
    addSize(sheet, counters, ids);
    FieldColumn& casting = sheet.group(tr("Casting"));
    addMixChoice(casting, QStringLiteral("counter.mix"), counters.member([](auto& c) { return &c.mix; }));
    casting.choice(QStringLiteral("counter.cast"), tr("Cast"), counters.member([](auto& c) { return &c.cast; }),
                   fixedOptions({tr("face down"), tr("face up")}));
    addRimAndFiller(sheet, counters);
    addCutouts(sheet, counters);
    addSteelGroup(sheet, counters.member([](auto& c) { return &c.steel; }), QStringLiteral("counter.steel"));
    addRibsAndJoints(sheet, counters);
    addDripAndRebate(sheet, counters);
    addLoads(sheet, counters);
    addLift(sheet, counters);
    if (ids.size() == 1) addOutline(sheet, counters, ids[0]);
}

}  // namespace yardcast::ui
