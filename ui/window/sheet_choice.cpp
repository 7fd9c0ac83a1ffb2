#include "ui/window/sheet_choice.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/look/theme.h"
#include "ui/sheets/print_pack.h"

namespace yardcast::ui {

SheetChoice::SheetChoice(const QStringList& names, const QStringList& chosenAtFirst, const QString& doIt,
                         QWidget* parent)
    : QDialog(parent), names_(names)
{
    setWindowTitle(tr("Which sheets?"));
    auto* column = new QVBoxLayout(this);
    column->setSpacing(kStepPx);
    column->addWidget(new QLabel(tr("One sheet, one task. Paper A4."), this));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    go_ = buttons->addButton(doIt, QDialogButtonBox::AcceptRole);
    go_->setDefault(true);
    for (const QString& name : names) {
        auto* tick = new QCheckBox(sheetTitle(name), this);
        tick->setChecked(chosenAtFirst.contains(name));
        connect(tick, &QCheckBox::toggled, this, [this] { go_->setEnabled(!chosen().isEmpty()); });
        ticks_.append(tick);
        column->addWidget(tick);
    }
    go_->setEnabled(!chosen().isEmpty());
    column->addSpacing(2 * kStepPx);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

QStringList SheetChoice::chosen() const
{
    QStringList wanted;
    for (qsizetype i = 0; i < ticks_.size(); ++i) {
        if (ticks_[i]->isChecked()) wanted.append(names_[i]);
    }
    return wanted;
}

}  // namespace yardcast::ui
