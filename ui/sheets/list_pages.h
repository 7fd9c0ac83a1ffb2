#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "ui/sheets/drawing_fit.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_table.h"

namespace yardcast::ui {

/// A titled piece of a page of lists: a table, which may go on on the next page, or a drawing, which may not.
struct ListBlock {
    QString title;
    SheetTable table;
    std::optional<ScaledDrawing> drawing;  ///< at the largest scale that fits `drawingMm` of height
    double drawingMm = 0.0;
    /// Anything else that is painted into a box of this height and the page's width.
    std::function<void(QPainter&, const QRectF&)> picture;
    double pictureMm = 0.0;
};

/// Blocks and then sentences over as many upright sheets without scale as they take; `like` says what stands in the title
/// block.
std::vector<SheetPage> listPages(const SheetPage& like, const std::vector<ListBlock>& blocks,
                                 const QStringList& sentences);
/// One sheet with one sentence.
SheetPage wordsPage(const SheetPage& like, const QString& words);

inline constexpr double kListTitleMm = 7.0;
inline constexpr double kListGapMm = 2.5;
void paintListTitle(QPainter& painter, const QRectF& box, const QString& text);
double sentencesHeightMm(const QStringList& sentences, double widthMm);
void paintSentences(QPainter& painter, QRectF box, const QStringList& sentences);

}  // namespace yardcast::ui
