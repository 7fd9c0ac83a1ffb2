#pragma once

#include <vector>

#include <QLineF>
#include <QPointF>
#include <QRectF>
#include <QString>

/// How a drawing of true size is shared out to pages that are laid over one another at their edges.
namespace yardcast::ui {

inline constexpr double kTileOverlapMm = 12.0;

/// A target on the line where two pages meet: it is on both.
struct JoinMark {
    QPointF at;     ///< drawing mm
    QString name;
};

struct TileGrid {
    bool landscape = false;
    int rows = 1;
    int columns = 1;
    QRectF all;         ///< what the pages cover together, drawing mm
    QSizeF page;        ///< what one covers

    /// What the page shows, drawing mm; overlaps its neighbours by `kTileOverlapMm`.
    QRectF tile(int row, int column) const;
    /// Rows by letters, columns by numbers: "B3".
    QString cellName(int row, int column) const;
    /// In the middle of the overlaps.
    std::vector<QLineF> joinLines() const;
    std::vector<JoinMark> joinMarks() const;
};

/// The way with the fewest pages to cover the box; upright where both ways take the same. `headMm` of each page's height
/// is for words.
TileGrid tileGridFor(const QRectF& box, double headMm);

}  // namespace yardcast::ui
