#include <atomic>
#include <set>
#include <thread>

#include <QBuffer>
#include <QImage>
#include <QPainter>
#include <QtTest>

#include "sample_plans.h"
#include "ui/drawing/label_set.h"
#include "ui/drawing/overlay_painter.h"
#include "ui/drawing/part_painter.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

/// What is painted lands on a picture of one pixel for each `mmPerPixel`.
struct Picture {
    QImage image;
    QRectF bounds;
    double mmPerPixel;

    QColor at(QPointF drawing) const
    {
        return image.pixelColor(((drawing - bounds.topLeft()) / mmPerPixel).toPoint());
    }
    int count(const QRectF& drawing, const QColor& colour) const
    {
        int found = 0;
        const QRect box = QRectF((drawing.topLeft() - bounds.topLeft()) / mmPerPixel, drawing.size() / mmPerPixel)
                              .toRect()
                              .intersected(image.rect());
        for (int y = box.top(); y <= box.bottom(); ++y) {
            for (int x = box.left(); x <= box.right(); ++x) {
                found += image.pixelColor(x, y) == colour ? 1 : 0;
            }
        }
        return found;
    }
};

template <typename Paint>
Picture picture(const Plan& plan, const Projection& projection, bool names, Paint paint)
{
    Picture made;
    made.mmPerPixel = 4.0;
    made.bounds = drawingBounds(plan, projection).adjusted(-100, -100, 100, 100);
    made.image = QImage((made.bounds.size() / made.mmPerPixel).toSize(), QImage::Format_RGB32);
    PaintStyle style;
    style.ink = lightInk();
    style.mmPerUnit = made.mmPerPixel;
    style.showNames = names;
    made.image.fill(style.ink.sheet);
    QPainter painter(&made.image);
    painter.scale(1.0 / made.mmPerPixel, 1.0 / made.mmPerPixel);
    painter.translate(-made.bounds.topLeft());
    paint(painter, style);
    return made;
}

Picture planPicture(const Plan& plan, const Projection& projection, bool names = false)
{
    return picture(plan, projection, names, [&](QPainter& painter, const PaintStyle& style) {
        paintSite(painter, plan, projection, style);
        for (const Part* part : paintOrder(plan, projection)) {
            paintPart(painter, plan, *part, projection, style);
        }
    });
}

Assessment withCastings(const Plan& plan)
{
    Assessment assessment;
    std::vector<CastingPtr> castings;
    for (const PartPtr& part : plan.parts) {
        for (const CastingPtr& casting : castingsOf(*part)) {
            assessment.castings.push_back({casting, centroidInPlan(*casting, *part)});
            castings.push_back(casting);
        }
    }
    std::vector<Finding> findings;
    assessment.steel = steelSchedule(plan, castings, findings);
    return assessment;
}

}  // namespace

class DrawingPictureTest : public QObject {
    Q_OBJECT

private slots:
    void concreteIsFilledAndCutoutsAreOpen()
    {
        Plan plan;
        plan.parts = {makePart("C1", sinkCounter())};
        const Picture made = planPicture(plan, Projection::above());
        const Ink ink = lightInk();
        const QColor slab = made.at({1500, -300});
        QVERIFY(slab == ink.cast || slab == ink.castDots);
        // Off the cross lines of the opening.
        QCOMPARE(made.at({500, -310}), ink.sheet);
        QCOMPARE(made.at({-50, -300}), ink.sheet);
        // The tone carries dots.
        QVERIFY(made.count(QRectF(1200, -500, 500, 400), ink.castDots) > 20);
    }

    void aSupportUnderTheSlabIsAHiddenLine()
    {
        Plan bare;
        bare.parts = {makePart("C1", sinkCounter())};
        Plan held = bare;
        Support support;
        support.lengthMm = 400;
        support.widthMm = 100;
        held.parts.push_back(makePart("S1", support, {{1300, 200}, 0.0}));
        const QRectF along(1300, -206, 400, 12);
        const QColor ink = lightInk().ink;
        const int without = planPicture(bare, Projection::above()).count(along, ink);
        const int with = planPicture(held, Projection::above()).count(along, ink);
        QCOMPARE(without, 0);
        // 100 pixels long; a dashed line shows some of them, a full one would show all.
        QVERIFY2(with > 40 && with < 90, qPrintable(QString::number(with)));
    }

    void battensShowInFront()
    {
        Plan plan;
        Front front;
        front.to = {1000, 0};
        plan.parts = {makePart("F1", front)};
        const Picture made = planPicture(plan, Projection::front());
        const QColor timber = lightInk().timber;
        QVERIFY(made.count(QRectF(0, -840, 1000, 780), timber) > 20000);
    }

