#include "ui/panels/remedy_list.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/look/theme.h"
#include "ui/wording/finding_words.h"

namespace yardcast::ui {

RemedyList::RemedyList(QWidget* parent) : QWidget(parent), column_(new QVBoxLayout(this))
{
    setObjectName(QStringLiteral("remedies"));
    column_->setContentsMargins(kStepPx, 0, kStepPx, kStepPx);
    column_->setSpacing(kStepPx);
    hide();
}

void RemedyList::setRemedies(const std::vector<Remedy>& remedies)
{
    // The button under the pointer stays while the same is offered.
    if (remedies == remedies_) return;
    remedies_ = remedies;
    buttons_.clear();
    while (QLayoutItem* item = column_->takeAt(0)) {
        item->widget()->deleteLater();
        delete item;
    }
    for (std::size_t i = 0; i < remedies_.size(); ++i) {
        const Remedy& remedy = remedies_[i];
        auto* row = new QWidget(this);
        auto* line = new QHBoxLayout(row);
        line->setContentsMargins(0, 0, 0, 0);
        line->setSpacing(2 * kStepPx);
        const QString text = remedyText(remedy);
        const QString effect = remedyEffect(remedy);
        auto* label = new QLabel(row);
        label->setTextFormat(Qt::RichText);
        label->setWordWrap(true);
        label->setText(effect.isEmpty() ? text.toHtmlEscaped()
                                        : QStringLiteral("%1<br><i>%2</i>").arg(text.toHtmlEscaped(), effect.toHtmlEscaped()));
        line->addWidget(label, 1);
        if (!remedy.edit.empty()) {
            auto* button = new QPushButton(tr("Do it"), row);
            button->setAccessibleName(tr("Do it: %1").arg(text));
            button->setToolTip(tr("One step, which undo takes back."));
            button->setEnabled(!outdated_);
            connect(button, &QPushButton::clicked, this, [this, i] { emit taken(Remedy(remedies_[i])); });
            line->addWidget(button, 0, Qt::AlignTop);
            buttons_.append(button);
        }
        column_->addWidget(row);
        row->show();
    }
    setVisible(!remedies_.empty());
}

void RemedyList::setOutdated(bool outdated)
{
    if (outdated == outdated_) return;
    outdated_ = outdated;
    for (QPushButton* button : std::as_const(buttons_)) button->setEnabled(!outdated);
}

}  // namespace yardcast::ui
