#pragma once

#include <QStringList>

#include "ui/drawing/mould_painter.h"
#include "ui/sheets/sheet_table.h"

namespace yardcast::ui {

/// What is sawn and put in, by number.
SheetTable mouldPartTable(const Mould& mould);
/// Steps in the order of assembly, each with a box to tick.
SheetTable mouldStepTable(const MouldSubject& subject);
/// Cutouts with their distances to all four sides of the mould.
SheetTable mouldCutoutTable(const MouldSubject& subject);
/// Rows of ties with their forces; empty of a mould that lies.
SheetTable mouldTieTable(const Mould& mould);
SheetTable mouldHeightTable(const MouldSubject& subject);
/// Brackets, screws, seals, release agent, what holds the foam down, sizes that come out.
QStringList mouldSentences(const MouldSubject& subject);
/// What one asks standing at the mould; the answer to each has to be yes.
QStringList mouldQuestions(const MouldSubject& subject);

}  // namespace yardcast::ui