    void everySampleIsPaintedInBothViewsAndAllStages()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            const Assessment assessment = withCastings(plan);
            QVERIFY(!assessment.castings.empty());
            for (const Projection& projection : {Projection::above(), Projection::front(), Projection::front(20)}) {
                const Picture bare = planPicture(plan, projection, true);
                const Picture steel =
                    picture(plan, projection, true, [&](QPainter& painter, const PaintStyle& style) {
                        paintSteelOverlay(painter, plan, assessment, projection, style);
                    });
                const Picture lift =
                    picture(plan, projection, true, [&](QPainter& painter, const PaintStyle& style) {
                        paintLiftOverlay(painter, plan, assessment, projection, style);
                    });
                const int all = bare.image.width() * bare.image.height();
                QVERIFY(bare.count(bare.bounds, lightInk().sheet) < all);
                QVERIFY(lift.count(lift.bounds, lightInk().sheet) < all);
                QCOMPARE(steel.count(steel.bounds, lightInk().sheet) < all, projection.isAbove());
            }
        }
    }

    void meshStaysWithinTheSlabAndOutOfCutouts()
    {
        Plan plan;
        Counter counter = sinkCounter();
        counter.steel = Steel{};
        counter.steel->mesh = Mesh{};
        plan.parts = {makePart("C1", counter)};
        const Assessment assessment = withCastings(plan);
        const Projection above = Projection::above();
        const Picture made = picture(plan, above, false, [&](QPainter& painter, const PaintStyle& style) {
            paintSteelOverlay(painter, plan, assessment, above, style);
        });
        const QColor steel = lightInk().steel;
        QCOMPARE(made.count(QRectF(460, -500, 480, 380), steel), 0);
        QVERIFY(made.count(QRectF(1250, -500, 500, 400), steel) > 500);
        QCOMPARE(made.count(QRectF(-90, -690, 100, 690), steel), 0);
    }

    void labelsKeepClearOfOneAnother()
    {
        const auto inked = [](std::vector<OverlayLabel> labels, std::vector<QRectF> taken) {
            QImage image(300, 300, QImage::Format_RGB32);
            image.fill(Qt::white);
            PaintStyle style;
            style.ink = lightInk();
            QPainter painter(&image);
            for (OverlayLabel& label : labels) {
                label.look.behind = Qt::red;
            }
            paintLabels(painter, std::move(labels), style, std::move(taken));
            painter.end();
            int count = 0;
            for (int y = 0; y < 300; ++y) {
                for (int x = 0; x < 300; ++x) {
                    count += image.pixelColor(x, y) == QColor(Qt::white) ? 0 : 1;
                }
            }
            return count;
        };
        OverlayLabel label;
        label.at = QPointF(150, 150);
        label.texts = {QStringLiteral("37.0 l")};
        const int one = inked({label}, {});
        QVERIFY(one > 200);
        // Two about the same point lie apart (plates are a little wider than their words).
        QVERIFY(inked({label, label}, {}) > 1.8 * one);
        // With no free place there is no label.
        QCOMPARE(inked({label}, {QRectF(0, 0, 300, 300)}), 0);
    }

    void paintingIsTheSameOnOtherThreads()
    {
        const Plan plan = samplePlan("corner-kitchen");
        const QImage here = planPicture(plan, Projection::above()).image;
        std::atomic<int> same = 0;
        std::vector<std::thread> threads;
        for (int i = 0; i < 2; ++i) {
            threads.emplace_back([&] {
                for (int k = 0; k < 5; ++k) {
                    same += planPicture(plan, Projection::above()).image == here ? 1 : 0;
                }
            });
        }
        for (std::thread& thread : threads) {
            thread.join();
        }
        QCOMPARE(same.load(), 10);
    }

    void absurdSizesAreSurvived()
    {
        Plan plan;
        Counter counter;
        counter.outline = {{0, 0}, {1e12, 0}, {1e12, 1e-9}, {0, -5}};
        counter.rim = Rim{-60.0, 1e9, std::vector<int>{-4, 99}, {}};
        counter.ribs = {Rib{{0, 0}, {0, 0}, 80.0, {}}};
        counter.joints = {Joint{{5, 5}, {5, 5}, {}, {}}};
        Cutout nothing;
        counter.cutouts = {nothing};
        Support negative;
        negative.lengthMm = -600;
        negative.heightMm = -10;
        negative.core = Core{};
        Front point;
        point.doors = {Door{900, 100, HingeSide::left, {}}};
        plan.parts = {makePart("C1", counter), makePart("C2", Counter{}), makePart("S1", negative),
                      makePart("F1", point), makePart("A1", Appliance{}), makePart("P1", Panel{})};
        for (const Projection& projection : {Projection::above(), Projection::front()}) {
            QImage image(200, 200, QImage::Format_RGB32);
            for (const bool paper : {false, true}) {
                PaintStyle style;
                style.ink = lightInk();
                style.onPaper = paper;
                QPainter painter(&image);
                for (const Part* part : paintOrder(plan, projection)) {
                    paintPart(painter, plan, *part, projection, style);
                }
            }
            QVERIFY(drawingBounds(plan, projection).width() > 0.0);
        }
    }
};

QTEST_MAIN(DrawingPictureTest)
#include "drawing_picture_test.moc"
