#include "ui/panels/figure_popover.h"

#include <QGridLayout>
#include <QLabel>
#include <QScreen>
#include <QVBoxLayout>

#include "ui/look/theme.h"
#include "ui/wording/figure_notes.h"

namespace yardcast::ui {

namespace {

constexpr int kWidthPx = 340;

QLabel* paragraph(const QString& text, QWidget* parent)
{
    auto* label = new QLabel(text, parent);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return label;
}

QLabel* caption(const QString& text, QWidget* parent)
{
    auto* label = new QLabel(text, parent);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

}  // namespace

FigurePopover::FigurePopover(const QString& code, const QList<FigureValue>& values, QWidget* parent)
    : QFrame(parent, Qt::Popup)
{
    setObjectName(QStringLiteral("figurePopover"));
    setAttribute(Qt::WA_DeleteOnClose);
    setFrameShape(QFrame::StyledPanel);
    setBackgroundRole(QPalette::Base);
    setAutoFillBackground(true);

    const FigureNote note = figureNote(code.toStdString());
    setAccessibleName(note.title);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(3 * kStepPx, 2 * kStepPx, 3 * kStepPx, 3 * kStepPx);
    column->setSpacing(kStepPx);
    auto* title = paragraph(note.title, this);
    QFont bold = title->font();
    bold.setWeight(QFont::DemiBold);
    title->setFont(bold);
    column->addWidget(title);
    const auto section = [&](const QString& name, const QString& text) {
        if (text.isEmpty()) return;
        column->addSpacing(kStepPx);
        column->addWidget(caption(name, this));
        column->addWidget(paragraph(text, this));
    };
    section(tr("How"), note.formula);
    if (!values.isEmpty()) {
        column->addSpacing(kStepPx);
        column->addWidget(caption(tr("With this plan's values"), this));
        auto* grid = new QGridLayout;
        grid->setHorizontalSpacing(3 * kStepPx);
        grid->setVerticalSpacing(2);
        grid->setColumnStretch(0, 1);
        int row = 0;
        for (const FigureValue& value : values) {
            auto* name = paragraph(value.name, this);
            auto* figure = new QLabel(value.value, this);
            figure->setFont(figureFont(figure->font()));
            figure->setAlignment(Qt::AlignRight | Qt::AlignTop);
            // A long name of a part is broken, so that what it stands beside keeps its room.
            constexpr int kMostPx = kWidthPx * 11 / 20;
            if (figure->sizeHint().width() > kMostPx) {
                figure->setWordWrap(true);
                figure->setFixedWidth(kMostPx);
            }
            grid->addWidget(name, row, 0);
            grid->addWidget(figure, row, 1);
            ++row;
        }
        column->addLayout(grid);
    }
    section(tr("Source"), note.source);
    section(tr("Taken for granted"), note.assumption);
    setFixedWidth(kWidthPx);
}

void FigurePopover::showBeside(const QRect& place, const QScreen& screen)
{
    adjustSize();
    const int height = layout()->hasHeightForWidth() ? layout()->totalHeightForWidth(kWidthPx) : sizeHint().height();
    resize(kWidthPx, height);
    const QRect room = screen.availableGeometry();
    QPoint at(place.left(), place.bottom() + kStepPx);
    if (at.y() + height > room.bottom()) at.setY(place.top() - height - kStepPx);
    at.setX(qBound(room.left(), at.x(), qMax(room.left(), room.right() - width())));
    at.setY(qMax(room.top(), at.y()));
    move(at);
    show();
}

}  // namespace yardcast::ui
