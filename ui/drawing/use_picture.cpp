#include "ui/drawing/use_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <QPainter>

#include "ui/drawing/contours.h"
#include "ui/drawing/marks.h"
#include "ui/drawing/part_painter.h"
#include "ui/look/use_ramp.h"

namespace yardcast::ui {

namespace {

constexpr double kFull = 100.0;
/// Colour changes over whole elements, of 20 mm and more, and is smoothed between pixels: one for four millimetres loses
/// nothing. Large pieces have fewer.
constexpr double kMostPixelsPerMm = 0.25;
constexpr double kMostPixels = 1.0e6;
constexpr int kMarginPx = 2;
constexpr double kMostKeptPixels = 2.0e6;
constexpr int kShades = 256;

const std::array<QRgb, kShades>& shades()
{
    static const std::array<QRgb, kShades> all = [] {
        std::array<QRgb, kShades> made{};
        for (int i = 0; i < kShades; ++i) made[std::size_t(i)] = useColour(i * kFull / (kShades - 1)).rgb();
        return made;
    }();
    return all;
}

std::optional<Box> boundsOfNodes(const TriangleMesh& mesh) { return boundsOf(mesh.nodes); }

/// One triangle, pixel by pixel; a pixel belongs to it when its middle does.
void fillTriangle(QImage& image, const std::array<QPointF, 3>& corners, const std::array<double, 3>& values)
{
    const QPointF& a = corners[0];
    const QPointF ab = corners[1] - a;
    const QPointF ac = corners[2] - a;
    const double area = ab.x() * ac.y() - ab.y() * ac.x();
    if (!(std::abs(area) > 1e-12)) return;
    const auto [top, bottom] = std::minmax({a.y(), corners[1].y(), corners[2].y()});
    const int first = int(std::clamp(std::ceil(top - 0.5), 0.0, double(image.height())));
    const int last = int(std::clamp(std::floor(bottom - 0.5), -1.0, double(image.height() - 1)));
    const double slope = ((values[1] - values[0]) * ac.y() - (values[2] - values[0]) * ab.y()) / area;
    const double rise = ((values[2] - values[0]) * ab.x() - (values[1] - values[0]) * ac.x()) / area;
    for (int row = first; row <= last; ++row) {
        const double y = row + 0.5;
        double left = HUGE_VAL;
        double right = -HUGE_VAL;
        for (std::size_t i = 0; i < 3; ++i) {
            const QPointF& from = corners[i];
            const QPointF& to = corners[(i + 1) % 3];
            if ((from.y() <= y) == (to.y() <= y)) continue;
            const double x = from.x() + (to.x() - from.x()) * (y - from.y()) / (to.y() - from.y());
            left = std::min(left, x);
            right = std::max(right, x);
        }
        // A row that meets no side has no ends: infinity is no whole number.
        if (!(left <= right)) continue;
        const int begin = int(std::clamp(std::ceil(left - 0.5), 0.0, double(image.width())));
        const int end = int(std::clamp(std::floor(right - 0.5), -1.0, double(image.width() - 1)));
        if (begin > end) continue;
        auto* pixels = reinterpret_cast<QRgb*>(image.scanLine(row));
        double value = values[0] + slope * (begin + 0.5 - a.x()) + rise * (y - a.y());
        for (int column = begin; column <= end; ++column, value += slope) {
            const double shade = value * ((kShades - 1) / kFull) + 0.5;
            pixels[column] = shades()[std::size_t(shade > 0.0 ? std::min(shade, double(kShades - 1)) : 0.0)];
        }
    }
}

/// The colour a step beyond the edge of the mesh, so that the edge itself can be drawn smooth.
void bleed(QImage& image)
{
    constexpr std::pair<int, int> kAround[] = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {-1, 1}, {1, -1}, {-1, -1}};
    auto* pixels = reinterpret_cast<QRgb*>(image.bits());
    const qsizetype across = image.bytesPerLine() / qsizetype(sizeof(QRgb));
    std::vector<std::pair<qsizetype, QRgb>> beyond;
    for (int row = 0; row < image.height(); ++row) {
        for (int column = 0; column < image.width(); ++column) {
            const qsizetype at = row * across + column;
            if (pixels[at] != 0) continue;
            for (const auto& [dx, dy] : kAround) {
                const int x = column + dx;
                const int y = row + dy;
                if (x < 0 || y < 0 || x >= image.width() || y >= image.height()) continue;
                const QRgb there = pixels[y * across + x];
                if (there == 0) continue;
                beyond.emplace_back(at, there);
                break;
            }
        }
    }
    for (const auto& [at, colour] : beyond) pixels[at] = colour;
}

double mostUse(const StrengthField& field)
{
    double most = 0.0;
    for (const double use : field.usePercent) {
        if (std::isfinite(use)) most = std::max(most, use);
    }
    return most;
}

}  // namespace

