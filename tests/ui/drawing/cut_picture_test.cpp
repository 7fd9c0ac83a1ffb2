#include "ui/drawing/cut_picture.h"

#include <QDir>
#include <QImage>
#include <QPainter>
#include <QTest>

#include "core/cutting/sheet_parts.h"
#include "some_cuts.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

void keep(const QImage& picture, const QString& name)
{
    const QString folder = qEnvironmentVariable("YARDCAST_PICTURES");
    if (!folder.isEmpty()) picture.save(QDir(folder).filePath(name + QStringLiteral(".png")));
}

struct Picture {
    QImage image;
    QTransform toPixels;
    QColor at(double x, double y) const { return image.pixelColor(toPixels.map(QPointF(x, y)).toPoint()); }
};

template <class Paint> Picture picture(const QRectF& box, const PaintStyle& style, Paint paint)
{
    const double scale = 1.0 / style.mmPerUnit;
    Picture out;
    out.image = QImage((box.size() * scale).toSize(), QImage::Format_RGB32);
    out.image.fill(style.ink.card);
    out.toPixels.scale(scale, scale);
    out.toPixels.translate(-box.left(), -box.top());
    QPainter painter(&out.image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setTransform(out.toPixels);
    paint(painter);
    return out;
}

PaintStyle screen(const Ink& ink, double mmPerPixel)
{
    PaintStyle style;
    style.ink = ink;
    style.mmPerUnit = mmPerPixel;
    return style;
}

}  // namespace

class CutPictureTest : public QObject {
    Q_OBJECT

private slots:
    void sheets()
    {
        const SheetCutsPtr cuts = someBoards();
        for (const auto& [name, ink] : {std::pair{"light", lightInk()}, std::pair{"dark", darkInk()}}) {
            for (const double scale : {3.0, 9.5}) {
                for (std::size_t s = 0; s < cuts->plan.sheets.size(); ++s) {
                    const CutSheet& sheet = cuts->plan.sheets[s];
                    const PaintStyle style = screen(ink, scale);
                    const Picture made = picture(cutSheetBounds(cuts->job, sheet, style), style, [&](QPainter& painter) {
                        paintCutSheet(painter, cuts->job, sheet, style);
                    });
                    keep(made.image, QStringLiteral("cut-sheet-%1-%2-%3").arg(QLatin1String(name)).arg(scale).arg(s));
                    // Pieces have the tone of boards at their corners, where no text stands.
                    const double depth = cuts->job.list.stock[static_cast<std::size_t>(sheet.stock)].size.depth;
                    for (const PlacedPiece& piece : sheet.pieces) {
                        const double in = 3.0 * scale;
                        if (std::min(piece.size.width, piece.size.depth) < 3.0 * in) continue;
                        QCOMPARE(made.at(piece.at.x + in, depth - piece.at.y - in), ink.timber);
                    }
                }
            }
        }
    }

    void lengths()
    {
        const BarCutsPtr cuts = someBars();
        for (const auto& [name, ink] : {std::pair{"light", lightInk()}, std::pair{"dark", darkInk()}}) {
            const PaintStyle style = screen(ink, 10.0);
            const QRectF box = cutBarsBounds(cuts->job, cuts->plan, style);
            const Picture made =
                picture(box, style, [&](QPainter& painter) { paintCutBars(painter, cuts->job, cuts->plan, style); });
            keep(made.image, QStringLiteral("cut-bars-%1").arg(QLatin1String(name)));
            QVERIFY(box.width() >= 3000.0);
        }
    }

    /// Each step's parts and what the saw takes fill what lay on the saw, and all pieces come off.
    void stepsGiveAllPieces()
    {
        const SheetCutsPtr cuts = someBoards();
        for (const CutSheet& sheet : cuts->plan.sheets) {
            const Size whole = cuts->job.list.stock[static_cast<std::size_t>(sheet.stock)].size;
            std::vector<int> found(sheet.pieces.size(), 0);
            for (const SawnStep& step : sawnSteps(whole, sheet)) {
                const auto area = [](const SheetArea& of) { return of.size.width * of.size.depth; };
                // Sums of products of lengths up to thousands.
                QVERIFY(std::abs(area(step.cut) - area(step.low.area) - area(step.high.area) - area(step.lost)) < 1e-3);
                for (const SawnPart& part : {step.low, step.high}) {
                    if (part.into == SawnInto::piece) ++found[static_cast<std::size_t>(part.index)];
                }
            }
            for (const int times : found) QCOMPARE(times, 1);
        }
    }
};

QTEST_MAIN(CutPictureTest)
#include "cut_picture_test.moc"
