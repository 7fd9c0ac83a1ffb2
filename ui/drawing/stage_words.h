#pragma once

#include <string>
#include <vector>

#include <QLineF>
#include <QRectF>
#include <QString>

#include "core/assess/assessment.h"
#include "ui/drawing/label_set.h"

/// Words over the drawing in the stages Steel, Mould, Pour and Lift: none lies over another, and on the screen each stays on what it
/// speaks of. What finds no room is said shorter or left to the cards; a part that is chosen is spoken of in full, beside
/// it where it has to be.
namespace yardcast::ui {

struct StageWords {
    QString text;
    QRectF box;           ///< drawing mm
    TextLook look;
    QLineF lead;          ///< to what it speaks of, where it stands beside it; else null
    friend bool operator==(const StageWords& a, const StageWords& b)
    {
        return a.text == b.text && a.box == b.box && a.lead == b.lead && a.look.colour == b.look.colour;
    }
};

/// What is to be known of the view besides the assessment.
struct WordsView {
    std::vector<std::string> chosen;   ///< parts
    std::vector<QRectF> keepClear;     ///< signs and figures of other layers, drawing mm
    QRectF visible;                    ///< words stay in here; null: anywhere
};

/// Mark of each mesh and bar and how far above the mould base it lies; none but from above.
std::vector<StageWords> steelWords(const Plan& plan, const Assessment& assessment, const Projection& projection,
                                   const PaintStyle& style, const WordsView& view = {});
/// The counter whose steel it is; null where the plan no longer has it.
const Part* counterWithSteel(const Plan& plan, const CastingSteelLayout& layout);
/// Place in the order of pouring, litres, mix, batches and how high each layer comes.
std::vector<StageWords> pourWords(const Plan& plan, const Assessment& assessment, const Projection& projection,
                                  const PaintStyle& style, const WordsView& view = {});
/// Mass and people, and what each grip of a counter bears.
std::vector<StageWords> liftWords(const Plan& plan, const Assessment& assessment, const Projection& projection,
                                  const PaintStyle& style, const WordsView& view = {});
/// Each casting's mould, whether it is built mirrored, and which others look alike.
std::vector<StageWords> mouldWords(const Plan& plan, const Assessment& assessment, const Projection& projection,
                                   const PaintStyle& style, const WordsView& view = {});
/// Those that `exposed` shows some of; all where it is null.
void paintStageWords(QPainter& painter, const std::vector<StageWords>& words, const PaintStyle& style,
                     const QRectF& exposed = {});

/// The middle of a casting in the view: where its words go.
QPointF castingMiddle(const Plan& plan, const PlacedCasting& placed, const Part& part, const Projection& projection);
/// Weight of a label: heavier than any casting, so that words of counters go before those of what stands below them.
inline constexpr double kCounterFirst = 1e6;
/// Where hands take one casting of a counter, with what each bears.
struct CastingGrips {
    std::vector<Point> grips;   ///< own frame
    bool own = false;           ///< the plan's, not the program's
};
CastingGrips castingGrips(const Counter& counter, const Casting& casting, const CastingStrength* strength);
/// Whether the sign of a casting (centre of gravity, hand of its mould) is shown: not of what a counter hides, unless it is chosen.
bool showsSign(const Plan& plan, const Part& part, const Projection& projection, const PaintStyle& style,
                 const std::vector<std::string>& chosen);
/// Half sizes of signs, style units.
double centreUnits(const PaintStyle& style);
double gripUnits(const PaintStyle& style);

}  // namespace yardcast::ui
