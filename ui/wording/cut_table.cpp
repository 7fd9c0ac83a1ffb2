#include "ui/wording/cut_table.h"

#include <cmath>

#include <QStringList>

#include "core/io/number_text.h"

namespace yardcast::ui {

namespace {

QString plainMm(double mm) { return QString::fromStdString(shortestText(std::round(mm * 10.0) / 10.0)); }

QString plainSize(double length, double width)
{
    return width > 0.0 ? plainMm(length) + QStringLiteral(" x ") + plainMm(width) : plainMm(length);
}

QString plainPlace(Point at) { return plainMm(at.x) + QStringLiteral(", ") + plainMm(at.y); }

QString word(const std::string& text) { return QString::fromStdString(text); }

void addSheets(const SheetCuts& cuts, std::vector<SawnPiece>& out)
{
    int number = 1;
    for (const CutSheet& sheet : cuts.plan.sheets) {
        const Size stock = cuts.job.list.stock[static_cast<std::size_t>(sheet.stock)].size;
        for (const PlacedPiece& placed : sheet.pieces) {
            const auto p = static_cast<std::size_t>(placed.piece);
            out.push_back({word(cuts.job.name), stockNumbersText(number, sheet.times),
                           plainSize(stock.width, stock.depth), cuts.job.pieces[p], placed.size.width,
                           placed.size.depth, plainPlace(placed.at), placed.blank >= 0 || !cuts.job.atStore});
        }
        number += sheet.times;
    }
}

void addBars(const BarCuts& cuts, std::vector<SawnPiece>& out)
{
    int number = 1;
    for (const BarPattern& pattern : cuts.plan.patterns) {
        const double stock = cuts.job.list.stock[static_cast<std::size_t>(pattern.stock)].lengthMm;
        for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
            const auto p = static_cast<std::size_t>(pattern.pieces[i]);
            out.push_back({word(cuts.job.name), stockNumbersText(number, pattern.times), plainSize(stock, 0.0),
                           cuts.job.pieces[p], cuts.job.list.pieces[p].lengthMm, 0.0, QString::number(i + 1), true});
        }
        number += pattern.times;
    }
}

QString csvField(QString text)
{
    text.replace(QLatin1Char('"'), QStringLiteral("\"\""));
    return QLatin1Char('"') + text + QLatin1Char('"');
}

}  // namespace

std::vector<SawnPiece> sawnPieces(const CutPlans& cuts)
{
    std::vector<SawnPiece> out;
    for (const SheetCutsPtr& one : cuts.sheets) addSheets(*one, out);
    for (const BarCutsPtr& one : cuts.bars) addBars(*one, out);
    return out;
}

QString stockNumbersText(int first, int times)
{
    return times == 1 ? QString::number(first) : QStringLiteral("%1-%2").arg(first).arg(first + times - 1);
}

QString sawnSizeText(const SawnPiece& piece) { return plainSize(piece.lengthMm, piece.widthMm); }

std::string cutsCsv(const CutPlans& cuts)
{
    QString text = QStringLiteral("item,stock,stock_size_mm,for,piece,kind,length_mm,width_mm,place,where,shaped\r\n");
    for (const SawnPiece& one : sawnPieces(cuts)) {
        const QStringList row{csvField(one.item),
                              csvField(one.numbers),
                              csvField(one.stock),
                              csvField(word(one.piece.subject)),
                              csvField(word(one.piece.name)),
                              csvField(word(one.piece.what)),
                              plainMm(one.lengthMm),
                              one.widthMm > 0.0 ? plainMm(one.widthMm) : QString(),
                              csvField(one.place),
                              one.atHome ? QStringLiteral("home") : QStringLiteral("store"),
                              one.piece.shaped ? QStringLiteral("yes") : QStringLiteral("no")};
        text += row.join(QLatin1Char(',')) + QStringLiteral("\r\n");
    }
    return text.toStdString();
}

}  // namespace yardcast::ui
