#include "ui/sheets/template_tiles.h"

#include <algorithm>
#include <cmath>

#include "ui/sheets/sheet_frame.h"

namespace yardcast::ui {

namespace {

int countFor(double lengthMm, double pageMm)
{
    const double step = pageMm - kTileOverlapMm;
    const double more = std::ceil((lengthMm - pageMm) / step - 1e-9);
    // A plan with absurd sizes must not fill the disk.
    return 1 + static_cast<int>(std::clamp(more, 0.0, 25.0));
}

TileGrid gridFor(const QRectF& box, double headMm, bool landscape)
{
    const QRectF area = contentBox(landscape, true).adjusted(0.0, headMm, 0.0, 0.0);
    TileGrid grid;
    grid.landscape = landscape;
    grid.page = area.size();
    grid.columns = countFor(box.width(), area.width());
    grid.rows = countFor(box.height(), area.height());
    const QSizeF size(grid.columns * (area.width() - kTileOverlapMm) + kTileOverlapMm,
                      grid.rows * (area.height() - kTileOverlapMm) + kTileOverlapMm);
    grid.all = QRectF(box.center() - QPointF(size.width() / 2.0, size.height() / 2.0), size);
    return grid;
}

}  // namespace

QRectF TileGrid::tile(int row, int column) const
{
    return QRectF(all.topLeft() + QPointF(column * (page.width() - kTileOverlapMm), row * (page.height() - kTileOverlapMm)),
                  page);
}

QString TileGrid::cellName(int row, int column) const
{
    return QString(QChar(u'A' + static_cast<char16_t>(row))) + QString::number(column + 1);
}

std::vector<QLineF> TileGrid::joinLines() const
{
    std::vector<QLineF> lines;
    for (int column = 0; column + 1 < columns; ++column) {
        const double x = tile(0, column).right() - kTileOverlapMm / 2.0;
        lines.emplace_back(x, all.top(), x, all.bottom());
    }
    for (int row = 0; row + 1 < rows; ++row) {
        const double y = tile(row, 0).bottom() - kTileOverlapMm / 2.0;
        lines.emplace_back(all.left(), y, all.right(), y);
    }
    return lines;
}

std::vector<JoinMark> TileGrid::joinMarks() const
{
    std::vector<JoinMark> marks;
    for (int row = 0; row < rows; ++row) {
        for (int column = 0; column < columns; ++column) {
            const QRectF here = tile(row, column);
            int number = 0;
            const auto add = [&](QPointF at, const QString& to) {
                marks.push_back({at, cellName(row, column) + QLatin1Char('-') + to + QChar(u'a' + number)});
                ++number;
            };
            for (const double share : {0.2, 0.8}) {
                if (column + 1 < columns) {
                    add({here.right() - kTileOverlapMm / 2.0, here.top() + share * here.height()},
                        cellName(row, column + 1));
                }
                if (row + 1 < rows) {
                    add({here.left() + share * here.width(), here.bottom() - kTileOverlapMm / 2.0},
                        cellName(row + 1, column));
                }
            }
        }
    }
    return marks;
}

TileGrid tileGridFor(const QRectF& box, double headMm)
{
    const TileGrid upright = gridFor(box, headMm, false);
    const TileGrid lying = gridFor(box, headMm, true);
    return lying.rows * lying.columns < upright.rows * upright.columns ? lying : upright;
}

}  // namespace yardcast::ui
