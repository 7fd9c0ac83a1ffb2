#include <algorithm>
#include <memory>

#include <QPainter>

#include "ui/drawing/dimension_painter.h"
#include "ui/drawing/level_marks.h"
#include "ui/drawing/marks.h"
#include "ui/sheets/cautions.h"
#include "ui/sheets/drawing_fit.h"
#include "ui/sheets/scales.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

bool isConnection(const Fixture& fixture)
{
    return fixture.kind == FixtureKind::water || fixture.kind == FixtureKind::waste ||
           fixture.kind == FixtureKind::power || fixture.kind == FixtureKind::gas;
}

/// The plan with only those fixtures of its site that belong to the kitchen: connection points near its parts.
Plan withNearConnections(const Plan& plan, const Projection& projection)
{
    Plan near = plan;
    near.site.outline.reset();
    const QRectF reach = partsBounds(plan, projection).adjusted(-250.0, -250.0, 250.0, 250.0);
    std::erase_if(near.site.fixtures, [&](const Fixture& fixture) {
        return !isConnection(fixture) || !reach.intersects(fixtureShape(fixture, projection).boundingRect());
    });
    return near;
}

ScaledDrawing drawingInFront(const Plan& whole, double lookDeg)
{
    const Projection front = Projection::front(lookDeg);
    // Fixtures have no heights: the elevation leaves them to the plan from above.
    Plan bare = whole;
    bare.site.fixtures.clear();
    const auto plan = std::make_shared<const Plan>(std::move(bare));
    const auto dimensionsAt = [plan, front](const PaintStyle& style) {
        std::vector<Dimension> dimensions = drawingDimensions(*plan, front);
        staggerFigures(dimensions, style);
        return dimensions;
    };
    ScaledDrawing drawing;
    drawing.bounds = [plan, front, dimensionsAt](const PaintStyle& style) {
        QRectF bounds = drawingBounds(*plan, front);
        for (const Dimension& dimension : dimensionsAt(style)) {
            bounds |= dimensionBounds(dimension, style);
        }
        const double unit = style.mmPerUnit;
        // Level marks and their figures stand at the right, the words about the ground above.
        return bounds.adjusted(-1.5 * unit, -9.0 * unit, 30.0 * unit, 3.0 * unit);
    };
    drawing.paint = [plan, front, dimensionsAt](QPainter& painter, const PaintStyle& style) {
        paintSite(painter, *plan, front, style);
        for (const Part* part : paintOrder(*plan, front)) {
            paintPart(painter, *plan, *part, front, style);
        }
        for (const Dimension& dimension : dimensionsAt(style)) {
            paintDimension(painter, dimension, style);
        }
        const double right = drawingBounds(*plan, front).right();
        paintLevelMarks(painter, levelMarks(*plan, front), right + 8.0 * style.mmPerUnit, style);
    };
    return drawing;
}

SheetPage pageOf(const ScaledDrawing& drawing, const QString& sheet, const QString& view, const QString& caution)
{
    const DrawingFit fit = fitOnSheet(drawing);
    SheetPage page;
    page.landscape = fit.landscape;
    page.sheet = sheet;
    page.view = view;
    page.scale = scaleText(fit.scale);
    page.scaleOf = fit.scale;
    page.caution = caution;
    page.paint = [drawing, scale = fit.scale](QPainter& painter, const QRectF& area) {
        paintInBox(painter, drawing, area, scale);
    };
    return page;
}

SheetPage emptyPage(const QString& sheet)
{
    SheetPage page;
    page.sheet = sheet;
    page.paint = [](QPainter& painter, const QRectF& area) {
        Type type;
        type.sizeMm = kTitleType;
        paintWrapped(painter, area.adjusted(10.0, 20.0, -10.0, 0.0),
                     Sheets::tr("The plan has no parts yet. Draw a counter, then print again."), type);
    };
    return page;
}

}  // namespace

