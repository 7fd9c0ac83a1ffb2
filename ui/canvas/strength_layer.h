#pragma once

#include <optional>
#include <vector>

#include <QRectF>
#include <QString>

#include "ui/drawing/label_set.h"
#include "ui/drawing/strength_overlay.h"

class QPainter;

namespace yardcast::ui {

class LiveAssessment;
class PlanScene;
class Selection;

/// The stage Strength over the drawing: what is shown of each casting, and where its words stand. It is found out anew
/// only where something changed, and painted from what was kept.
class StrengthLayer {
public:
    StrengthLayer(const PlanScene& scene, const Selection& selection, const LiveAssessment& live)
        : scene_(scene), selection_(selection), live_(live)
    {
    }

    /// Where something has changed since the last call, drawing mm. Not `shown`: the layer is empty. `taken`: what words
    /// keep clear of.
    std::vector<QRectF> refresh(bool shown, const std::vector<QRectF>& taken);
    void paint(QPainter& painter, const QRectF& exposed);

    /// In words: use, tension and its side, deflection, where the casting is the first thing under the point; else
    /// empty.
    QString valuesAt(QPointF drawing) const;
    /// By how much deflections are enlarged, where any are drawn.
    std::optional<double> deflectionScale() const { return scale_; }
    bool isEmpty() const { return items_.empty(); }
    /// Whether use is seen as colour anywhere.
    bool hasColours() const;

private:
    struct Name {
        std::string part;
        CoveredName name;
    };
    std::vector<StrengthItem> itemsNow() const;
    bool isSeen(const StrengthItem& item) const;
    void placeWords();
    void forget();

    const PlanScene& scene_;
    const Selection& selection_;
    const LiveAssessment& live_;
    std::vector<StrengthItem> items_;  ///< from low to high
    std::optional<double> scale_;
    std::vector<OverlayLabel> labels_;
    std::vector<PlacedLabel> placed_;
    std::vector<Name> names_;
    std::vector<QRectF> taken_;
    UsePictures pictures_;
    PaintStyle style_;                 ///< that the words were placed for
};

}  // namespace yardcast::ui
