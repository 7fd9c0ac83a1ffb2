#pragma once

#include <vector>

#include <QString>

#include "core/purchase/cut_lists.h"

/// The words of saw lists.
namespace yardcast::ui {

/// One cut, or several alike that follow each other.
struct SawRow {
    QString number;      ///< "3", or "3–6"
    QString onSaw;       ///< size of what lies on the saw
    QString measureOff;  ///< "660 of 2500"
    QString gives;
    QString leaves;

    friend bool operator==(const SawRow&, const SawRow&) = default;
};

/// The cuts of one sheet in sawing order: the store's, or those at home.
std::vector<SawRow> sawRows(const SheetJob& job, const CutSheet& sheet, bool atHome);

/// The pieces of one sheet, each once, in the order in which they come free.
struct SawnPieceRow {
    int piece = 0;       ///< index into the job's pieces
    int count = 1;       ///< of one sheet
    bool atHome = false; ///< ripped at home
};
std::vector<SawnPieceRow> sawnPieces(const CutSheet& sheet);

/// "660 × 1240": plain figures, mm.
QString plainSize(Size size);

}  // namespace yardcast::ui
