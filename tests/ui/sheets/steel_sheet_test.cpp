#include <cmath>

#include <QTemporaryDir>
#include <QtTest>

#include "fake_strength.h"
#include "pdf_probe.h"
#include "sheet_plans.h"
#include "ui/sheets/free_labels.h"
#include "ui/sheets/handedness.h"
#include "ui/sheets/sheet_text.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

constexpr double kDotsPerMm = 8.0;

QString seen(const PdfPage& page)
{
    return page.text().replace(QChar(0x00A0), QLatin1Char(' ')).simplified();
}

QRectF placeOf(const PdfPage& page, const QString& text)
{
    for (const PdfWord& word : page.words) {
        if (word.text == text) {
            return word.box;
        }
    }
    return {};
}

/// One counter with a sink left of the middle, mesh and two bars.
Plan steelPlan(CounterCast cast)
{
    Plan plan = counterPlan();
    auto part = std::make_shared<Part>(*plan.parts.at(0));
    auto& counter = std::get<Counter>(part->body);
    counter.cast = cast;
    counter.steel = Steel{};
    counter.steel->mesh = Mesh{};
    BarGroup bars;
    bars.from = {60.0, 55.0};
    bars.to = {1740.0, 55.0};
    bars.diameterMm = 8.0;
    bars.count = 2;
    bars.spacingMm = 40.0;
    bars.coverMm = 25.0;
    counter.steel->bars = {bars};
    plan.parts = {part};
    return plan;
}

}  // namespace

class SteelSheetTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir folder_;

    QString pdfOf(const Plan& plan, const Assessment& assessment)
    {
        const QString path = folder_.filePath(QStringLiteral("steel.pdf"));
        QString error;
        if (!writePackPdf(path, plan, assessment, {QStringLiteral("steel")}, &error, onFixedDay())) {
            qFatal("%s", qPrintable(error));
        }
        return path;
    }

