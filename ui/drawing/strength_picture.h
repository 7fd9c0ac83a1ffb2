#pragma once

#include <vector>

#include "core/structure/strength.h"
#include "ui/drawing/label_set.h"
#include "ui/drawing/own_map.h"
#include "ui/drawing/part_painter.h"

class QPainter;

/// How much of its strength a casting uses in one case, for paper and SVG: bands of grey with lines of equal use that
/// are told apart without colour, hatched where it is more than there is; what holds it; sections by letters.
namespace yardcast::ui {

/// The lines of equal use that are drawn for a case, percent: 100 always among them, some eight at most.
std::vector<double> useLevels(double mostPercent);
/// "a" ... "z", then "a2" ...
QString sectionLetter(std::size_t index);
/// Sections of a case that a drawing and its table show: those of the greatest use, at most `most`, in the order they
/// came in.
std::vector<SectionForces> shownSections(const CaseResult& result, std::size_t most);

/// Bands, lines and hatching over the casting; nothing where the case has no field.
void paintUse(QPainter& painter, const CaseResult& result, const OwnMap& map, const PaintStyle& style);
/// What holds it with its force, where it lifts off, the worst place, the sections with their letters, and the figures
/// of the lines of equal use.
/// `more` are labels of other things that have to keep clear of them.
void paintUseMarks(QPainter& painter, const CaseResult& result, const std::vector<SectionForces>& sections,
                   const OwnMap& map, const PaintStyle& style, std::vector<OverlayLabel> more = {});
/// Only what holds it: hands as rings with their numbers, battens with their names, and `more`.
void paintHolders(QPainter& painter, const CaseResult& result, const OwnMap& map, const PaintStyle& style,
                  std::vector<OverlayLabel> more = {});
/// How far the marks reach beyond the casting, in style units.
inline constexpr double kUseMarksReach = 9.0;

}  // namespace yardcast::ui
