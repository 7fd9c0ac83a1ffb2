#include "ui/wording/mould_names.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

QString sideName(const std::string& about)
{
    if (about == "drip") return Words::tr("over the drip strip");
    if (about == "rebate") return Words::tr("over the rebate's strip");
    if (about == "front") return Words::tr("front", "side of a mould");
    if (about == "back") return Words::tr("back", "side of a mould");
    if (about == "left") return Words::tr("left", "side of a mould");
    if (about == "right") return Words::tr("right", "side of a mould");
    return {};
}

/// "the sink", "the rib".
QString thingOf(const MouldCheck& check)
{
    static constexpr CutoutPurpose kPurposes[] = {CutoutPurpose::sink, CutoutPurpose::hob, CutoutPurpose::tap,
                                                  CutoutPurpose::drain};
    static constexpr const char* kWords[] = {"sink", "hob", "tap", "drain"};
    for (std::size_t i = 0; i < std::size(kWords); ++i) {
        if (check.what == kWords[i]) return Words::tr("the %1").arg(purposeName(kPurposes[i]).toLower());
    }
    if (check.what == "rim") return Words::tr("the rim");
    if (check.what == "joint") return Words::tr("the joint");
    if (check.what == "rib") return Words::tr("the rib");
    if (check.what == "outline") return Words::tr("the larger part of the piece");
    if (check.what == "drip") return Words::tr("the drip groove");
    if (check.what == "rebate") return Words::tr("the rebate");
    return Words::tr("the opening");
}

/// Ids of those that are the same, and of those that are the mirror image.
std::pair<QString, QString> twinsOf(const Mould& mould)
{
    QStringList same;
    QStringList mirror;
    for (const Twin& twin : mould.twins) {
        (twin.kind == TwinKind::same ? same : mirror).append(QString::fromStdString(twin.casting));
    }
    return {same.join(QStringLiteral(", ")), mirror.join(QStringLiteral(", "))};
}

}  // namespace

QString mouldPartName(MouldPartKind kind)
{
    switch (kind) {
    case MouldPartKind::base: return Words::tr("base", "part of a mould");
    case MouldPartKind::side: return Words::tr("side", "part of a mould");
    case MouldPartKind::former: return Words::tr("former", "part of a mould");
    case MouldPartKind::filler: return Words::tr("filler", "part of a mould");
    case MouldPartKind::core: return Words::tr("core", "part of a mould");
    case MouldPartKind::chamfer: return Words::tr("chamfer strip", "part of a mould");
    case MouldPartKind::drip: return Words::tr("strip of the drip groove", "part of a mould");
    case MouldPartKind::rebate: return Words::tr("strip of the rebate", "part of a mould");
    case MouldPartKind::holdDown: return Words::tr("hold-down", "part of a mould");
    case MouldPartKind::bracket: return Words::tr("bracket", "part of a mould");
    case MouldPartKind::spacer: return Words::tr("spacer", "part of a mould");
    case MouldPartKind::cleat: return Words::tr("cleat under a joint", "part of a mould");
    case MouldPartKind::foot: return Words::tr("batten at the foot", "part of a mould");
    case MouldPartKind::tie: return Words::tr("tie with sleeve, two plates and nuts", "part of a mould");
    }
    return {};
}

QString mouldStuffName(MouldStuff stuff)
{
    switch (stuff) {
    case MouldStuff::board: return Words::tr("board", "stuff of a mould part");
    case MouldStuff::foam: return Words::tr("foam", "stuff of a mould part");
    case MouldStuff::batten: return Words::tr("batten", "stuff of a mould part");
    case MouldStuff::strip: return Words::tr("strip", "stuff of a mould part");
    case MouldStuff::block: return Words::tr("block of mortar", "stuff of a mould part");
    case MouldStuff::rod: return Words::tr("threaded rod M8", "stuff of a mould part");
    }
    return {};
}

QString mouldPartText(const MouldPart& part)
{
    const QString name = mouldPartName(part.kind);
    if (part.about.empty()) return name;
    const QString side = sideName(part.about);
    if (!side.isEmpty()) return Words::tr("%1, %2", "part of a mould, where").arg(name, side);
    return Words::tr("%1 of %2", "part of a mould, cutout").arg(name, QString::fromStdString(part.about));
}

QString mouldNumber(const MouldPart& part)
{
    return QString::fromStdString(part.name).section(QLatin1Char('-'), -1);
}

QString mouldNumbers(const std::vector<const MouldPart*>& parts)
{
    std::vector<int> numbers;
    QStringList words;
    for (const MouldPart* part : parts) {
        bool ok = false;
        const int number = mouldNumber(*part).toInt(&ok);
        if (ok) {
            numbers.push_back(number);
        } else {
            words.append(mouldNumber(*part));
        }
    }
    std::sort(numbers.begin(), numbers.end());
    for (std::size_t i = 0; i < numbers.size();) {
        std::size_t end = i;
        while (end + 1 < numbers.size() && numbers[end + 1] == numbers[end] + 1) ++end;
        if (end > i) {
            words.append(Words::tr("%1–%2", "range of numbers").arg(numbers[i]).arg(numbers[end]));
        } else {
            words.append(QString::number(numbers[i]));
        }
        i = end + 1;
    }
    return words.join(QStringLiteral(", "));
}