std::vector<double> useLineLevels(double mostPercent)
{
    constexpr double kMost = 1000.0;
    std::vector<double> levels;
    for (double level = 25.0; level <= std::min(mostPercent, kMost); level += level < 200.0 ? 25.0 : 100.0) {
        levels.push_back(level);
    }
    return levels;
}

UsePicture::UsePicture(std::shared_ptr<const StrengthField> shown)
    : field_(std::move(shown)),
      isUsable_(field_->usePercent.size() == field_->mesh.nodes.size() && !field_->mesh.triangles.empty())
{
    if (!isUsable_) return;
    const StrengthField& field = *field_;
    const double most = mostUse(field);
    for (const ContourLine& line : contourLines(field.mesh, field.usePercent, useLineLevels(most))) {
        if (lines_.empty() || lines_.back().percent != line.level) {
            lines_.push_back({line.level, {}});
            const double length = line.lengthMm();
            figures_.push_back({line.level, line.alongMm(length / 2.0).first, length});
        }
        QPainterPath& path = lines_.back().path;
        path.moveTo(line.points.front().x, line.points.front().y);
        for (const Point& point : line.points) path.lineTo(point.x, point.y);
        if (line.closed) path.closeSubpath();
    }
    if (most >= kFull) over_ = piecesAbove(field.mesh, field.usePercent, kFull);
}

void UsePicture::render()
{
    const StrengthField& field = *field_;
    const Box box = *boundsOfNodes(field.mesh);
    const double fits = std::sqrt(kMostPixels / std::max(1.0, box.width() * box.height()));
    const double scale = std::min(kMostPixelsPerMm, fits);
    const QSize size(int(std::ceil(box.width() * scale)) + 2 * kMarginPx,
                     int(std::ceil(box.height() * scale)) + 2 * kMarginPx);
    image_ = QImage(size, QImage::Format_ARGB32_Premultiplied);
    if (image_.isNull()) return;
    image_.fill(Qt::transparent);
    const auto pixel = [&](Point p) {
        return QPointF((p.x - box.low.x) * scale + kMarginPx, (p.y - box.low.y) * scale + kMarginPx);
    };
    for (const std::array<int, 3>& triangle : field.mesh.triangles) {
        std::array<QPointF, 3> corners;
        std::array<double, 3> values{};
        for (std::size_t i = 0; i < 3; ++i) {
            const auto node = std::size_t(triangle[i]);
            corners[i] = pixel(field.mesh.nodes[node]);
            values[i] = field.usePercent[node];
        }
        fillTriangle(image_, corners, values);
    }
    for (int i = 0; i < kMarginPx; ++i) bleed(image_);
    imageToOwn_ = QTransform::fromTranslate(box.low.x, box.low.y);
    imageToOwn_.scale(1.0 / scale, 1.0 / scale);
    imageToOwn_.translate(-kMarginPx, -kMarginPx);
}

void UsePicture::hatch(double spacingMm)
{
    if (spacingMm == hatchMm_) return;
    hatchMm_ = spacingMm;
    hatch_.clear();
    for (const auto& [from, to] : hatchThrough(over_, 45.0, spacingMm)) {
        hatch_.append(QLineF(from.x, from.y, to.x, to.y));
    }
}

