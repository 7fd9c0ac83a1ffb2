#pragma once

#include <vector>

#include <QImage>
#include <QRectF>
#include <QString>

/// Reads a PDF back with the tools of poppler (pdfinfo, pdftotext, pdftoppm): what is measured is what a printer gets.
namespace yardcast::ui {

struct PdfWord {
    QString text;
    QRectF box;  ///< mm from the page's top left corner
};

struct PdfPage {
    QSizeF sizeMm;
    std::vector<PdfWord> words;

    /// All words with single spaces, in the order of the file.
    QString text() const;
};

/// Pages with their words. Empty, and a failure of the test, when the file cannot be read.
std::vector<PdfPage> readPdf(const QString& path);
/// One page (from 1) as a picture with so many dots a mm.
QImage pdfPicture(const QString& path, int page, double dotsPerMm);
/// The longest dark run along a row (or column) within a region of mm, in mm.
struct DarkRun {
    double lengthMm = 0.0;
    QPointF fromMm;
};
DarkRun longestRun(const QImage& picture, const QRectF& regionMm, double dotsPerMm, Qt::Orientation along);

}  // namespace yardcast::ui
