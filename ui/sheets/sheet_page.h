#pragma once

#include <functional>
#include <vector>

#include <QRectF>
#include <QString>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "ui/drawing/part_painter.h"
#include "ui/sheets/drawing_fit.h"
#include "ui/sheets/print_pack.h"

class QPainter;

namespace yardcast::ui {

/// One A4 page: what its title block says, and how its area is painted (mm of paper, origin at the sheet's corner).
struct SheetPage {
    bool landscape = false;
    QString sheet;   ///< "Shopping list"
    QString part;    ///< piece the sheet is about, empty for the whole plan
    QString view;    ///< "from above, as it stands"; empty for lists
    QString scale;   ///< "1:20"; empty for lists
    double scaleOf = 0.0;  ///< 20 for 1:20: gives the scale bar and the check line; 0 for lists
    QString caution;       ///< stands beside the check line
    std::function<void(QPainter&, const QRectF& area)> paint;
};

std::vector<SheetPage> shoppingPages(const Plan& plan, const Assessment& assessment);
/// A list a material: each sheet drawn, its cuts in sawing order, its pieces to tick; then all lengths. One page that says so
/// where cuts have not been worked out.
std::vector<SheetPage> sawPages(const Plan& plan, const Assessment& assessment);
/// The site where there is one, the kitchen, and each counter.
std::vector<SheetPage> planPages(const Plan& plan, const Assessment& assessment);
std::vector<SheetPage> frontPages(const Plan& plan, double lookDeg);
/// A card a mix, for whoever stands at the mixer. One page that says so where nothing is cast.
std::vector<SheetPage> mixPages(const Plan& plan, const Assessment& assessment);
std::vector<SheetPage> liftPages(const Plan& plan, const Assessment& assessment);
/// For each counter the worst case in place and the worst when it is handled, its sections, where hands and battens go on
/// the day it is lifted, and every case; supports and panels in a table. One page that says so where strength has not been computed.
std::vector<SheetPage> strengthPages(const Plan& plan, const Assessment& assessment);
/// One a day of pouring: castings in order with their layers and times, batches to tick, what holds foam down, curing.
std::vector<SheetPage> pourPages(const Plan& plan, const Assessment& assessment);
/// For each casting with steel: as it lies in the mould with its section, and its lists.
std::vector<SheetPage> steelPages(const Plan& plan, const Assessment& assessment);
/// For each casting its mould as one stands in front of it with the casting as it stands beside it, its section, what to
/// ask at the mould, and its lists. `only`: of this part or casting, empty for all.
std::vector<SheetPage> mouldPages(const Plan& plan, const Assessment& assessment, const QString& only);
/// Whatever is sawn to a shape, in true size over as many pages as it takes. `only`: of this part, casting, cutout or
/// piece of a mould; empty for all that take no more than a dozen pages.
std::vector<SheetPage> templatePages(const Plan& plan, const Assessment& assessment, const QString& only);
/// The plan from above: with its site and the connection points over all; measured or not.
enum class Measured { no, yes };
ScaledDrawing planDrawing(const Plan& plan, Measured measured);
/// One part in its own frame, front edge at the bottom, with all its dimensions.
ScaledDrawing partDrawing(const Part& part);
/// One counter alone with all that is needed to build it.
SheetPage counterPage(const Plan& plan, const Assessment& assessment, const Part& part);
/// "FRONT: one stands here" with an arrow, in the middle below `at` (drawing mm).
void paintFrontMark(QPainter& painter, QPointF at, const PaintStyle& style);

}  // namespace yardcast::ui
