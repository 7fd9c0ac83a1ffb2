#include "pdf_probe.h"

#include <algorithm>

#include <QProcess>
#include <QRegularExpression>
#include <QStringList>
#include <QTemporaryDir>
#include <QXmlStreamReader>

namespace yardcast::ui {

namespace {

constexpr double kMmPerPoint = 25.4 / 72.0;

QByteArray output(const QString& program, const QStringList& arguments)
{
    QProcess process;
    process.start(program, arguments);
    if (!process.waitForStarted() || !process.waitForFinished(60000) || process.exitCode() != 0) {
        qFatal("%s failed: these tests need poppler-utils", qPrintable(program));
    }
    return process.readAllStandardOutput();
}

}  // namespace

QString PdfPage::text() const
{
    QStringList all;
    for (const PdfWord& word : words) {
        all << word.text;
    }
    return all.join(QLatin1Char(' '));
}

std::vector<PdfPage> readPdf(const QString& path)
{
    std::vector<PdfPage> pages;
    QXmlStreamReader reader(output(QStringLiteral("pdftotext"),
                                   {QStringLiteral("-bbox"), path, QStringLiteral("-")}));
    const auto number = [&](const char* name) {
        return reader.attributes().value(QLatin1String(name)).toDouble() * kMmPerPoint;
    };
    while (!reader.atEnd()) {
        if (reader.readNext() != QXmlStreamReader::StartElement) {
            continue;
        }
        if (reader.name() == QLatin1String("page")) {
            pages.push_back({QSizeF(number("width"), number("height")), {}});
        } else if (reader.name() == QLatin1String("word") && !pages.empty()) {
            const QRectF box(QPointF(number("xMin"), number("yMin")), QPointF(number("xMax"), number("yMax")));
            QString text = reader.readElementText();
            // Ligatures and no-break spaces are the type's business.
            text.replace(QChar(0x00A0), QLatin1Char(' '));
            text.replace(QChar(0xFB01), QStringLiteral("fi")).replace(QChar(0xFB02), QStringLiteral("fl"));
            text.replace(QChar(0xFB00), QStringLiteral("ff")).replace(QChar(0xFB03), QStringLiteral("ffi"));
            pages.back().words.push_back({text, box});
        }
    }
    return pages;
}

QImage pdfPicture(const QString& path, int page, double dotsPerMm)
{
    QTemporaryDir folder;
    const QString stem = folder.filePath(QStringLiteral("page"));
    const QString number = QString::number(page);
    output(QStringLiteral("pdftoppm"),
           {QStringLiteral("-r"), QString::number(dotsPerMm * 25.4, 'f', 3), QStringLiteral("-f"), number,
            QStringLiteral("-l"), number, QStringLiteral("-singlefile"), path, stem});
    const QImage picture(stem + QStringLiteral(".ppm"));
    if (picture.isNull()) {
        qFatal("no picture of page %d", page);
    }
    return picture;
}

DarkRun longestRun(const QImage& picture, const QRectF& regionMm, double dotsPerMm, Qt::Orientation along)
{
    const QRect box = QRectF(regionMm.topLeft() * dotsPerMm, regionMm.size() * dotsPerMm)
                          .toRect()
                          .intersected(picture.rect());
    const bool level = along == Qt::Horizontal;
    const int lines = level ? box.height() : box.width();
    const int steps = level ? box.width() : box.height();
    DarkRun best;
    for (int line = 0; line < lines; ++line) {
        int run = 0;
        for (int step = 0; step < steps; ++step) {
            const QPoint at = box.topLeft() + (level ? QPoint(step, line) : QPoint(line, step));
            run = qGray(picture.pixel(at)) < 128 ? run + 1 : 0;
            if (run / dotsPerMm > best.lengthMm) {
                best.lengthMm = run / dotsPerMm;
                const QPoint start = at - (level ? QPoint(run - 1, 0) : QPoint(0, run - 1));
                best.fromMm = QPointF(start) / dotsPerMm;
            }
        }
    }
    return best;
}

}  // namespace yardcast::ui
