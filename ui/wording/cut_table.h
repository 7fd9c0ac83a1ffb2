#pragma once

#include <string>
#include <vector>

#include <QString>

#include "core/purchase/cut_lists.h"

/// The pieces that are cut, one a row: for text and spreadsheets.
namespace yardcast::ui {

/// One piece on one sheet or length, or on several that are cut alike.
struct SawnPiece {
    QString item;
    QString numbers;        ///< of the sheets or lengths: "3" or "3-6", from 1 within the item
    QString stock;          ///< its size
    CutPiece piece;
    double lengthMm = 0.0;
    double widthMm = 0.0;   ///< 0: of a length
    QString place;          ///< "620, 0" from the low corner; of a length the order along it
    bool atHome = false;    ///< ripped of a strip that the store cuts, or not cut at the store at all
};
/// Of whole sheets and lengths.
std::vector<SawnPiece> sawnPieces(const CutPlans& cuts);
/// "3", or "3-6".
QString stockNumbersText(int first, int times);
/// "600 x 400", or the length alone.
QString sawnSizeText(const SawnPiece& piece);

/// The same as CSV (RFC 4180); numbers do not depend on the locale.
std::string cutsCsv(const CutPlans& cuts);

}  // namespace yardcast::ui
