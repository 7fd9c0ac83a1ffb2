#include "ui/drawing/strength_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

#include <QCoreApplication>
#include <QPainter>

#include "ui/drawing/contours.h"
#include "ui/drawing/marks.h"
#include "ui/wording/figures.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

constexpr double kFull = 100.0;
constexpr int kMostLines = 8;
/// Lines shorter than this have no room for their figure; those shorter still are no more than specks. Style units.
constexpr double kShortestWithFigure = 20.0;
constexpr double kSpeck = 4.0;
constexpr int kMostFiguresALevel = 3;
constexpr double kLetterUnits = 4.0;

QPolygonF mapped(const std::vector<Point>& points, const OwnMap& map)
{
    QPolygonF polygon;
    for (const Point& point : points) {
        polygon.append(map(point));
    }
    return polygon;
}

QPainterPath pathOfPieces(const std::vector<Ring>& pieces, const OwnMap& map)
{
    // One path for all, so that no seams show between the pieces.
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    for (const Ring& piece : pieces) {
        path.addPolygon(mapped(piece, map));
        path.closeSubpath();
    }
    return path;
}

QColor mixed(const QColor& a, const QColor& b, double share)
{
    const auto part = [share](int from, int to) { return static_cast<int>(std::lround(from + (to - from) * share)); };
    return QColor(part(a.red(), b.red()), part(a.green(), b.green()), part(a.blue(), b.blue()));
}

double mostUse(const StrengthField& field)
{
    double most = 0.0;
    for (const double use : field.usePercent) {
        if (std::isfinite(use)) most = std::max(most, use);
    }
    return most;
}

/// Lines of 100 % are wide, the others narrow.
QPen linePen(double level, const PaintStyle& style)
{
    return level >= kFull ? outlinePen(style) : thinPen(style, style.ink.ink);
}

constexpr double kHandUnits = 2.0;
constexpr double kWorstUnits = 3.4;

bool isHand(const HeldAt& held)
{
    return held.under.starts_with("hand ");
}

/// Hands are drawn as rings: the patches they press on are a matter of the solver's.
bool isPoint(const HeldAt& held)
{
    return held.region.empty() || isHand(held);
}

void paintRing(QPainter& painter, const HeldAt& held, QPointF at, const PaintStyle& style)
{
    const double radius = kHandUnits * style.mmPerUnit;
    painter.setPen(style.pen(style.ink.ink, style.wide()));
    painter.setBrush(style.ink.sheet);
    painter.drawEllipse(at, radius, radius);
    painter.setBrush(Qt::NoBrush);
    if (!isHand(held)) return;
    TextLook look;
    look.bold = true;
    look.sizeUnits = 1.25 * kHandUnits;
    paintText(painter, at, QString::fromStdString(held.under.substr(held.under.find(' ') + 1)), style, look);
}

void paintRegion(QPainter& painter, const HeldAt& held, const OwnMap& map, const PaintStyle& style)
{
    painter.setBrush(Qt::NoBrush);
    painter.setPen(hiddenPen(style, style.ink.ink));
    painter.drawPath(regionPath(held.region, map));
}

void paintHeld(QPainter& painter, const HeldAt& held, bool isHandled, const OwnMap& map, const PaintStyle& style,
               std::vector<OverlayLabel>& labels)
{
    const QPointF at = map(held.centre);
    const bool point = isPoint(held);
    if (!point) paintRegion(painter, held, map, style);
    const QString name = heldText(held.under);
    QString words = name;
    if (held.liftedOff) {
        // A piece that is handled rests on nothing that it could leave.
        if (!isHandled) words = QCoreApplication::translate("Drawing", "%1 lifts off").arg(name);
    } else if (held.under != "late corner") {
        words = QCoreApplication::translate("Drawing", "%1: %2", "what holds it, force")
                    .arg(name, heldForceText(held.forceN));
    }
    OverlayLabel label = platedLabel(at, {words, name}, style, 50.0);
    label.clearUnits = point ? kHandUnits : 0.0;
    labels.push_back(std::move(label));
}

/// The rings come last, so that no line runs through their numbers.
void paintRings(QPainter& painter, const CaseResult& result, const OwnMap& map, const PaintStyle& style)
{
    for (const HeldAt& held : result.held) {
        if (isPoint(held)) paintRing(painter, held, map(held.centre), style);
    }
}

bool isHandled(StrengthCase which)
{
    return which != StrengthCase::ownWeight && which != StrengthCase::inPlace && which != StrengthCase::standing;
}

/// Both ends of a cut and the ways out of it there, first the one farther from the middle of the casting.
using CutEnds = std::array<std::pair<QPointF, QPointF>, 2>;

