#include "ui/panels/fields/property_sheet.h"

#include <QToolButton>
#include <QVBoxLayout>

#include "ui/look/theme.h"

namespace yardcast::ui {

FieldGroup::FieldGroup(FieldHost& host, const QString& title, QWidget* parent)
    : QWidget(parent), heading_(new QToolButton(this)), fields_(new FieldColumn(host, this))
{
    heading_->setText(title);
    heading_->setAutoRaise(true);
    heading_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    heading_->setArrowType(Qt::DownArrow);
    heading_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    heading_->setFocusPolicy(Qt::TabFocus);
    QFont bold = heading_->font();
    bold.setWeight(QFont::DemiBold);
    heading_->setFont(bold);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(kStepPx);
    column->addWidget(heading_);
    column->addWidget(fields_);
    fields_->setContentsMargins(2 * kStepPx, 0, 0, 2 * kStepPx);
    connect(heading_, &QToolButton::clicked, this, [this] {
        setOpened(!opened_);
        emit openedChanged(opened_);
    });
}

QString FieldGroup::title() const { return heading_->text(); }

void FieldGroup::setOpened(bool opened)
{
    opened_ = opened;
    heading_->setArrowType(opened ? Qt::DownArrow : Qt::RightArrow);
    heading_->setAccessibleDescription(opened ? tr("open") : tr("closed"));
    fields_->setVisible(opened);
}

void FieldGroup::showPlan(const Plan& plan)
{
    fields_->showPlan(plan);
    const bool there = fields_->hasAnythingThere();
    if (isHidden() == there) setVisible(there);
}

PropertySheet::PropertySheet(FieldHost& host, QSet<QString>& closed, QWidget* parent)
    : QWidget(parent), host_(host), closed_(closed), layout_(new QVBoxLayout(this))
{
    layout_->setContentsMargins(kStepPx, kStepPx, 2 * kStepPx, 2 * kStepPx);
    layout_->setSpacing(kStepPx);
    layout_->addStretch(1);
}

FieldColumn& PropertySheet::group(const QString& title)
{
    auto* group = new FieldGroup(host_, title, this);
    group->setOpened(!closed_.contains(title));
    connect(group, &FieldGroup::openedChanged, this, [this, title](bool opened) {
        if (opened) {
            closed_.remove(title);
        } else {
            closed_.insert(title);
        }
    });
    layout_->insertWidget(layout_->count() - 1, group);
    groups_.append(group);
    return group->fields();
}

void PropertySheet::showPlan(const Plan& plan)
{
    for (FieldGroup* group : std::as_const(groups_)) group->showPlan(plan);
}

bool PropertySheet::commit()
{
    bool all = true;
    for (FieldGroup* group : std::as_const(groups_)) all = group->fields().commit() && all;
    return all;
}

Field* PropertySheet::find(const QString& path) const { return findChild<Field*>(path); }

}  // namespace yardcast::ui
