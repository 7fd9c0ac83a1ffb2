#include <algorithm>
#include <functional>

#include <QPainter>

#include "ui/sheets/cautions.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/sheets/shopping_rows.h"

namespace yardcast::ui {

namespace {

/// Columns across the 180 mm of the frame, from its left.
struct Columns {
    double tick = 8.0;
    double item = 52.0;
    double need = 25.0;
    double owned = 20.0;
    double buy = 34.0;
    double price = 20.0;
    double paid = 21.0;

    double itemX() const { return tick; }
    double needX() const { return itemX() + item; }
    double ownedX() const { return needX() + need; }
    double buyX() const { return ownedX() + owned; }
    double priceX() const { return buyX() + buy; }
    double paidX() const { return priceX() + price; }
    double width() const { return paidX() + paid; }
};

constexpr Columns kColumns;
constexpr double kPad = 1.2;
constexpr double kAisleMm = 7.5;
constexpr double kSubtotalMm = 7.0;
constexpr double kHeadMm = 11.0;

Type itemType()
{
    Type type;
    type.sizeMm = 3.8;
    return type;
}

Type figureType()
{
    Type type;
    type.sizeMm = 4.0;
    type.align = Qt::AlignRight;
    return type;
}

Type leftoverType()
{
    Type type;
    type.sizeMm = 2.9;
    type.align = Qt::AlignRight;
    return type;
}

/// A block of the list that is never parted, with its height.
struct Block {
    double heightMm = 0.0;
    std::function<void(QPainter&, const QRectF&)> paint;
    QString aisle;              ///< the aisle it belongs to; empty for the sums
    bool opensAisle = false;    ///< stays with the row after it
    bool staysWithPrevious = false;
};

QRectF cell(const QRectF& row, double x, double width)
{
    return QRectF(row.left() + x + kPad, row.top(), width - 2.0 * kPad, row.height());
}

/// The figure on one line in the right of its cell, set smaller where it must; at the given height.
void paintFigure(QPainter& painter, const QRectF& box, const QString& text, const Type& type)
{
    if (!text.isEmpty()) {
        paintLines(painter, box, {text}, fittedType(text, box.width(), type));
    }
}

Block rowBlock(const ShoppingRow& row, const QString& aisle)
{
    const QStringList name = wrapped(row.name, kColumns.item - 2.0 * kPad, itemType());
    const double nameMm = lineHeightMm(itemType()) * static_cast<double>(name.size());
    double buyMm = lineHeightMm(figureType()) * static_cast<double>(row.packs.size());
    if (!row.leftover.isEmpty()) {
        buyMm += lineHeightMm(leftoverType());
    }
    Block block;
    block.aisle = aisle;
    block.heightMm = std::max({nameMm, buyMm, 7.2}) + 2.4;
    block.paint = [row, name](QPainter& painter, const QRectF& box) {
        painter.setPen(QPen(QColor("#8C8C8C"), 0.2));
        painter.drawLine(box.bottomLeft(), box.bottomRight());
        painter.setPen(QPen(Qt::black, 0.35));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(box.left() + 1.5, box.top() + 1.6, 5.0, 5.0));
        const QRectF inner = box.adjusted(0.0, 1.2, 0.0, 0.0);
        paintLines(painter, cell(inner, kColumns.itemX(), kColumns.item), name, itemType());
        paintFigure(painter, cell(inner, kColumns.needX(), kColumns.need), row.need, figureType());
        paintFigure(painter, cell(inner, kColumns.ownedX(), kColumns.owned), row.owned, figureType());
        QRectF buy = cell(inner, kColumns.buyX(), kColumns.buy);
        Type bold = figureType();
        bold.bold = true;
        for (const QString& pack : row.packs) {
            paintFigure(painter, buy, pack, bold);
            buy.translate(0.0, lineHeightMm(figureType()));
        }
        paintFigure(painter, buy, row.leftover, leftoverType());
        paintFigure(painter, cell(inner, kColumns.priceX(), kColumns.price), row.price, figureType());
        painter.setPen(QPen(Qt::black, 0.25));
        painter.drawRect(QRectF(box.left() + kColumns.paidX() + 1.5, box.top() + 1.2, kColumns.paid - 3.0, 6.6));
    };
    return block;
}

void paintAisleName(QPainter& painter, const QRectF& box, const QString& name)
{
    painter.fillRect(box.adjusted(0.35, 0.8, -0.35, 0.0), QColor("#E2E2E2"));
    Type type;
    type.bold = true;
    type.sizeMm = 4.4;
    paintFitted(painter, box.adjusted(2.0, 0.8, -2.0, 0.0), name, type);
}

Block aisleBlock(const QString& name)
{
    Block block;
    block.heightMm = kAisleMm;
    block.aisle = name;
    block.opensAisle = true;
    block.paint = [name](QPainter& painter, const QRectF& box) { paintAisleName(painter, box, name); };
    return block;
}

Block subtotalBlock(const ShoppingAisle& aisle)
{
    Block block;
    block.heightMm = kSubtotalMm;
    block.aisle = aisle.name;
    block.staysWithPrevious = true;
    block.paint = [aisle](QPainter& painter, const QRectF& box) {
        Type type;
        type.sizeMm = 3.6;
        type.align = Qt::AlignRight;
        const double left = kColumns.itemX() + kPad;
        paintFitted(painter,
                    QRectF(box.left() + left, box.top(), kColumns.priceX() - left - kPad, box.height()),
                    Sheets::tr("Subtotal %1").arg(aisle.name), type);
        type.bold = true;
        type.sizeMm = 4.0;
        paintFitted(painter, cell(box, kColumns.priceX(), kColumns.price), aisle.subtotal, type);
    };
    return block;
}

Block sumsBlock(const ShoppingSums& sums)
{
    constexpr double kLine = 7.0;
    Block block;
    block.heightMm = 4.0 + kLine * static_cast<double>(sums.lines.size());
    block.paint = [sums](QPainter& painter, const QRectF& box) {
        QRectF line(box.left(), box.top() + 2.0, box.width(), kLine);
        painter.setPen(QPen(Qt::black, 0.5));
        painter.drawLine(line.topLeft(), line.topRight());
        bool first = true;
        for (const auto& [words, figure] : sums.lines) {
            Type type;
            type.sizeMm = first ? 5.0 : 4.2;
            type.bold = first;
            paintFitted(painter, line.adjusted(2.0, 0.0, -kColumns.width() + 110.0, 0.0), words, type);
            type.align = Qt::AlignRight;
            paintFitted(painter, line.adjusted(110.0, 0.0, -kColumns.paid, 0.0), figure, type);
            if (first) {
                painter.setPen(QPen(Qt::black, 0.35));
                painter.drawRect(QRectF(line.left() + kColumns.paidX() + 1.5, line.top() + 0.6, kColumns.paid - 3.0,
                                        kLine - 1.2));
            }
            line.translate(0.0, kLine);
            first = false;
        }
    };
    return block;
}

Block wordsBlock(const QString& text, double sizeMm)
{
    Type type;
    type.sizeMm = sizeMm;
    const QStringList lines = wrapped(text, kColumns.width() - 4.0, type);
    Block block;
    block.heightMm = lineHeightMm(type) * static_cast<double>(lines.size()) + 1.0;
    block.paint = [lines, type](QPainter& painter, const QRectF& box) {
        paintLines(painter, box.adjusted(2.0, 0.5, -2.0, 0.0), lines, type);
    };
    return block;
}

void paintHead(QPainter& painter, const QRectF& box, const QString& currency)
{
    Type type;
    type.sizeMm = 3.2;
    type.align = Qt::AlignRight;
    const QRectF inner = box.adjusted(0.0, 1.2, 0.0, 0.0);
    const auto head = [&](double x, double width, const QString& text) {
        paintWrapped(painter, cell(inner, x, width), text, type);
    };
    const QString unit = currency.isEmpty() ? QString() : QLatin1Char('\n') + currency;
    head(kColumns.needX(), kColumns.need, Sheets::tr("Need,\nexact"));
    head(kColumns.ownedX(), kColumns.owned, Sheets::tr("Already\nowned"));
    head(kColumns.buyX(), kColumns.buy, Sheets::tr("Buy,\npacks"));
    head(kColumns.priceX(), kColumns.price, Sheets::tr("Price") + unit);
    head(kColumns.paidX(), kColumns.paid, Sheets::tr("Paid") + unit);
    type.align = Qt::AlignLeft;
    paintWrapped(painter, cell(inner, kColumns.itemX(), kColumns.item), Sheets::tr("Item"), type);
    painter.setPen(QPen(Qt::black, 0.5));
    painter.drawLine(box.bottomLeft(), box.bottomRight());
}

std::vector<Block> blocksOf(const Plan& plan, const Assessment& assessment, const ShoppingSums& sums)
{
    std::vector<Block> blocks;
    for (const ShoppingAisle& aisle : shoppingAisles(assessment.shopping)) {
        blocks.push_back(aisleBlock(aisle.name));
        for (const ShoppingRow& row : aisle.rows) {
            blocks.push_back(rowBlock(row, aisle.name));
        }
        blocks.push_back(subtotalBlock(aisle));
    }
    if (assessment.shopping.lines.empty()) {
        blocks.push_back(wordsBlock(plan.parts.empty()
                                        ? Sheets::tr("Nothing to buy yet: the plan has no parts.")
                                        : Sheets::tr("Nothing to buy: the plan's parts ask for nothing."),
                                    kTitleType));
        return blocks;
    }
    blocks.push_back(sumsBlock(sums));
    for (const QString& remark : sums.remarks) {
        blocks.push_back(wordsBlock(remark, kSmallType + 0.2));
    }
    blocks.push_back(wordsBlock(materialCautions().join(QLatin1Char('\n')), kSmallType));
    return blocks;
}

}  // namespace