CutEnds endsOf(const SectionForces& section, const StrengthField* field, const OwnMap& map)
{
    Point middle{};
    if (field && !field->mesh.nodes.empty()) {
        for (const Point& node : field->mesh.nodes) middle = middle + node;
        middle = middle * (1.0 / static_cast<double>(field->mesh.nodes.size()));
    }
    const bool toIsOut = distance(section.to, middle) >= distance(section.from, middle);
    const QPointF end = map(toIsOut ? section.to : section.from);
    const QPointF other = map(toIsOut ? section.from : section.to);
    const QPointF along = end - other;
    const double run = std::hypot(along.x(), along.y());
    const QPointF out = run > 0.0 ? along / run : QPointF(0.0, 1.0);
    return {std::pair(end, out), std::pair(other, -out)};
}

QRectF squareAbout(QPointF at, double halfMm)
{
    return {at.x() - halfMm, at.y() - halfMm, 2.0 * halfMm, 2.0 * halfMm};
}

/// Letters stand at an end of their cut, whatever else has to give way: the table is of no use without them. What they
/// cover is added to `taken`.
void paintLetters(QPainter& painter, const std::vector<SectionForces>& sections, const StrengthField* field,
                  const OwnMap& map, const PaintStyle& style, std::vector<QRectF>& taken)
{
    const double unit = style.mmPerUnit;
    TextLook look;
    look.bold = true;
    look.behind = style.ink.sheet;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const CutEnds ends = endsOf(sections[i], field, map);
        const QSizeF size = textSizeMm(sectionLetter(i), style, look);
        const auto boxAt = [&](QPointF at) {
            return QRectF(at - QPointF(size.width() / 2.0, size.height() / 2.0), size);
        };
        std::pair<QPointF, QPointF> chosen{ends[0].first, ends[0].first + ends[0].second * (kLetterUnits * unit)};
        bool found = false;
        for (const double away : {kLetterUnits, kLetterUnits + 2.5}) {
            for (const auto& [end, out] : ends) {
                const QPointF aside(-out.y(), out.x());
                for (const double shift : {0.0, 3.0, -3.0, 6.0, -6.0}) {
                    const QPointF at = end + out * (away * unit) + aside * (shift * unit);
                    if (found || std::any_of(taken.begin(), taken.end(),
                                             [&](const QRectF& box) { return box.intersects(boxAt(at)); })) {
                        continue;
                    }
                    chosen = {end, at};
                    found = true;
                }
            }
        }
        painter.setPen(outlinePen(style));
        painter.drawLine(chosen.first, chosen.first + (chosen.second - chosen.first) * 0.45);
        paintText(painter, chosen.second, sectionLetter(i), style, look);
        taken.push_back(boxAt(chosen.second));
    }
}

void paintWorst(QPainter& painter, QPointF at, const PaintStyle& style)
{
    const double radius = 1.9 * style.mmPerUnit;
    painter.setPen(style.pen(style.ink.ink, style.wide()));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(at, radius, radius);
    for (const QPointF& arm : {QPointF(1.0, 0.0), QPointF(0.0, 1.0)}) {
        painter.drawLine(at - 1.7 * radius * arm, at - 0.4 * radius * arm);
        painter.drawLine(at + 0.4 * radius * arm, at + 1.7 * radius * arm);
    }
}

}  // namespace

std::vector<double> useLevels(double mostPercent)
{
    double step = 25.0;
    for (const double finer : {10.0, 5.0, 2.0, 1.0}) {
        if (mostPercent < 2.0 * step) step = finer;
    }
    for (const double coarser : {50.0, 100.0, 200.0, 500.0, 1000.0}) {
        if (mostPercent > kMostLines * step) step = coarser;
    }
    std::vector<double> levels;
    for (int i = 1; i <= kMostLines && i * step <= mostPercent; ++i) levels.push_back(i * step);
    if (mostPercent >= kFull && std::find(levels.begin(), levels.end(), kFull) == levels.end())
        levels.insert(levels.begin(), kFull);
    std::sort(levels.begin(), levels.end());
    return levels;
}

QString sectionLetter(std::size_t index)
{
    constexpr std::size_t kLetters = 26;
    QString letter(QChar(static_cast<char16_t>(u'a' + index % kLetters)));
    if (index >= kLetters) letter += QString::number(index / kLetters + 1);
    return letter;
}

std::vector<SectionForces> shownSections(const CaseResult& result, std::size_t most)
{
    std::vector<std::size_t> order(result.sections.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return result.sections[a].usePercent > result.sections[b].usePercent;
    });
    order.resize(std::min(order.size(), most));
    std::sort(order.begin(), order.end());
    std::vector<SectionForces> shown;
    for (const std::size_t index : order) shown.push_back(result.sections[index]);
    return shown;
}

