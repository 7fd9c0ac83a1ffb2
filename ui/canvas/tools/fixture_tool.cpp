#include "ui/canvas/tools/fixture_tool.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "core/plan/edits.h"
#include "ui/canvas/new_parts.h"
#include "ui/document/plan_document.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("FixtureTool", text); }

Box boxOf(Point a, Point b)
{
    return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
}

}  // namespace

FixtureTool::FixtureTool(ToolHost& host, FixtureKind kind) : Tool(host), kind_(kind) {}

QString FixtureTool::name() const { return tr("Place %1").arg(fixtureName(kind_).toLower()); }

QString FixtureTool::hint() const
{
    if (!hasExtent(kind_)) return tr("Click where the connection comes out, or type its place: 1200 300.");
    return tr("Drag from corner to corner, or click to place one of the usual size.");
}

void FixtureTool::activate() { targets_ = host().snapTargets({}); }

Fixture FixtureTool::fixtureIn(const Box& box) const
{
    Fixture fixture;
    fixture.id = freeFixtureId(*host().document().committed(), kind_);
    fixture.kind = kind_;
    fixture.at = box.low;
    if (hasExtent(kind_)) fixture.size = Size{box.width(), box.height()};
    return fixture;
}

void FixtureTool::place(const Fixture& fixture)
{
    anchor_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    host().document().apply(tr("Add %1").arg(fixtureName(kind_).toLower()),
                            [&](const Plan& plan) { return addFixture(plan, fixture); });
    host().finishedFixture(fixture.id);
}

void FixtureTool::press(const PointerEvent& event)
{
    if (event.button != Qt::LeftButton) return;
    targets_ = host().snapTargets({});
    anchor_ = host().snapPoint(targets_, event.at, event.modifiers).at;
    corner_ = *anchor_;
    targets_.gridOrigin = *anchor_;
}

void FixtureTool::move(const PointerEvent& event)
{
    if (!anchor_) {
        targets_.gridOrigin = {};
        hover_ = host().snapPoint(targets_, event.at, event.modifiers).at;
        return;
    }
    if (!event.dragged || !hasExtent(kind_)) return;
    corner_ = host().snapPoint(targets_, event.at, event.modifiers).at;
    const Box box = boxOf(*anchor_, corner_);
    const Fixture fixture = fixtureIn(box);
    host().document().preview([fixture](const Plan& plan) { return addFixture(plan, fixture); });
    const QString text = sizeText(box.width(), box.height());
    host().sayAtPointer(text);
    host().say(text);
}

void FixtureTool::release(const PointerEvent& event)
{
    if (!anchor_) return;
    if (event.dragged) move(event);
    Box box = boxOf(*anchor_, corner_);
    if (!event.dragged || !hasExtent(kind_)) {
        const Size usual = hasExtent(kind_) ? defaultFixtureSize(kind_) : Size{};
        const Point half{std::round(usual.width / 2.0), std::round(usual.depth / 2.0)};
        // A wall is drawn along its near face; all else around the point.
        const Point low = kind_ == FixtureKind::wall ? Point{anchor_->x - half.x, anchor_->y} : *anchor_ - half;
        box = {low, low + Point{usual.width, usual.depth}};
    } else if (box.width() < 1.0 || box.height() < 1.0) {
        // Dragged as a line: as thick as the usual one.
        const Size usual = defaultFixtureSize(kind_);
        const double thick = std::min(usual.width, usual.depth);
        if (box.width() >= box.height()) {
            box.high.y = box.low.y + thick;
        } else {
            box.high.x = box.low.x + thick;
        }
    }
    place(fixtureIn(box));
}

QString FixtureTool::typed(const TypedSize& size)
{
    if (!hasExtent(kind_)) {
        if (!size.secondMm) return tr("Two figures are understood here: how far right and how far back.");
        place(fixtureIn({{size.firstMm, *size.secondMm}, {size.firstMm, *size.secondMm}}));
        return {};
    }
    const Size usual = defaultFixtureSize(kind_);
    const Size wanted{size.firstMm, size.secondMm.value_or(std::min(usual.width, usual.depth))};
    if (!(wanted.width >= 1.0) || !(wanted.depth >= 1.0)) return tr("A size must be at least 1 mm.");
    const Point at = anchor_ ? *anchor_ : hover_.value_or(host().viewCentre());
    const Point way{anchor_ && corner_.x < at.x ? -wanted.width : wanted.width,
                    anchor_ && corner_.y < at.y ? -wanted.depth : wanted.depth};
    place(fixtureIn(boxOf(at, at + way)));
    return {};
}

bool FixtureTool::cancel()
{
    if (!anchor_) return false;
    anchor_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    return true;
}

}  // namespace yardcast::ui