std::vector<SheetPage> shoppingPages(const Plan& plan, const Assessment& assessment)
{
    const ShoppingSums sums = shoppingSums(plan, assessment);
    const std::vector<Block> blocks = blocksOf(plan, assessment, sums);
    const QRectF area = contentBox(false, false);
    const double room = area.height() - kHeadMm;
    struct Filled {
        QString carried;  ///< aisle that goes on from the page before
        std::vector<Block> blocks;
    };
    std::vector<Filled> filled(1);
    double used = 0.0;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        // A heading stays with its first row, a subtotal with its last.
        double wanted = blocks[i].heightMm;
        if (blocks[i].opensAisle && i + 1 < blocks.size()) {
            wanted += blocks[i + 1].heightMm;
        }
        if (i + 1 < blocks.size() && blocks[i + 1].staysWithPrevious && !blocks[i].staysWithPrevious) {
            wanted += blocks[i + 1].heightMm;
        }
        if (used > 0.0 && used + wanted > room) {
            const bool within = !blocks[i].aisle.isEmpty() && !blocks[i].opensAisle;
            filled.push_back({within ? blocks[i].aisle : QString(), {}});
            used = within ? kAisleMm : 0.0;
        }
        used += blocks[i].heightMm;
        filled.back().blocks.push_back(blocks[i]);
    }
    std::vector<SheetPage> pages;
    for (const Filled& one : filled) {
        SheetPage page;
        page.sheet = sheetTitle(QStringLiteral("shopping"));
        page.paint = [one, currency = sums.currency](QPainter& painter, const QRectF& box) {
            double y = box.top();
            if (std::any_of(one.blocks.begin(), one.blocks.end(),
                            [](const Block& block) { return !block.aisle.isEmpty(); })) {
                paintHead(painter, QRectF(box.left(), y, box.width(), kHeadMm), currency);
                y += kHeadMm;
            }
            if (!one.carried.isEmpty()) {
                paintAisleName(painter, QRectF(box.left(), y, box.width(), kAisleMm),
                               Sheets::tr("%1, continued").arg(one.carried));
                y += kAisleMm;
            }
            for (const Block& block : one.blocks) {
                block.paint(painter, QRectF(box.left(), y, box.width(), block.heightMm));
                y += block.heightMm;
            }
        };
        pages.push_back(std::move(page));
    }
    return pages;
}

}  // namespace yardcast::ui
