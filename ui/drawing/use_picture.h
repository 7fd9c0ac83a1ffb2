#pragma once

#include <memory>
#include <optional>
#include <unordered_map>
#include <vector>

#include <QImage>
#include <QLineF>
#include <QList>
#include <QPainterPath>
#include <QPixmap>
#include <QTransform>

#include "core/structure/strength.h"

class QPainter;

/// Use over one casting as it is shown on the screen: smooth colour, lines of equal use, hatching where more is asked
/// than there is. Made once for a field and kept, since nothing of it changes while one looks, pans or drags another.
namespace yardcast::ui {

struct PaintStyle;

/// The lines that are drawn, percent: every 25 up to 200, every 100 from there, as far as the field reaches.
std::vector<double> useLineLevels(double mostPercent);

/// All in the casting's own frame, y up.
class UsePicture {
public:
    explicit UsePicture(std::shared_ptr<const StrengthField> field);

    /// Where a figure may stand on a line of equal use: the middle of the longest line of each level.
    struct Figure {
        double percent = 0.0;
        Point at;
        double lengthMm = 0.0;
    };
    const std::vector<Figure>& figures() const { return figures_; }
    /// Nobody else holds the field any more.
    bool isAlone() const { return field_.use_count() == 1; }

    /// `outline` bounds the colour (own frame) and is drawn; the painter works in drawing mm, `ownToDrawing` leads there.
    /// What was painted is kept for the same zoom, so that a repaint is a copy.
    void paint(QPainter& painter, const QPainterPath& outline, const QTransform& ownToDrawing,
               const PaintStyle& style);

private:
    void render();
    void paintAnew(QPainter& painter, const QPainterPath& outline, const QTransform& ownToDrawing,
                   const PaintStyle& style);
    void hatch(double spacingMm);

    struct Line {
        double percent = 0.0;
        QPainterPath path;
    };
    std::shared_ptr<const StrengthField> field_;
    bool isUsable_;
    QImage image_;
    QTransform imageToOwn_;
    std::vector<Line> lines_;
    std::vector<Figure> figures_;
    std::vector<Ring> over_;  ///< where the use is 100 % and more
    double hatchMm_ = 0.0;
    QList<QLineF> hatch_;

    /// What a kept picture was painted for.
    struct Kept {
        QPainterPath outline;
        QTransform turn;       ///< of own frame to pixels, without the place
        bool dark = false;
        QPixmap pixmap;
        QPointF corner;        ///< top left of the pixmap from where the own origin is, pixels
    };
    Kept kept_;
};

/// Pictures by field. A field is never changed once it is there, so its address names it while somebody holds it.
class UsePictures {
public:
    UsePicture& of(const std::shared_ptr<const StrengthField>& field);
    /// Lets go of those that nobody else holds any more.
    void sweep();
    std::size_t size() const { return pictures_.size(); }

private:
    std::unordered_map<const StrengthField*, std::unique_ptr<UsePicture>> pictures_;
};

/// Figures of the field at a point of the own frame; nothing where it lies on no triangle.
struct FieldValues {
    double usePercent = 0.0;
    double downMm = 0.0;
    double tensionTopMpa = 0.0;
    double tensionBottomMpa = 0.0;
};
std::optional<FieldValues> valuesAt(const StrengthField& field, Point own);

}  // namespace yardcast::ui
