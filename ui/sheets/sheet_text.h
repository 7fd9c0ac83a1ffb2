#pragma once

#include <QColor>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <QStringList>

#include "ui/drawing/part_painter.h"

class QPainter;

/// Type on paper, sizes in mm. No text is cut: what is too wide is wrapped or set smaller.
namespace yardcast::ui {

/// The style of everything on paper at 1:1.
PaintStyle paperStyle(double mmPerUnit = 1.0);

/// Sizes of type, em height in mm: capitals are 0.73 of it (so 4.8 gives the 3.5 mm of ISO 3098).
inline constexpr double kBigType = 8.0;
inline constexpr double kTitleType = 5.4;
inline constexpr double kBodyType = 4.0;
inline constexpr double kSmallType = 3.1;
inline constexpr double kLabelType = 2.4;

struct Type {
    double sizeMm = kBodyType;
    bool bold = false;
    Qt::Alignment align = Qt::AlignLeft;
    QColor colour;  ///< invalid: black
};

double textWidthMm(const QString& text, const Type& type);
double lineHeightMm(const Type& type);
/// Lines no wider than asked; words too long for a line are parted.
QStringList wrapped(const QString& text, double widthMm, const Type& type);
/// The type, set smaller (down to `leastMm`) until the text fits the width on one line.
Type fittedType(const QString& text, double widthMm, Type type, double leastMm = 2.0);

/// Paints lines down from the box's top, aligned across its width; returns the height used.
double paintLines(QPainter& painter, const QRectF& box, const QStringList& lines, const Type& type);
/// Wraps and paints.
double paintWrapped(QPainter& painter, const QRectF& box, const QString& text, const Type& type);
/// One line in the middle of the box's height, set smaller where it must.
void paintFitted(QPainter& painter, const QRectF& box, const QString& text, const Type& type);
/// In the box on one line, on two, or smaller: for names in narrow fields. Words only, never figures, may end in "…"
/// when nothing else helps.
void paintName(QPainter& painter, const QRectF& box, const QString& text, const Type& type);

}  // namespace yardcast::ui
