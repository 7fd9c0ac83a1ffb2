#include "ui/panels/fields/choice_field.h"

#include <QComboBox>
#include <QSignalBlocker>
#include <QWheelEvent>

namespace yardcast::ui {

namespace {

/// Scrolling through the editor must not change what lies under the pointer.
class QuietBox : public QComboBox {
public:
    using QComboBox::QComboBox;

protected:
    void wheelEvent(QWheelEvent* event) override { event->ignore(); }
};

}  // namespace

ChoiceField::ChoiceField(FieldHost& host, const QString& path, const QString& label, Binding<QString> binding,
                         OptionsOf optionsOf, QWidget* parent)
    : Field(host, path, label, parent), binding_(std::move(binding)), optionsOf_(std::move(optionsOf)),
      box_(new QuietBox(this))
{
    box_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box_->setMinimumContentsLength(8);
    setEditor(box_);
    setFocusProxy(box_);
    connect(box_, &QComboBox::activated, this, &ChoiceField::choose);
}

void ChoiceField::showPlan(const Plan& plan)
{
    const Reading<QString> reading = binding_.read(plan);
    setThere(reading.there);
    if (!reading.there) return;
    QList<Option> options = optionsOf_(plan);
    const auto isKnown = [&](const Option& option) { return option.word == reading.value; };
    if (!reading.mixed && std::ranges::none_of(options, isKnown)) {
        options.append({reading.value, reading.value.isEmpty() ? tr("nothing chosen")
                                                               : tr("%1 (not in this plan)").arg(reading.value)});
    }
    const QSignalBlocker quiet(box_);
    if (options != options_) {
        options_ = options;
        box_->clear();
        for (const Option& option : std::as_const(options_)) box_->addItem(option.text);
    }
    box_->setPlaceholderText(tr("different"));
    const auto found = std::ranges::find_if(options_, isKnown);
    box_->setCurrentIndex(reading.mixed ? -1 : static_cast<int>(found - options_.begin()));
    box_->setToolTip(box_->currentText());
}

void ChoiceField::choose(int index)
{
    if (index < 0 || index >= options_.size()) return;
    const Edit edit = [write = binding_.write, word = options_[index].word](const Plan& plan) {
        return write(plan, word);
    };
    host().apply(editName(), edit);
}

ChoiceField::OptionsOf fixedOptions(const QStringList& texts)
{
    QList<Option> options;
    for (qsizetype i = 0; i < texts.size(); ++i) options.append({QString::number(i), texts[i]});
    return [options](const Plan&) { return options; };
}

ChoiceField::OptionsOf optionalOptions(const QString& defaultText, const QStringList& texts)
{
    QList<Option> options{{QString(), defaultText}};
    for (qsizetype i = 0; i < texts.size(); ++i) options.append({QString::number(i), texts[i]});
    return [options](const Plan&) { return options; };
}

}  // namespace yardcast::ui
