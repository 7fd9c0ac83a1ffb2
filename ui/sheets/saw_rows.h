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

/// The cuts of one sheet in sawing order: the store's, or those at home. Strips that are ripped at home are numbered
/// through all sheets of a job; the sheet's first has the number `firstStrip`.
std::vector<SawRow> sawRows(const SheetJob& job, const CutSheet& sheet, bool atHome, int firstStrip = 1);

/// Cuts at home that are made with one setting of the fence, whichever strips they are in.
struct RipRow {
    int round = 0;          ///< 0: along the strip; 1: what that gives, cut to length; 2: of that what is narrower
    double fenceMm = 0.0;
    double longMm = 0.0;    ///< of what comes off
    int count = 0;          ///< cuts, those of sheets that are cut several times counted as often
    QString from;           ///< "7 (11–12), 9 (14)": strips and the numbers of the cuts on their sheets
    QString gives;
    QString leaves;         ///< pieces that are left when the last cut is made
};
/// Of all sheets of a job, round by round; in each from the widest setting down.
std::vector<RipRow> ripRows(const SheetCuts& cuts);

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
