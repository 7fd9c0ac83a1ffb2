#pragma once

#include <QDate>
#include <QRectF>
#include <QSizeF>
#include <QString>

#include "ui/sheets/sheet_page.h"

class QPainter;

/// The sheet around its content: ISO 5457 frame, ISO 7200 title block, scale bar, check line. All mm of paper.
namespace yardcast::ui {

inline constexpr double kCheckLineMm = 100.0;

QSizeF sheetSize(bool landscape);
/// Inside the frame: 20 mm at the filing edge, 10 mm elsewhere (ISO 5457).
QRectF frameBox(bool landscape);
/// What content may fill: the frame less the title block, and less the strip of the scale where there is one.
QRectF contentBox(bool landscape, bool toScale);
/// The check line, at the left of the strip of the scale.
QLineF checkLine(bool landscape);

struct TitleBlock {
    QString plan;
    QDate date;
    QString version;  ///< program and plan mark
    int page = 1;
    int pages = 1;
};
void paintFrame(QPainter& painter, const SheetPage& page, const TitleBlock& block);

}  // namespace yardcast::ui
