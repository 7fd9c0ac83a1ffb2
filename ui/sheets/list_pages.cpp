#include "ui/sheets/list_pages.h"

#include <algorithm>

#include <QPainter>

#include "ui/sheets/scales.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"

namespace yardcast::ui {

namespace {

constexpr double kBetweenSentencesMm = 0.7;

Type sentenceType()
{
    Type type;
    type.sizeMm = 3.0;
    return type;
}

/// A block, or as much of it as stands on one page.
struct Piece {
    QString title;
    SheetTable table;
    std::optional<ScaledDrawing> drawing;
    int scale = 1;
    std::function<void(QPainter&, const QRectF&)> picture;
    double heightMm = 0.0;  ///< without the title
};

void paintPiece(QPainter& painter, const QRectF& box, double y, const Piece& piece)
{
    paintListTitle(painter, QRectF(box.left(), y, box.width(), kListTitleMm), piece.title);
    const double below = y + kListTitleMm;
    if (piece.drawing) {
        paintInBox(painter, *piece.drawing, QRectF(box.left(), below, box.width(), piece.heightMm), piece.scale);
    } else if (piece.picture) {
        painter.save();
        piece.picture(painter, QRectF(box.left(), below, box.width(), piece.heightMm));
        painter.restore();
    } else {
        paintTable(painter, QPointF(box.left() + 1.0, below), piece.table);
    }
}

/// Fills pages one after the other.
class Filler {
public:
    explicit Filler(const QRectF& area) : area_(area), room_(area.height()) {}

    void add(const ListBlock& block)
    {
        if (block.drawing) {
            addDrawing(block);
            return;
        }
        if (block.picture) {
            Piece piece;
            piece.title = block.title;
            piece.picture = block.picture;
            piece.heightMm = block.pictureMm;
            makeRoom(kListTitleMm + piece.heightMm);
            put(std::move(piece));
            return;
        }
        const SheetTable wide = block.table.scaledTo(area_.width() - 2.0);
        // A title over a row or two at the foot of a page is overlooked.
        double least = kListTitleMm + wide.headHeightMm();
        for (std::size_t i = 0; i < std::min<std::size_t>(3, wide.rows.size()); ++i) {
            least += wide.rowHeightMm(wide.rows[i]);
        }
        makeRoom(least);
        bool isFirst = true;
        for (SheetTable& table : wide.split(room_ - kListTitleMm, area_.height() - kListTitleMm)) {
            if (!isFirst) turn();
            isFirst = false;
            if (table.rows.empty()) continue;
            Piece piece;
            piece.title = block.title;
            piece.heightMm = table.heightMm();
            piece.table = std::move(table);
            put(std::move(piece));
        }
    }

    void makeRoom(double heightMm)
    {
        if (heightMm > room_ && !pages_.back().empty()) turn();
    }

    /// As many of the sentences as this page holds, the others on as many more as they take.
    void addSentences(const QStringList& sentences)
    {
        words_.resize(pages_.size());
        for (const QString& sentence : sentences) {
            const double height = sentencesHeightMm({sentence}, area_.width() - 4.0);
            const double used = words_.back().isEmpty() ? kListGapMm : 0.0;
            if (height + used > room_ && !(pages_.back().empty() && words_.back().isEmpty())) {
                turn();
                words_.resize(pages_.size());
            }
            room_ -= height + (words_.back().isEmpty() ? kListGapMm : 0.0);
            words_.back().append(sentence);
        }
    }

    const std::vector<std::vector<Piece>>& pages() const { return pages_; }
    const std::vector<QStringList>& words() const { return words_; }

private:
    void addDrawing(const ListBlock& block)
    {
        Piece piece;
        piece.drawing = block.drawing;
        piece.scale = fitInBox(*block.drawing, QSizeF(area_.width(), block.drawingMm));
        piece.title = Sheets::tr("%1, drawn %2").arg(block.title, scaleText(piece.scale));
        piece.heightMm = block.drawing->bounds(paperStyle(piece.scale)).height() / piece.scale + 2.0;
        makeRoom(kListTitleMm + piece.heightMm);
        put(std::move(piece));
    }

    void turn()
    {
        pages_.emplace_back();
        room_ = area_.height();
    }

    void put(Piece piece)
    {
        room_ -= kListTitleMm + piece.heightMm + kListGapMm;
        pages_.back().push_back(std::move(piece));
    }

    QRectF area_;
    double room_;
    std::vector<std::vector<Piece>> pages_{1};
    std::vector<QStringList> words_;   ///< below the pieces of each page
};

}  // namespace

void paintListTitle(QPainter& painter, const QRectF& box, const QString& text)
{
    Type type;
    type.bold = true;
    paintName(painter, box.adjusted(1.5, 0.6, -1.5, -0.4), text, type);
}

double sentencesHeightMm(const QStringList& sentences, double widthMm)
{
    double height = 0.0;
    for (const QString& sentence : sentences) {
        const auto lines = wrapped(sentence, widthMm, sentenceType()).size();
        height += lineHeightMm(sentenceType()) * static_cast<double>(lines) + kBetweenSentencesMm;
    }
    return height;
}

void paintSentences(QPainter& painter, QRectF box, const QStringList& sentences)
{
    for (const QString& sentence : sentences) {
        box.setTop(box.top() + paintWrapped(painter, box, sentence, sentenceType()) + kBetweenSentencesMm);
    }
}

std::vector<SheetPage> listPages(const SheetPage& like, const std::vector<ListBlock>& blocks,
                                 const QStringList& sentences)
{
    const QRectF area = contentBox(false, false);
    Filler filler(area);
    for (const ListBlock& block : blocks) filler.add(block);
    filler.addSentences(sentences);
    std::vector<SheetPage> pages;
    for (std::size_t i = 0; i < filler.pages().size(); ++i) {
        const QStringList closing = filler.words()[i];
        SheetPage page = like;
        page.paint = [pieces = filler.pages()[i], closing](QPainter& painter, const QRectF& box) {
            double y = box.top();
            for (const Piece& piece : pieces) {
                paintPiece(painter, box, y, piece);
                y += kListTitleMm + piece.heightMm + kListGapMm;
            }
            paintSentences(painter, QRectF(box.left() + 2.0, y + kListGapMm, box.width() - 4.0, 0.0), closing);
        };
        pages.push_back(std::move(page));
    }
    return pages;
}

SheetPage wordsPage(const SheetPage& like, const QString& words)
{
    SheetPage page = like;
    page.paint = [words](QPainter& painter, const QRectF& area) {
        Type type;
        type.sizeMm = kTitleType;
        paintWrapped(painter, area.adjusted(10.0, 20.0, -10.0, 0.0), words, type);
    };
    return page;
}

}  // namespace yardcast::ui