void paintUse(QPainter& painter, const CaseResult& result, const OwnMap& map, const PaintStyle& style)
{
    if (!result.field) return;
    const StrengthField& field = *result.field;
    const double most = mostUse(field);
    std::vector<Ring> all;
    for (const auto& triangle : field.mesh.triangles) {
        all.push_back({field.mesh.nodes[triangle[0]], field.mesh.nodes[triangle[1]], field.mesh.nodes[triangle[2]]});
    }
    painter.fillPath(pathOfPieces(all, map), style.ink.sheet);
    const std::vector<double> levels = useLevels(most);
    constexpr double kDarkest = 0.42;
    for (const double level : levels) {
        const double share = kDarkest * std::min(1.0, level / kFull);
        painter.fillPath(pathOfPieces(piecesAbove(field.mesh, field.usePercent, level), map),
                         mixed(style.ink.sheet, style.ink.ink, share));
    }
    if (most >= kFull) {
        painter.setPen(thinPen(style, style.ink.ink));
        const double spacing = (style.onPaper ? 1.4 : 6.0) * style.mmPerUnit;
        for (const auto& [from, to] : hatchThrough(piecesAbove(field.mesh, field.usePercent, kFull), 45.0, spacing)) {
            painter.drawLine(map(from), map(to));
        }
    }
    painter.setBrush(Qt::NoBrush);
    for (const ContourLine& line : contourLines(field.mesh, field.usePercent, levels)) {
        if (line.lengthMm() < kSpeck * style.mmPerUnit) continue;
        painter.setPen(linePen(line.level, style));
        QPolygonF polygon = mapped(line.points, map);
        if (line.closed) polygon.append(polygon.first());
        painter.drawPolyline(polygon);
    }
}

void paintUseMarks(QPainter& painter, const CaseResult& result, const std::vector<SectionForces>& sections,
                   const OwnMap& map, const PaintStyle& style, std::vector<OverlayLabel> more)
{
    std::vector<OverlayLabel> labels = std::move(more);
    for (const HeldAt& held : result.held) paintHeld(painter, held, isHandled(result.which), map, style, labels);
    painter.setPen(centrePen(style, style.ink.ink));
    for (const SectionForces& section : sections) painter.drawLine(map(section.from), map(section.to));
    paintRings(painter, result, map, style);
    std::vector<QRectF> taken;
    for (const OverlayLabel& label : labels) {
        if (label.clearUnits > 0.0) taken.push_back(squareAbout(label.at, label.clearUnits * style.mmPerUnit));
    }
    if (result.personGoverns) taken.push_back(squareAbout(map(result.personAt), kWorstUnits * style.mmPerUnit));
    if (result.holds && result.usePercent > 0.0)
        taken.push_back(squareAbout(map(result.at), kWorstUnits * style.mmPerUnit));
    paintLetters(painter, sections, result.field.get(), map, style, taken);
    if (result.personGoverns) {
        const QPointF at = map(result.personAt);
        const double half = 0.9 * style.mmPerUnit;
        painter.fillRect(QRectF(at - QPointF(half, half), at + QPointF(half, half)), style.ink.ink);
        OverlayLabel label = platedLabel(at, {QCoreApplication::translate("Drawing", "person")}, style, 60.0);
        label.clearUnits = kWorstUnits;
        labels.push_back(std::move(label));
    }
    if (result.holds && result.usePercent > 0.0) {
        const QPointF at = map(result.at);
        paintWorst(painter, at, style);
        OverlayLabel label = platedLabel(at, {percentText(result.usePercent)}, style, 100.0);
        label.clearUnits = kWorstUnits;
        label.look.bold = true;
        labels.push_back(std::move(label));
    }
    if (result.field) {
        const double least = kShortestWithFigure * style.mmPerUnit;
        std::map<double, int> figures;
        for (const ContourLine& line :
             contourLines(result.field->mesh, result.field->usePercent, useLevels(mostUse(*result.field)))) {
            const double run = line.lengthMm();
            // The longest of a level come first.
            if (run < least || ++figures[line.level] > kMostFiguresALevel) continue;
            const QString figure = QCoreApplication::translate("Drawing", "%1").arg(numberText(line.level, 0));
            labels.push_back(
                platedLabel(map(line.alongMm(0.5 * run).first), {figure}, style, 20.0 + line.level / kFull));
        }
    }
    paintLabels(painter, labels, style, std::move(taken));
}

void paintHolders(QPainter& painter, const CaseResult& result, const OwnMap& map, const PaintStyle& style,
                  std::vector<OverlayLabel> more)
{
    std::vector<OverlayLabel> labels = std::move(more);
    for (const HeldAt& held : result.held) {
        // A ring has its number in it.
        if (isPoint(held)) continue;
        paintRegion(painter, held, map, style);
        labels.push_back(platedLabel(map(held.centre), {heldText(held.under)}, style, 50.0));
    }
    std::vector<QRectF> taken;
    for (const HeldAt& held : result.held) {
        if (isPoint(held)) taken.push_back(squareAbout(map(held.centre), kHandUnits * style.mmPerUnit));
    }
    paintLabels(painter, labels, style, std::move(taken));
    paintRings(painter, result, map, style);
}

}  // namespace yardcast::ui