QString mitreText(const std::array<double, 2>& mitreDeg)
{
    const auto end = [](double deg) {
        if (deg == 0.0) return Words::tr("square", "end of a board");
        const QString angle = Words::tr("%1°").arg(shortNumberText(std::abs(deg), 1));
        return deg > 0.0 ? angle : Words::tr("%1 inner", "mitre at an inner corner").arg(angle);
    };
    if (mitreDeg[0] == 0.0 && mitreDeg[1] == 0.0) return {};
    return Words::tr("ends %1 and %2", "mitres of a board").arg(end(mitreDeg[0]), end(mitreDeg[1]));
}

QString mouldStepText(const MouldPart& part)
{
    const QString height = lengthText(part.fromMm);
    switch (part.kind) {
    case MouldPartKind::base: return Words::tr("Lay the base level and free of twist, good face up.");
    case MouldPartKind::side: return Words::tr("Screw the sides on, good faces inwards.");
    case MouldPartKind::bracket: return Words::tr("Screw the brackets to base and sides: the sides stay square.");
    case MouldPartKind::former:
        return Words::tr("Screw the former down, wide end on the base; check its distances to both edges.");
    case MouldPartKind::chamfer: return Words::tr("Glue the chamfer strip into the edge, no gap behind it.");
    case MouldPartKind::rebate: return Words::tr("Screw the strip of the rebate to the base.");
    case MouldPartKind::filler:
        return part.fromMm > 0.0
                   ? Words::tr("Lay the foam in %1 above the base, once the concrete has come up to there.").arg(height)
                   : Words::tr("Fix the foam to the base.");
    case MouldPartKind::core:
        return Words::tr("Set the core %1 above the base, held off everything by its spacers; check it all round.").arg(height);
    case MouldPartKind::drip: return Words::tr("Hang the strip of the drip groove from above, level with the top.");
    case MouldPartKind::spacer: return Words::tr("Set the spacers under the core; they stay in the concrete.");
    case MouldPartKind::cleat:
        return Words::tr("Join the boards of the base on the cleats, level; seal the joint, or it shows on the face.");
    case MouldPartKind::foot:
        return Words::tr("Screw the battens to the base, hard against the feet of the brackets (studs).");
    case MouldPartKind::tie:
        return Words::tr("Put the rods through at the heights in the table of ties, by the studs, and draw the nuts up; in concrete "
                         "they run in a sleeve that stays.");
    case MouldPartKind::holdDown: return Words::tr("Screw the battens across: they hold foam and strips down while you pour.");
    }
    return {};
}

QString mouldViewTitle(const Mould& mould)
{
    if (mould.mirrored) return Words::tr("AS IT LIES IN THE MOULD: MIRRORED");
    return mould.standing ? Words::tr("AS IT STANDS IN THE MOULD: NOT MIRRORED")
                          : Words::tr("AS IT LIES IN THE MOULD: NOT MIRRORED");
}

QString standingViewTitle() { return Words::tr("AS IT STANDS"); }

QString mouldFaceText(const Mould& mould, PartKind kind)
{
    if (mould.standing) return Words::tr("poured standing: you look down into it");
    if (kind == PartKind::counter) {
        return mould.mirrored ? Words::tr("face down: you look at its underside")
                              : Words::tr("face up: you look at its face");
    }
    return mould.mirrored ? Words::tr("front down: you look at its back") : Words::tr("front up: you look at its front");
}

QString frontEdgeName(PartKind kind)
{
    return kind == PartKind::counter ? Words::tr("front edge") : Words::tr("foot");
}

QString mouldCheckSentence(const MouldCheck& check, PartKind kind)
{
    if (check.side.empty()) return {};
    const QString sentence = check.side == "left" ? Words::tr("Stand at the %1 of the mould: %2 is on your left.")
                                                  : Words::tr("Stand at the %1 of the mould: %2 is on your right.");
    return sentence.arg(frontEdgeName(kind), thingOf(check));
}

QString mouldCheckQuestion(const MouldCheck& check, PartKind kind)
{
    if (check.side.empty()) return {};
    const QString sentence = check.side == "left" ? Words::tr("You stand at the %1 of the mould. Is %2 on your left?")
                                                  : Words::tr("You stand at the %1 of the mould. Is %2 on your right?");
    return sentence.arg(frontEdgeName(kind), thingOf(check));
}

QStringList twinTexts(const Mould& mould)
{
    const auto [same, mirror] = twinsOf(mould);
    QStringList said;
    if (!same.isEmpty()) said << Words::tr("same as %1: may come out of this mould").arg(same);
    if (!mirror.isEmpty()) said << Words::tr("mirror twin of %1: NOT out of this mould").arg(mirror);
    return said;
}

QStringList twinNames(const Mould& mould)
{
    const auto [same, mirror] = twinsOf(mould);
    QStringList said;
    if (!same.isEmpty()) said << Words::tr("same as %1").arg(same);
    if (!mirror.isEmpty()) said << Words::tr("mirror twin of %1").arg(mirror);
    return said;
}

}  // namespace yardcast::ui
