#include "ui/wording/names.h"

#include <QStringList>

#include "ui/wording/figures.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

QString number(const QString& text)
{
    return shortNumberText(text.toDouble(), 2);
}

}  // namespace

QString kindName(PartKind kind)
{
    switch (kind) {
    case PartKind::counter: return Words::tr("Counter");
    case PartKind::support: return Words::tr("Support");
    case PartKind::panel: return Words::tr("Panel");
    case PartKind::front: return Words::tr("Front");
    case PartKind::appliance: return Words::tr("Appliance");
    }
    return {};
}

QString zoneName(ZoneKind kind)
{
    switch (kind) {
    case ZoneKind::field: return Words::tr("Field");
    case ZoneKind::rim: return Words::tr("Rim");
    case ZoneKind::cutoutRim: return Words::tr("Rim of a cutout");
    case ZoneKind::rib: return Words::tr("Rib");
    case ZoneKind::body: return Words::tr("Body");
    case ZoneKind::filler: return Words::tr("Filler");
    case ZoneKind::core: return Words::tr("Core");
    }
    return {};
}

QString purposeName(CutoutPurpose purpose)
{
    switch (purpose) {
    case CutoutPurpose::sink: return Words::tr("Sink");
    case CutoutPurpose::hob: return Words::tr("Hob");
    case CutoutPurpose::tap: return Words::tr("Tap hole");
    case CutoutPurpose::drain: return Words::tr("Drain");
    case CutoutPurpose::other: return Words::tr("Cutout");
    }
    return {};
}

QString fixtureName(FixtureKind kind)
{
    switch (kind) {
    case FixtureKind::water: return Words::tr("Water");
    case FixtureKind::waste: return Words::tr("Waste");
    case FixtureKind::power: return Words::tr("Power");
    case FixtureKind::gas: return Words::tr("Gas");
    case FixtureKind::wall: return Words::tr("Wall");
    case FixtureKind::tree: return Words::tr("Tree");
    case FixtureKind::door: return Words::tr("Door");
    case FixtureKind::other: return Words::tr("Fixture");
    }
    return {};
}

QString cementSpeedName(CementSpeed speed)
{
    switch (speed) {
    case CementSpeed::slow: return Words::tr("Slow (S)");
    case CementSpeed::normal: return Words::tr("Normal (N)");
    case CementSpeed::rapid: return Words::tr("Rapid (R)");
    }
    return {};
}

QString steelMaterialName(SteelMaterial material)
{
    switch (material) {
    case SteelMaterial::steel: return Words::tr("steel");
    case SteelMaterial::galvanised: return Words::tr("galvanised steel");
    case SteelMaterial::stainless: return Words::tr("stainless steel");
    case SteelMaterial::glass: return Words::tr("glass fibre");
    case SteelMaterial::basalt: return Words::tr("basalt fibre");
    }
    return {};
}

QString exposureName(Exposure exposure)
{
    switch (exposure) {
    case Exposure::x0: return Words::tr("X0: very dry");
    case Exposure::xc1: return Words::tr("XC1: dry, or always under water");
    case Exposure::xc2: return Words::tr("XC2: wet, seldom dry");
    case Exposure::xc3: return Words::tr("XC3: outdoors, sheltered from rain");
    case Exposure::xc4: return Words::tr("XC4: outdoors, wet and dry in turn");
    case Exposure::xd1: return Words::tr("XD1: salt in the air, damp");
    case Exposure::xd2: return Words::tr("XD2: salt water, wet");
    case Exposure::xd3: return Words::tr("XD3: de-icing salt, wet and dry in turn");
    case Exposure::xs1: return Words::tr("XS1: sea air");
    case Exposure::xs2: return Words::tr("XS2: under sea water");
    case Exposure::xs3: return Words::tr("XS3: tide, splash and spray");
    }
    return {};
}

QString frostName(Frost frost)
{
    switch (frost) {
    case Frost::none: return Words::tr("no frost");
    case Frost::xf1: return Words::tr("XF1: frost on upright faces in the rain");
    case Frost::xf2: return Words::tr("XF2: the same, with de-icing salt");
    case Frost::xf3: return Words::tr("XF3: frost on level faces in the rain");
    case Frost::xf4: return Words::tr("XF4: the same, with de-icing salt");
    }
    return {};
}

QString mouldSurfaceName(MouldSurface surface)
{
    switch (surface) {
    case MouldSurface::coated: return Words::tr("coated board, oiled");
    case MouldSurface::planed: return Words::tr("planed and varnished boards");
    case MouldSurface::rough: return Words::tr("rough timber");
    }
    return {};
}

