#include "ui/panels/parts_tray.h"

#include <QEvent>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include "ui/look/icons.h"
#include "ui/look/theme.h"
#include "ui/panels/tray_button.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

struct TrayItem {
    const char* word;
    QString text;
    const char* key;
};

/// A scroll area that is never narrower than what it holds may become.
class TrayScroll : public QScrollArea {
public:
    using QScrollArea::QScrollArea;
    QSize sizeHint() const override
    {
        const QSize inner = widget() ? widget()->sizeHint() : QSize();
        return inner + QSize(verticalScrollBar()->sizeHint().width(), 0);
    }
    QSize minimumSizeHint() const override
    {
        const QSize inner = widget() ? widget()->minimumSizeHint() : QSize();
        return {inner.width() + verticalScrollBar()->sizeHint().width(), 4 * kTargetPx};
    }
};

}  // namespace

PartsTray::PartsTray(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("partsTray"));
    auto* inner = new QWidget;
    auto* column = new QVBoxLayout(inner);
    column->setContentsMargins(0, kStepPx, 0, kStepPx);
    column->setSpacing(0);
    const auto heading = [&](const QString& text) {
        auto* label = new QLabel(text, inner);
        label->setForegroundRole(QPalette::PlaceholderText);
        label->setContentsMargins(2 * kStepPx, 2 * kStepPx, kStepPx, kStepPx);
        column->addWidget(label);
    };
    const auto items = [&](const QList<TrayItem>& list) {
        for (const TrayItem& item : list) {
            auto* button = new TrayButton(QLatin1String(item.word), item.text, inner);
            button->setKey(QKeySequence(QLatin1String(item.key)));
            connect(button, &TrayButton::clicked, this, [this, button] { emit drawingAsked(button->word()); });
            column->addWidget(button);
        }
    };
    heading(tr("Parts"));
    items({{"counter", kindName(PartKind::counter), "C"},
           {"support", kindName(PartKind::support), "S"},
           {"panel", kindName(PartKind::panel), "P"},
           {"front", kindName(PartKind::front), "F"},
           {"appliance", kindName(PartKind::appliance), "A"}});
    heading(tr("Cutouts"));
    items({{"sink", tr("Sink"), "K"},
           {"hob", tr("Hob"), "H"},
           {"tap", tr("Tap hole"), "T"},
           {"drain", tr("Drain"), "D"},
           {"opening", tr("Opening"), "Shift+O"}});
    heading(tr("Site"));
    items({{"water", tr("Water"), "Shift+W"},
           {"waste", tr("Waste"), "Shift+S"},
           {"power", tr("Power"), "Shift+P"},
           {"gas", tr("Gas"), "Shift+G"},
           {"wall", tr("Wall"), "Shift+L"},
           {"tree", tr("Tree"), "Shift+T"},
           {"door", tr("Door"), "Shift+D"}});
    column->addStretch(1);
    auto* scroll = new TrayScroll(this);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setWidget(inner);
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->addWidget(scroll);
    loadIcons();
}

QStringList PartsTray::words() const
{
    QStringList words;
    for (const TrayButton* button : findChildren<TrayButton*>()) words.append(button->word());
    return words;
}

void PartsTray::setKey(const QString& word, const QKeySequence& key)
{
    if (auto* button = findChild<TrayButton*>(word)) button->setKey(key);
}

void PartsTray::loadIcons()
{
    const Ink ink = inkOf(palette());
    for (TrayButton* button : findChildren<TrayButton*>()) button->setIcon(icon(button->word(), ink));
}

void PartsTray::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) loadIcons();
}

}  // namespace yardcast::ui
