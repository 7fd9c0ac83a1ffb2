#include "ui/window/angle_field.h"

#include <QCursor>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QScreen>
#include <QVBoxLayout>

#include "ui/look/number_text.h"
#include "ui/look/theme.h"

namespace yardcast::ui {

AngleField::AngleField(QWidget* parent)
    : QFrame(parent, Qt::Popup), edit_(new QLineEdit(this)), fault_(new QLabel(this))
{
    setAttribute(Qt::WA_DeleteOnClose);
    setFrameShape(QFrame::Box);
    auto* label = new QLabel(tr("Turn &left by"), this);
    label->setBuddy(edit_);
    edit_->setFixedWidth(90);
    edit_->setPlaceholderText(tr("degrees"));
    edit_->setToolTip(tr("Degrees; with a minus sign to the right."));
    fault_->hide();
    auto* row = new QHBoxLayout;
    row->addWidget(label);
    row->addWidget(edit_);
    row->addWidget(new QLabel(tr("°"), this));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(3 * kStepPx, 2 * kStepPx, 3 * kStepPx, 2 * kStepPx);
    column->addLayout(row);
    column->addWidget(fault_);
    connect(edit_, &QLineEdit::returnPressed, this, &AngleField::take);
}

void AngleField::openOver(const QWidget& place)
{
    adjustSize();
    const QRect inside(place.mapToGlobal(QPoint(0, 0)), place.size());
    QPoint at = QCursor::pos();
    if (!inside.contains(at)) at = inside.center();
    if (const QScreen* screen = place.screen()) {
        const QRect room = screen->availableGeometry();
        at.setX(qBound(room.left(), at.x(), qMax(room.left(), room.right() - width())));
        at.setY(qBound(room.top(), at.y(), qMax(room.top(), room.bottom() - height())));
    }
    move(at);
    show();
    edit_->setFocus();
}

void AngleField::take()
{
    const NumberReading angle = parseNumber(edit_->text());
    if (!angle) {
        fault_->setText(numberFaultText(*angle.fault));
        fault_->show();
        adjustSize();
        return;
    }
    close();
    emit entered(angle.value);
}

}  // namespace yardcast::ui