QString severityName(Severity severity)
{
    switch (severity) {
    case Severity::stop: return Words::tr("Stop");
    case Severity::caution: return Words::tr("Caution");
    case Severity::note: return Words::tr("Note");
    }
    return {};
}

QString subjectName(const Plan* plan, const std::string& id)
{
    const QString text = QString::fromStdString(id);
    if (!plan) return text;
    const Part* part = findPart(*plan, id);
    if (!part) part = findPart(*plan, id.substr(0, id.rfind('.')));
    if (!part) return text;
    if (part->name && !part->name->empty()) return text + QLatin1Char(' ') + QString::fromStdString(*part->name);
    return text + QLatin1Char(' ') + kindName(part->kind()).toLower();
}

QString groupName(const std::string& group)
{
    if (group == "concrete") return Words::tr("Concrete");
    if (group == "steel") return Words::tr("Steel");
    if (group == "boards") return Words::tr("Boards and foam");
    if (group == "timber") return Words::tr("Timber");
    if (group == "sealing") return Words::tr("Sealing and care");
    if (group == "fixings") return Words::tr("Fixings");
    if (group == "tools") return Words::tr("Tools");
    if (group == "safety") return Words::tr("Safety");
    return QString::fromStdString(group);
}

QString unitName(const std::string& unit)
{
    if (unit == "m2") return QStringLiteral("m") + QChar(0x00B2);
    if (unit == "piece") return Words::tr("pieces");
    return QString::fromStdString(unit);
}

namespace {

/// The last word of an item of mesh or bars.
QString materialWord(const QString& word)
{
    if (word == QLatin1String("galvanised")) return steelMaterialName(SteelMaterial::galvanised);
    if (word == QLatin1String("stainless")) return steelMaterialName(SteelMaterial::stainless);
    if (word == QLatin1String("glass")) return steelMaterialName(SteelMaterial::glass);
    if (word == QLatin1String("basalt")) return steelMaterialName(SteelMaterial::basalt);
    return word;
}

}  // namespace

QString itemWord(const std::string& item)
{
    const QStringList words = QString::fromStdString(item).split(QLatin1Char('_'));
    if (words[0] == QLatin1String("mesh") && words.size() == 3) {
        return Words::tr("mesh, %1 mm at %2 mm").arg(number(words[1]), number(words[2]));
    }
    if (words[0] == QLatin1String("mesh") && words.size() == 4) {
        return Words::tr("mesh, %1 mm at %2 mm, %3").arg(number(words[1]), number(words[2]), materialWord(words[3]));
    }
    if (words[0] == QLatin1String("bar") && words.size() == 2) return Words::tr("bar, %1 mm").arg(number(words[1]));
    if (words[0] == QLatin1String("bar") && words.size() == 3) {
        return Words::tr("bar, %1 mm, %2").arg(number(words[1]), materialWord(words[2]));
    }
    if (words[0] == QLatin1String("foam") && words.size() == 2) return Words::tr("foam, %1 mm").arg(number(words[1]));
    if (item == "fibre") return Words::tr("fibres");
    if (words[0] == QLatin1String("fibre")) return Words::tr("fibres, %1").arg(words.mid(1).join(QLatin1Char(' ')));
    if (words[0] == QLatin1String("batten")) return Words::tr("battens");
    if (item == "dry_mix") return Words::tr("dry mix");
    if (item == "spare_bag") return Words::tr("spare bag");
    if (item == "cement") return Words::tr("cement");
    if (item == "silica_fume") return Words::tr("silica fume");
    if (item == "ice") return Words::tr("ice");
    if (item == "plasticiser") return Words::tr("plasticiser");
    if (item == "mould_board") return Words::tr("mould board");
    if (item == "frame_timber") return Words::tr("frame timber");
    if (item == "silicone") return Words::tr("silicone for fillets");
    if (item == "joint_sealant") return Words::tr("joint sealant");
    if (item == "release_agent") return Words::tr("release agent");
    if (item == "screw_mould") return Words::tr("mould screws");
    if (item == "screw_front") return Words::tr("stainless screws");
    return words.join(QLatin1Char(' '));
}

QString timberPieceName(const std::string& code)
{
    if (code == "batten") return Words::tr("batten");
    if (code == "rail") return Words::tr("rail");
    if (code == "stile") return Words::tr("stile");
    if (code == "door_batten") return Words::tr("door batten");
    if (code == "door_rail") return Words::tr("door rail");
    if (code == "door_stile") return Words::tr("door stile");
    if (code == "door_brace") return Words::tr("door brace");
    return QString::fromStdString(code).replace(QLatin1Char('_'), QLatin1Char(' '));
}

}  // namespace yardcast::ui
