#include <cmath>

#include <QDir>
#include <QImage>
#include <QPainter>
#include <QtTest>

#include "plain_mould.h"
#include "sample_plans.h"
#include "ui/drawing/mould_painter.h"
#include "ui/drawing/mould_section.h"
#include "ui/drawing/running_dimensions.h"
#include "ui/wording/mould_names.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

struct Painted {
    QImage image;
    QRectF bounds;
    double scale = 1.0;     ///< drawing mm a pixel
    QPoint at(QPointF drawing) const { return ((drawing - bounds.topLeft()) / scale).toPoint(); }
};

PaintStyle screenStyle(double mmPerUnit, bool dark)
{
    PaintStyle style;
    style.ink = dark ? darkInk() : lightInk();
    style.mmPerUnit = mmPerUnit;
    return style;
}

template <class Bounds, class Paint>
Painted painted(double mmPerPixel, bool dark, Bounds bounds, Paint paint)
{
    const PaintStyle style = screenStyle(mmPerPixel, dark);
    Painted made;
    made.scale = mmPerPixel;
    made.bounds = bounds(style);
    made.image = QImage((made.bounds.size() / mmPerPixel).toSize() + QSize(1, 1), QImage::Format_RGB32);
    made.image.fill(style.ink.sheet);
    QPainter painter(&made.image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(1.0 / mmPerPixel, 1.0 / mmPerPixel);
    painter.translate(-made.bounds.topLeft());
    paint(painter, style);
    return made;
}

Painted mouldPicture(const MouldSubject& subject, const MouldLook& look = {}, bool dark = false)
{
    return painted(
        subject.mould->widthMm / 620.0, dark, [&](const PaintStyle& style) { return mouldPictureBounds(subject, look, style); },
        [&](QPainter& painter, const PaintStyle& style) { paintMouldPicture(painter, subject, look, style); });
}

/// At 1:10 on paper, four dots a mm.
template <class Bounds, class Paint>
QImage onPaper(Bounds bounds, Paint paint)
{
    constexpr double kScale = 10.0;
    constexpr double kDots = 4.0;
    PaintStyle style;
    style.ink = paperInk();
    style.onPaper = true;
    style.mmPerUnit = kScale;
    const QRectF box = bounds(style);
    QImage image((box.size() / kScale * kDots).toSize() + QSize(1, 1), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(kDots / kScale, kDots / kScale);
    painter.translate(-box.topLeft());
    paint(painter, style);
    return image;
}

void keep(const QImage& image, const QString& name)
{
    const QString folder = qEnvironmentVariable("YARDCAST_PICTURES");
    if (!folder.isEmpty()) image.save(QDir(folder).filePath(name + QStringLiteral(".png")));
}

MouldSubject subjectOf(const Part& part)
{
    MouldSubject subject;
    subject.part = std::make_shared<const Part>(part);
    subject.casting = castingsOf(part).at(0);
    subject.mould = plainMould(part, *subject.casting);
    return subject;
}

/// Every casting of the plan with its mould as the program makes it.
std::vector<MouldSubject> subjectsOf(const Plan& plan)
{
    std::vector<MouldSubject> subjects;
    std::vector<CastingPtr> castings;
    for (const PartPtr& part : plan.parts) {
        for (const CastingPtr& casting : castingsOf(*part)) {
            castings.push_back(casting);
            subjects.push_back({part, casting, nullptr, nullptr});
        }
    }
    std::vector<Finding> findings;
    const std::vector<MouldPtr> moulds = mouldsOf(plan, castings, findings);
    for (std::size_t i = 0; i < subjects.size() && i < moulds.size(); ++i) subjects[i].mould = moulds[i];
    return subjects;
}

/// A counter with a sink left of its middle.
Part slab(CounterCast cast = CounterCast::faceDown)
{
    Part part;
    part.id = "C1";
    Counter counter;
    counter.outline = {{0, 0}, {1600, 0}, {1600, 600}, {0, 600}};
    counter.thicknessMm = 40;
    counter.cast = cast;
    Cutout sink;
    sink.id = "K1";
    sink.purpose = CutoutPurpose::sink;
    sink.centre = {450, 300};
    sink.size = {500, 380};
    counter.cutouts = {sink};
    part.body = counter;
    return part;
}

/// Darkest of a few pixels about the point.
int darkestAbout(const Painted& picture, QPointF drawing)
{
    int least = 255;
    const QPoint middle = picture.at(drawing);
    for (int y = -1; y <= 1; ++y) {
        for (int x = -1; x <= 1; ++x) least = std::min(least, qGray(picture.image.pixel(middle + QPoint(x, y))));
    }
    return least;
}

}  // namespace

class MouldPictureTest : public QObject {
    Q_OBJECT

private slots:
    /// What is on the left in the kitchen is on the right in a mould that is cast face down, and stays where it is
    /// in one that is cast face up.
    void mouldOfAFaceDownPieceIsTheMirrorImage()
    {
        const MouldSubject down = subjectOf(slab());
        const MouldSubject up = subjectOf(slab(CounterCast::faceUp));
        const Point sink{450, 300};
        QCOMPARE(ownToMould(down, sink).x, 1150.0);
        QCOMPARE(ownToMould(up, sink).x, 450.0);
        QCOMPARE(ownToMould(down, sink).y, 300.0);
        // In the picture: under the sink's place lies its former.
        QCOMPARE(mouldPartAt(down, {1150, -300}).substr(0, 3), std::string("C1-"));
        const auto kindAt = [](const MouldSubject& subject, QPointF at) {
            const std::string name = mouldPartAt(subject, at);
            for (const MouldPart& part : subject.mould->parts) {
                if (part.name == name) return part.kind;
            }
            return MouldPartKind::bracket;
        };
        QCOMPARE(kindAt(down, {1150, -300}), MouldPartKind::former);
        QCOMPARE(kindAt(down, {450, -300}), MouldPartKind::base);
        QCOMPARE(kindAt(up, {450, -300}), MouldPartKind::former);
        QCOMPARE(kindAt(up, {1150, -300}), MouldPartKind::base);
    }

    /// The marked corner is the same corner of the piece in both pictures.
    void bothPicturesMarkTheSameCorner()
    {
        const MouldSubject subject = subjectOf(slab());
        QCOMPARE(datumCorner(subject), (Point{0, 0}));
        const Painted mould = mouldPicture(subject, {.dimensions = false, .numbers = false});
        const Painted standing = painted(
            4.0, false, [&](const PaintStyle& style) { return standingPictureBounds(subject, style); },
            [&](QPainter& painter, const PaintStyle& style) { paintStandingPicture(painter, subject, style); });
        // Front right in the mould, front left as it stands.
        QVERIFY(darkestAbout(mould, {1600, 0}) < 60);
        QVERIFY(darkestAbout(standing, {0, 0}) < 60);
        // Just outside the corner where the other picture has it there is no dot.
        QVERIFY(darkestAbout(standing, {1600 + 10.0, 10.0}) > 60);
    }

    /// Without any colour the heads of the two pictures cannot be taken for one another: one is light on dark.
    void headsDifferWithoutColour()
    {
        for (const bool dark : {false, true}) {
            const MouldSubject down = subjectOf(slab());
            const MouldSubject up = subjectOf(slab(CounterCast::faceUp));
            const auto headGrey = [](const Painted& picture) {
                double sum = 0.0;
                int count = 0;
                for (int y = 3; y < 18; ++y) {
                    for (int x = 4; x < picture.image.width() - 4; x += 2) {
                        sum += qGray(picture.image.pixel(x, y));
                        ++count;
                    }
                }
                return sum / count;
            };
            const double mirrored = headGrey(mouldPicture(down, {}, dark));
            const double straight = headGrey(mouldPicture(up, {}, dark));
            QVERIFY2(std::fabs(mirrored - straight) > 80.0, qPrintable(QString::number(mirrored - straight)));
        }
        QVERIFY(mouldViewTitle(*subjectOf(slab()).mould).contains(QStringLiteral("MIRRORED")));
        QVERIFY(mouldViewTitle(*subjectOf(slab(CounterCast::faceUp)).mould).contains(QStringLiteral("NOT MIRRORED")));
        QVERIFY(!standingViewTitle().contains(QStringLiteral("MOULD")));
    }

    /// Nothing is painted outside the bounds: painted into a larger picture, the rim stays clean.
    void nothingIsCutOff()
    {
        for (const std::string& file : samplePlanNames()) {
            for (const MouldSubject& subject : subjectsOf(samplePlan(file))) {
                QVERIFY(subject.mould);
                const double mm = std::max(subject.mould->widthMm, subject.mould->depthMm) / 300.0;
                constexpr int kRim = 30;
                const PaintStyle style = screenStyle(mm, false);
                const QRectF bounds = mouldPictureBounds(subject, {}, style);
                QImage image((bounds.size() / mm).toSize() + QSize(2 * kRim, 2 * kRim), QImage::Format_RGB32);
                image.fill(Qt::white);
                QPainter painter(&image);
                painter.setRenderHint(QPainter::Antialiasing);
                painter.translate(kRim, kRim);
                painter.scale(1.0 / mm, 1.0 / mm);
                painter.translate(-bounds.topLeft());
                paintMouldPicture(painter, subject, {}, style);
                painter.end();
                int spilt = 0;
                for (int y = 0; y < image.height(); ++y) {
                    for (int x = 0; x < image.width(); ++x) {
                        const bool rim = x < kRim - 3 || y < kRim - 3 || x >= image.width() - kRim + 3
                                      || y >= image.height() - kRim + 3;
                        if (rim && image.pixel(x, y) != qRgb(255, 255, 255)) ++spilt;
                    }
                }
                QVERIFY2(spilt == 0, subject.casting->id.c_str());
            }
        }
    }

    /// Figures run from the marked corner, which lies at the right in a mirrored mould.
    void runningFiguresBeginAtTheDatum()
    {
        RunningRow row{true, 1600.0, 0.0, 1.0, {{0.0, 0.0, {}, false}, {1400.0, 0.0, QStringLiteral("K1"), false}, {1600.0, 0.0, {}, false},
                                                {1400.2, 0.0, QStringLiteral("K2"), false}, {900.0, 0.0, QStringLiteral("K1"), false}}};
        const RunningRow tidy = tidied(row);
        QCOMPARE(tidy.stops.size(), std::size_t{3});
        QVERIFY(std::fabs(tidy.stops[0].atMm - 1400.0) < 0.5);
        QCOMPARE(tidy.stops[0].about, QStringLiteral("K2, K1"));
        QCOMPARE(tidy.stops[2].atMm, 0.0);
    }

    void aChosenPartIsMarked()
    {
        const MouldSubject subject = subjectOf(slab());
        std::string side;
        for (const MouldPart& part : subject.mould->parts) {
            if (part.kind == MouldPartKind::side && part.about == "back") side = part.name;
        }
        const QImage plain = mouldPicture(subject).image;
        const QImage marked = mouldPicture(subject, {.marked = side}).image;
        QVERIFY(plain.size() == marked.size());
        QVERIFY(plain != marked);
    }

    void heightsAreAboveTheBase()
    {
        const Plan plan = samplePlan("two-level-bar");
        bool foam = false;
        for (const MouldSubject& subject : subjectsOf(plan)) {
            QVERIFY(subject.mould);
            double top = 0.0;
            for (const MouldHeight& height : mouldHeights(subject)) {
                QVERIFY(height.fromMm >= 0.0);
                // Ties are measured to their middle; the uppermost run above the concrete.
                const bool tie = height.name == QStringLiteral("middle of the ties");
                QVERIFY(height.toMm > height.fromMm || tie);
                if (tie) continue;
                if (height.name == mouldPartName(MouldPartKind::filler)) foam = true;
                if (height.name != mouldPartName(MouldPartKind::holdDown)) top = std::max(top, height.toMm);
            }
            // Formers stand up to a board's thickness proud of the concrete.
            QVERIFY2(std::fabs(top - subject.mould->heightMm) < 18.1, subject.casting->id.c_str());
        }
        QVERIFY(foam);
    }

    void sentencesAskForTheSideInTheMould()
    {
        MouldCheck check{"K1", "sink", "right", 0, 0, 0, 0};
        QCOMPARE(mouldCheckSentence(check, PartKind::counter),
                 QStringLiteral("Stand at the front edge of the mould: the sink is on your right."));
        check.side = "left";
        QVERIFY(mouldCheckQuestion(check, PartKind::panel).contains(QStringLiteral("foot")));
        QVERIFY(mouldCheckQuestion(check, PartKind::panel).contains(QStringLiteral("left?")));
        check.side.clear();
        QVERIFY(mouldCheckSentence(check, PartKind::counter).isEmpty());
    }

    void numbersAreSaidInRuns()
    {
        std::vector<MouldPart> parts(5);
        const char* names[] = {"C1-4", "C1-5", "C1-6", "C1-9", "C1-11"};
        std::vector<const MouldPart*> all;
        for (std::size_t i = 0; i < parts.size(); ++i) {
            parts[i].name = names[i];
            all.push_back(&parts[i]);
        }
        QCOMPARE(mouldNumbers(all), QStringLiteral("4–6, 9, 11"));
    }

    /// For the eye: run with YARDCAST_PICTURES.
    void pictures()
    {
        if (qEnvironmentVariableIsEmpty("YARDCAST_PICTURES")) return;
        for (const std::string& file : samplePlanNames()) {
            for (const MouldSubject& subject : subjectsOf(samplePlan(file))) {
                const QString name = QStringLiteral("%1-%2").arg(QString::fromStdString(file),
                                                                 QString::fromStdString(subject.casting->id));
                for (const bool dark : {false, true}) {
                    keep(mouldPicture(subject, {}, dark).image,
                         QStringLiteral("mould-%1%2").arg(name, dark ? QStringLiteral("-dark") : QString()));
                }
                const double x = mouldSectionXMm(subject);
                keep(onPaper([&](const PaintStyle& style) { return mouldPictureBounds(subject, {.sectionXMm = x}, style); },
                             [&](QPainter& painter, const PaintStyle& style) {
                                 paintMouldPicture(painter, subject, {.sectionXMm = x}, style);
                             }),
                     QStringLiteral("paper-%1").arg(name));
                keep(onPaper([&](const PaintStyle& style) { return mouldSectionBounds(subject, x, style); },
                             [&](QPainter& painter, const PaintStyle& style) { paintMouldSection(painter, subject, x, style); }),
                     QStringLiteral("section-%1").arg(name));
            }
        }
    }
};

QTEST_MAIN(MouldPictureTest)
#include "mould_picture_test.moc"