ScaledDrawing planDrawing(const Plan& whole, Measured measured)
{
    Plan shown = whole;
    if (measured == Measured::yes) {
        // The arrow of the fall would stand among the rows of dimensions.
        shown.site.ground.reset();
    }
    const auto plan = std::make_shared<const Plan>(std::move(shown));
    const Projection above = Projection::above();
    const auto dimensionsAt = [plan, above, measured](const PaintStyle& style) {
        std::vector<Dimension> dimensions;
        if (measured == Measured::yes) {
            dimensions = drawingDimensions(*plan, above);
            staggerFigures(dimensions, style);
        }
        return dimensions;
    };
    const auto body = [plan, above, dimensionsAt](const PaintStyle& style) {
        QRectF bounds = drawingBounds(*plan, above);
        for (const Dimension& dimension : dimensionsAt(style)) {
            bounds |= dimensionBounds(dimension, style);
        }
        for (const Fixture& fixture : plan->site.fixtures) {
            bounds |= fixtureBounds(fixture, above, style);
        }
        const double air = 1.5 * style.mmPerUnit;
        return bounds.adjusted(-air, -air, air, air);
    };
    ScaledDrawing drawing;
    drawing.bounds = [body](const PaintStyle& style) {
        return body(style).adjusted(0.0, 0.0, 0.0, 6.0 * style.mmPerUnit);
    };
    drawing.paint = [plan, above, dimensionsAt, body](QPainter& painter, const PaintStyle& style) {
        paintSite(painter, *plan, above, style);
        for (const Part* part : paintOrder(*plan, above)) {
            paintPart(painter, *plan, *part, above, style);
        }
        for (const Fixture& fixture : plan->site.fixtures) {
            if (isConnection(fixture)) {
                paintFixture(painter, fixture, above, style);
            }
        }
        for (const Dimension& dimension : dimensionsAt(style)) {
            paintDimension(painter, dimension, style);
        }
        const QRectF bounds = body(style);
        paintFrontMark(painter, QPointF(partsBounds(*plan, above).center().x(), bounds.bottom()), style);
    };
    return drawing;
}

void paintFrontMark(QPainter& painter, QPointF at, const PaintStyle& style)
{
    const double unit = style.mmPerUnit;
    TextLook look;
    look.bold = true;
    look.align = Qt::AlignLeft | Qt::AlignVCenter;
    const QString words = Sheets::tr("FRONT: one stands here");
    const QPointF tip = at + QPointF(-textSizeMm(words, style, look).width() / 2.0, 1.0 * unit);
    QPainterPath arrow(tip);
    arrow.lineTo(tip + QPointF(2.2 * unit, 4.0 * unit));
    arrow.lineTo(tip + QPointF(-2.2 * unit, 4.0 * unit));
    arrow.closeSubpath();
    painter.fillPath(arrow, style.ink.ink);
    paintText(painter, tip + QPointF(4.0 * unit, 2.4 * unit), words, style, look);
}

std::vector<SheetPage> planPages(const Plan& plan, const Assessment& assessment)
{
    const QString sheet = sheetTitle(QStringLiteral("plan"));
    if (plan.parts.empty()) {
        return {emptyPage(sheet)};
    }
    const QString view = Sheets::tr("from above, as it stands");
    const int stops = assessment.count(Severity::stop);
    QString caution = drawingCaution(plan);
    if (stops > 0) {
        caution.prepend(stops == 1 ? Sheets::tr("STOP: 1 finding must be settled first. ")
                                   : Sheets::tr("STOP: %1 findings must be settled first. ").arg(stops));
    }
    std::vector<SheetPage> pages;
    // Dimensions keep clear of walls and trees: these have a sheet of their own.
    if (plan.site.outline || !plan.site.fixtures.empty()) {
        pages.push_back(pageOf(planDrawing(plan, Measured::no), Sheets::tr("Site and kitchen"), view, caution));
    }
    const Plan near = withNearConnections(plan, Projection::above());
    pages.push_back(pageOf(planDrawing(near, Measured::yes), sheet, view, caution));
    for (const PartPtr& part : plan.parts) {
        if (part && part->kind() == PartKind::counter) {
            pages.push_back(counterPage(plan, assessment, *part));
        }
    }
    return pages;
}

namespace {

struct ElevationName {
    QString sheet;
    QString view;
};

/// An elevation that is not the front says so in its title: by the side one stands at, or by its direction.
ElevationName elevationName(double lookDeg)
{
    if (lookDeg == 90.0) {
        return {sheetTitle(QStringLiteral("front")), Sheets::tr("from the front, as it stands")};
    }
    if (lookDeg == 270.0) {
        return {Sheets::tr("Back elevation"), Sheets::tr("from the back, as it stands")};
    }
    if (lookDeg == 0.0) {
        return {Sheets::tr("Left elevation"), Sheets::tr("from the left end, as it stands")};
    }
    if (lookDeg == 180.0) {
        return {Sheets::tr("Right elevation"), Sheets::tr("from the right end, as it stands")};
    }
    return {Sheets::tr("Side elevation"),
            Sheets::tr("%1° from left to right in plan, as it stands").arg(shortNumberText(lookDeg, 1))};
}

}  // namespace

std::vector<SheetPage> frontPages(const Plan& plan, double lookDeg)
{
    const ElevationName name = elevationName(lookDeg);
    if (plan.parts.empty()) {
        return {emptyPage(name.sheet)};
    }
    return {pageOf(drawingInFront(plan, lookDeg), name.sheet, name.view, drawingCaution(plan))};
}

}  // namespace yardcast::ui