void UsePicture::paint(QPainter& painter, const QPainterPath& outline, const QTransform& ownToDrawing,
                       const PaintStyle& style)
{
    if (!isUsable_) return;
    const double ratio = painter.device()->devicePixelRatioF();
    const QTransform device = ownToDrawing * painter.worldTransform() * QTransform::fromScale(ratio, ratio);
    const QTransform turn(device.m11(), device.m12(), device.m21(), device.m22(), 0.0, 0.0);
    constexpr int kMargin = 3;
    const QRect box = turn.mapRect(outline.boundingRect()).toAlignedRect().adjusted(-kMargin, -kMargin, kMargin, kMargin);
    if (double(box.width()) * box.height() > kMostKeptPixels || !device.isAffine()) {
        paintAnew(painter, outline, ownToDrawing, style);
        return;
    }
    if (kept_.pixmap.isNull() || kept_.turn != turn || kept_.dark != style.ink.dark || kept_.outline != outline) {
        kept_ = {outline, turn, style.ink.dark, QPixmap(box.size()), box.topLeft()};
        kept_.pixmap.fill(Qt::transparent);
        QPainter own(&kept_.pixmap);
        own.setRenderHint(QPainter::Antialiasing);
        own.translate(-box.topLeft());
        paintAnew(own, outline, turn, style);
    }
    painter.save();
    painter.resetTransform();
    // Pixel on pixel: between two it would be blurred.
    const QPointF origin(device.dx(), device.dy());
    painter.scale(1.0 / ratio, 1.0 / ratio);
    // A hair more than half, so that what lies half way goes the same way whatever the last digits say.
    constexpr double kHalf = 0.5001;
    const QPointF at = origin + kept_.corner;
    painter.drawPixmap(QPoint(int(std::floor(at.x() + kHalf)), int(std::floor(at.y() + kHalf))), kept_.pixmap);
    painter.restore();
}

void UsePicture::paintAnew(QPainter& painter, const QPainterPath& outline, const QTransform& ownToDrawing,
                           const PaintStyle& style)
{
    // Not before it is seen: of a plan with hundreds of pieces only some are.
    if (image_.isNull()) render();
    painter.save();
    painter.setTransform(ownToDrawing, true);
    QBrush colour(image_);
    colour.setTransform(imageToOwn_);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.fillPath(outline, colour);
    painter.setBrush(Qt::NoBrush);
    if (!over_.empty()) {
        constexpr double kHatchPx = 7.0;
        hatch(kHatchPx * style.mmPerUnit);
        painter.setPen(style.pen(inkOnUse(kFull), style.narrow()));
        painter.drawLines(hatch_);
    }
    for (const Line& line : lines_) {
        painter.setPen(style.pen(inkOnUse(line.percent), line.percent == kFull ? style.wide() : style.narrow()));
        painter.drawPath(line.path);
    }
    painter.setPen(outlinePen(style));
    painter.drawPath(outline);
    painter.restore();
}

UsePicture& UsePictures::of(const std::shared_ptr<const StrengthField>& field)
{
    std::unique_ptr<UsePicture>& picture = pictures_[field.get()];
    if (!picture) picture = std::make_unique<UsePicture>(field);
    return *picture;
}

void UsePictures::sweep()
{
    std::erase_if(pictures_, [](const auto& one) { return one.second->isAlone(); });
}

std::optional<FieldValues> valuesAt(const StrengthField& field, Point own)
{
    const std::size_t count = field.mesh.nodes.size();
    for (const std::vector<double>* values :
         {&field.usePercent, &field.downMm, &field.tensionTopMpa, &field.tensionBottomMpa}) {
        if (values->size() != count) return std::nullopt;
    }
    for (const std::array<int, 3>& triangle : field.mesh.triangles) {
        const auto i = std::size_t(triangle[0]);
        const auto j = std::size_t(triangle[1]);
        const auto k = std::size_t(triangle[2]);
        const Point a = field.mesh.nodes[i];
        const Point ab = field.mesh.nodes[j] - a;
        const Point ac = field.mesh.nodes[k] - a;
        const Point ap = own - a;
        const double area = cross(ab, ac);
        if (area == 0.0) continue;
        const double second = cross(ap, ac) / area;
        const double third = cross(ab, ap) / area;
        // A hair of tolerance: a point on a common edge belongs to one of the two.
        constexpr double kHair = 1e-9;
        if (second < -kHair || third < -kHair || second + third > 1.0 + kHair) continue;
        const auto between = [&](const std::vector<double>& values) {
            return values[i] * (1.0 - second - third) + values[j] * second + values[k] * third;
        };
        return FieldValues{between(field.usePercent), between(field.downMm), between(field.tensionTopMpa),
                           between(field.tensionBottomMpa)};
    }
    return std::nullopt;
}

}  // namespace yardcast::ui
