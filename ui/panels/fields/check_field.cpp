#include "ui/panels/fields/check_field.h"

#include <QCheckBox>
#include <QSignalBlocker>

#include "ui/look/theme.h"

namespace yardcast::ui {

CheckField::CheckField(FieldHost& host, const QString& path, const QString& label, const QString& text,
                       Binding<bool> binding, QWidget* parent)
    : Field(host, path, label, parent), binding_(std::move(binding)), box_(new QCheckBox(text, this))
{
    box_->setMinimumHeight(kTargetPx);
    setEditor(box_);
    box_->setAccessibleName(text.isEmpty() ? label : tr("%1: %2").arg(label, text));
    setFocusProxy(box_);
    connect(box_, &QCheckBox::clicked, this, [this](bool on) {
        // Out of "differs" a click says yes to all, not a third state.
        box_->setTristate(false);
        const Edit edit = [write = binding_.write, on](const Plan& plan) { return write(plan, on); };
        this->host().apply(editName(), edit);
    });
}

void CheckField::showPlan(const Plan& plan)
{
    const Reading<bool> reading = binding_.read(plan);
    setThere(reading.there);
    if (!reading.there) return;
    const QSignalBlocker quiet(box_);
    box_->setTristate(reading.mixed);
    box_->setCheckState(reading.mixed ? Qt::PartiallyChecked : reading.value ? Qt::Checked : Qt::Unchecked);
}

}  // namespace yardcast::ui