private slots:
    void faceDownIsMirroredAndSaysSo()
    {
        const Plan plan = steelPlan(CounterCast::faceDown);
        const auto pages = readPdf(pdfOf(plan, *assessed(plan)));
        QVERIFY(pages.size() >= 2);
        const QString text = seen(pages[0]);
        QVERIFY(text.contains(QStringLiteral("AS IT LIES IN THE MOULD (mirrored)")));
        QVERIFY(text.contains(QStringLiteral("MIRRORED: what is on the left here is on the right when it stands.")));
        // The sink lies left of the middle as it stands.
        QVERIFY(text.contains(QStringLiteral("Stand at the front of the mould: the sink is on your right.")));
        QVERIFY(text.contains(QStringLiteral("here it lies at the front right")));
        QVERIFY(text.contains(QStringLiteral("FRONT: one stands here")));
        QVERIFY(text.contains(QStringLiteral("Check: this line is 100 mm long")));
        const QRectF name = placeOf(pages[0], QStringLiteral("K1"));
        QVERIFY(!name.isNull());
        // The drawing stands in the middle of the frame, which is 10 mm wider on the filing edge.
        QVERIFY(name.center().x() > pages[0].sizeMm.width() / 2.0 + 5.0 + 5.0);
    }

    void faceUpIsNotMirrored()
    {
        const Plan plan = steelPlan(CounterCast::faceUp);
        const auto pages = readPdf(pdfOf(plan, *assessed(plan)));
        const QString text = seen(pages[0]);
        QVERIFY(!text.contains(QStringLiteral("irrored")) && !text.contains(QStringLiteral("MIRRORED")));
        QVERIFY(text.contains(QStringLiteral("from above, as it lies in the mould")));
        QVERIFY(text.contains(QStringLiteral("face up, its underside on the mould base")));
        QVERIFY(text.contains(QStringLiteral("the sink is on your left")));
        QVERIFY(placeOf(pages[0], QStringLiteral("K1")).center().x() < pages[0].sizeMm.width() / 2.0 + 5.0 - 5.0);
    }

    void theMarkedCornerIsWhereTheWordsSay()
    {
        for (const CounterCast cast : {CounterCast::faceDown, CounterCast::faceUp}) {
            const Plan plan = steelPlan(cast);
            const QString path = pdfOf(plan, *assessed(plan));
            const auto pages = readPdf(path);
            const QImage picture = pdfPicture(path, 1, kDotsPerMm);
            // The dot is the only thing that is black over 2 mm both ways; the title block lies below.
            std::optional<QPointF> dot;
            const int size = static_cast<int>(2.0 * kDotsPerMm);
            const QRectF mark = placeOf(pages[0], QStringLiteral("FRONT:"));
            const int low = static_cast<int>((mark.top() - 3.0) * kDotsPerMm);
            for (int y = 30 * static_cast<int>(kDotsPerMm); y + size < low && !dot; y += 2) {
                for (int x = static_cast<int>(25 * kDotsPerMm); x + size < picture.width() && !dot; x += 2) {
                    bool black = true;
                    for (int j = 0; j < size && black; j += 2) {
                        for (int i = 0; i < size && black; i += 2) black = qGray(picture.pixel(x + i, y + j)) < 90;
                    }
                    if (black) dot = QPointF(x, y) / kDotsPerMm;
                }
            }
            QVERIFY(dot.has_value());
            const double middle = pages[0].sizeMm.width() / 2.0 + 5.0;
            QCOMPARE(dot->x() > middle, cast == CounterCast::faceDown);
        }
    }

    void theListsHoldEverySheetAndBar()
    {
        const Plan plan = steelPlan(CounterCast::faceDown);
        const AssessmentPtr assessment = withFakeStrength(assessed(plan));
        const auto pages = readPdf(pdfOf(plan, *assessment));
        QString text;
        for (const PdfPage& page : pages) text += seen(page) + QLatin1Char(' ');
        QVERIFY(!assessment->steel.layouts.empty());
        for (const CastingSteelLayoutPtr& layout : assessment->steel.layouts) {
            for (const BarListRow& bar : layout->barList) {
                QVERIFY2(text.contains(QStringLiteral("bar %1").arg(bar.mark)), "no such mark");
                QVERIFY2(text.contains(QString::number(bar.cutLengthMm)), "no such length");
                QVERIFY(!bar.suggested || text.contains(QStringLiteral("PROPOSED")));
            }
            for (const MeshLayout& mesh : layout->meshes) {
                for (const MeshPiece& piece : mesh.pieces) {
                    const QString size = QStringLiteral("%1 × %2")
                                             .arg(std::round(piece.at.width()))
                                             .arg(std::round(piece.at.height()));
                    QVERIFY2(text.contains(size), qPrintable(size));
                }
                QVERIFY(text.contains(QStringLiteral("%1 mm above the mould base").arg(mesh.height.distanceMm)));
            }
        }
        QVERIFY(text.contains(QStringLiteral("straight")));
        QVERIFY(text.contains(QStringLiteral("Fibres are not counted")));
        QVERIFY(text.contains(QStringLiteral("outside the code's scope")));
        // Bars begin where the plan says, measured from the front left corner: the same in both views.
        QVERIFY(text.contains(QStringLiteral("60, 35")) && text.contains(QStringLiteral("1740, 75")));
    }

    void aPanelCastFlatLiesWithItsFrontDown()
    {
        Plan plan = counterPlan();
        Panel panel;
        panel.mix = "worktop";
        panel.steel = Steel{};
        panel.steel->mesh = Mesh{};
        BarGroup bar;
        bar.from = {60.0, 50.0};
        bar.to = {900.0, 50.0};
        panel.steel->bars = {bar};
        plan.parts = {makePart("P1", panel)};
        const auto pages = readPdf(pdfOf(plan, *assessed(plan)));
        const QString text = seen(pages[0]);
        QVERIFY(text.contains(QStringLiteral("P1 lies front down on the mould base.")));
        QVERIFY(text.contains(QStringLiteral("MIRRORED")));
        QVERIFY(text.contains(QStringLiteral("FOOT of the panel")));
        QVERIFY(text.contains(QStringLiteral("here it lies on the right")));
        // The bar begins at the left end as it stands: its mark lies right of the middle here.
        const QRectF mark = placeOf(pages[0], QStringLiteral("Ø8"));
        QVERIFY(!mark.isNull());
        QVERIFY(mark.center().x() > pages[0].sizeMm.width() / 2.0 + 5.0 + 5.0);
    }

    void aHundredBarsAreAllListed()
    {
        Plan plan = steelPlan(CounterCast::faceDown);
        auto part = std::make_shared<Part>(*plan.parts.at(0));
        auto& counter = std::get<Counter>(part->body);
        BarGroup many;
        many.from = {1500.0, 25.0};
        many.to = {1500.0, 575.0};
        many.count = 100;
        many.spacingMm = 4.0;
        counter.steel->bars.push_back(many);
        plan.parts = {part};
        const AssessmentPtr assessment = assessed(plan);
        std::size_t laid = 0;
        for (const CastingSteelLayoutPtr& layout : assessment->steel.layouts) {
            laid += layout->bars.size() + layout->cornerBars.size();
        }
        QVERIFY(laid > 60);
        QString text;
        for (const PdfPage& page : readPdf(pdfOf(plan, *assessment))) text += seen(page) + QLatin1Char(' ');
        for (const CastingSteelLayoutPtr& layout : assessment->steel.layouts) {
            for (const LaidBar& bar : layout->bars) {
                const Point low = bar.from.x <= bar.to.x ? bar.from : bar.to;
                const QString place = QStringLiteral("%1, %2").arg(std::round(low.x)).arg(std::round(low.y));
                QVERIFY2(text.contains(place), qPrintable(place));
            }
        }
    }

    void whatTheSteelIsWorthIsSaid()
    {
        const Plan plan = steelPlan(CounterCast::faceDown);
        auto assessment = std::make_shared<Assessment>(*withFakeStrength(assessed(plan)));
        auto strength = std::make_shared<CastingStrength>(*assessment->strength.at(0));
        SteelCheck check;
        check.name = {PlaceKind::stripInFront, "K1", ""};
        check.tensionAtFace = true;
        check.designMomentN = 600.0;
        check.crackingMomentN = 900.0;
        check.resistanceN = 300.0;
        check.resistancePlainN = 450.0;
        check.resistanceBestN = 1200.0;
        check.steelAreaMm2M = 251.0;
        check.breaksWithoutWarning = true;
        strength->steel = {check};
        assessment->strength = {strength};
        QString text;
        for (const PdfPage& page : readPdf(pdfOf(plan, *assessment))) text += seen(page) + QLatin1Char(' ');
        QVERIFY(text.contains(QStringLiteral("it carries 0.5 times what is asked; plain concrete 0.75 times")));
        QVERIFY(text.contains(QStringLiteral("break without warning")));
        QVERIFY(text.contains(QStringLiteral("the same steel would carry 2 times")));
        QVERIFY(text.contains(QStringLiteral("needed at the face")));
    }

    void theHoleInTheMeshIsDrawnWithItsDistances()
    {
        for (const CounterCast cast : {CounterCast::faceDown, CounterCast::faceUp}) {
            const Plan plan = steelPlan(cast);
            const AssessmentPtr assessment = assessed(plan);
            const MeshPiece* cut = nullptr;
            for (const CastingSteelLayoutPtr& layout : assessment->steel.layouts) {
                for (const MeshPiece& piece : layout->meshes.at(0).pieces) {
                    if (!piece.notches.empty()) cut = &piece;
                }
            }
            QVERIFY(cut);
            // Of the largest: the sink.
            const Box hole = *boundsOf(*std::max_element(
                cut->notches.begin(), cut->notches.end(),
                [](const Ring& a, const Ring& b) { return std::abs(signedArea(a)) < std::abs(signedArea(b)); }));
            const auto pages = readPdf(pdfOf(plan, *assessment));
            const auto page = std::find_if(pages.begin(), pages.end(), [](const PdfPage& one) {
                return seen(one).contains(QStringLiteral("Cut the mesh"));
            });
            QVERIFY(page != pages.end());
            const QString text = seen(*page);
            const bool isMirrored = cast == CounterCast::faceDown;
            QVERIFY(text.contains(QStringLiteral("as it lies in the mould")));
            QCOMPARE(text.contains(QStringLiteral("as it lies in the mould (mirrored)")), isMirrored);
            const QString across = QString::number(std::round(hole.low.x - cut->at.low.x));
            const QString deep = QString::number(std::round(hole.low.y - cut->at.low.y));
            const QRectF first = placeOf(*page, across);
            const QRectF second = placeOf(*page, deep);
            QVERIFY2(!first.isNull() && !second.isNull(), qPrintable(text));
            // The distance along the front is written between the hole and the side of the dot.
            QCOMPARE(first.center().x() > second.center().x(), isMirrored);
            QVERIFY(second.center().y() > first.center().y());
        }
    }

    void wordsFindAFreePlace()
    {
        const PaintStyle style = paperStyle(10.0);
        std::vector<OverlayLabel> labels;
        for (int i = 0; i < 3; ++i) {
            OverlayLabel label;
            label.at = {500.0, 300.0 + 4.0 * i};
            label.texts = {QStringLiteral("bar %1").arg(i)};
            labels.push_back(label);
        }
        const std::vector<QLineF> lines{{0.0, 300.0, 1000.0, 300.0}, {400.0, 0.0, 600.0, 600.0}};
        const QRectF kept(480.0, 305.0, 100.0, 60.0);
        const QRectF bounds(0.0, 0.0, 1000.0, 600.0);
        const auto placed = placeFree(labels, style, lines, {kept}, bounds);
        QCOMPARE(placed.size(), labels.size());
        for (std::size_t i = 0; i < placed.size(); ++i) {
            const QRectF& box = placed[i].box;
            QVERIFY(bounds.contains(box) && !box.intersects(kept));
            // Neither line has a point in the box: all its corners lie on one side of each.
            QVERIFY(box.bottom() < 300.0 || box.top() > 300.0);
            const auto off = [](QPointF at) { return (at.x() - 400.0) * 600.0 - at.y() * 200.0; };
            const bool left = off(box.topLeft()) < 0.0;
            for (const QPointF corner : {box.topRight(), box.bottomLeft(), box.bottomRight()}) {
                QCOMPARE(off(corner) < 0.0, left);
            }
            for (std::size_t k = 0; k < i; ++k) QVERIFY(!box.intersects(placed[k].box));
        }
    }

    void noSteelIsSaid()
    {
        const Plan plan = counterPlan();
        const auto pages = readPdf(pdfOf(plan, *assessed(plan)));
        QCOMPARE(pages.size(), std::size_t{1});
        QVERIFY(seen(pages[0]).contains(QStringLiteral("No casting of this plan has mesh or bars.")));
    }

    void noWordLeavesTheFrame()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            for (const PdfPage& page : readPdf(pdfOf(plan, *withFakeStrength(assessed(plan))))) {
                const QRectF frame(20.0, 10.0, page.sizeMm.width() - 30.0, page.sizeMm.height() - 20.0);
                for (const PdfWord& word : page.words) {
                    QVERIFY2(word.box.left() > frame.left() && word.box.right() < frame.right() &&
                                 frame.contains(word.box.center()),
                             qPrintable(word.text));
                }
            }
        }
    }

    void handednessTurnsRoundInTheMould()
    {
        const Counter counter = sinkCounter();
        QVERIFY(handednessSentence(counter).contains(QStringLiteral("left")));
        QVERIFY(handednessSentence(counter, Seen::inTheMould).contains(QStringLiteral("right")));
        QVERIFY(handednessSentence(Counter{}).isEmpty());
    }
};

QTEST_MAIN(SteelSheetTest)
#include "steel_sheet_test.moc"
