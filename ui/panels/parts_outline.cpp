#include "ui/panels/parts_outline.h"

#include <QItemSelectionModel>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QScopedValueRollback>
#include <QTreeView>
#include <QVBoxLayout>

#include "core/plan/edits.h"
#include "ui/document/plan_document.h"
#include "ui/document/selection.h"
#include "ui/look/theme.h"
#include "ui/panels/outline_model.h"

namespace yardcast::ui {

namespace {

/// Marks the part under the pointer, wherever the pointer is.
class OutlineView : public QTreeView {
public:
    OutlineView(const OutlineModel& model, const Selection& selection, QWidget* parent)
        : QTreeView(parent), model_(model), selection_(selection)
    {
    }

protected:
    void drawRow(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        const OutlineModel::Place place = model_.placeOf(index);
        const bool hovered = place.kind == OutlineModel::Kind::part && !selection_.hovered().isEmpty() &&
                             place.id == selection_.hovered();
        const bool highlighted = place.kind == OutlineModel::Kind::part && selection_.highlighted().contains(place.id);
        if (hovered || highlighted) {
            const Ink ink = inkOf(option.palette);
            painter->fillRect(option.rect, mixed(ink.sheet, ink.chosen, 0.10));
        }
        QTreeView::drawRow(painter, option, index);
    }

private:
    const OutlineModel& model_;
    const Selection& selection_;
};

}  // namespace

PartsOutline::PartsOutline(PlanDocument& document, Selection& selection, LiveAssessment&, QWidget* parent)
    : QWidget(parent), document_(document), selection_(selection), model_(new OutlineModel(this)),
      view_(new OutlineView(*model_, selection, this)), empty_(new QLabel(this))
{
    setObjectName(QStringLiteral("partsOutline"));
    view_->setModel(model_);
    view_->setAccessibleName(tr("Parts"));
    view_->setHeaderHidden(true);
    view_->setUniformRowHeights(true);
    view_->setFrameShape(QFrame::NoFrame);
    view_->setSelectionMode(QAbstractItemView::ExtendedSelection);
    view_->setEditTriggers(QAbstractItemView::EditKeyPressed | QAbstractItemView::DoubleClicked);
    view_->setExpandsOnDoubleClick(false);
    view_->setTextElideMode(Qt::ElideRight);
    view_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    view_->setMouseTracking(true);
    view_->viewport()->installEventFilter(this);
    view_->installEventFilter(this);
    empty_->setWordWrap(true);
    empty_->setForegroundRole(QPalette::PlaceholderText);
    empty_->setText(tr("No parts yet. Drag a counter onto the sheet, or press C."));
    empty_->setContentsMargins(3 * kStepPx, 2 * kStepPx, 3 * kStepPx, 2 * kStepPx);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(empty_);
    column->addWidget(view_, 1);

    connect(&document, &PlanDocument::planChanged, this, &PartsOutline::refresh);
    connect(&selection, &Selection::chosenChanged, this, &PartsOutline::showSelection);
    connect(&selection, &Selection::hoveredChanged, view_->viewport(), qOverload<>(&QWidget::update));
    connect(&selection, &Selection::highlightedChanged, view_->viewport(), qOverload<>(&QWidget::update));
    connect(view_->selectionModel(), &QItemSelectionModel::selectionChanged, this, &PartsOutline::takeSelection);
    connect(view_, &QTreeView::entered, this, [this](const QModelIndex& index) {
        const OutlineModel::Place place = model_->placeOf(index);
        if (place.kind == OutlineModel::Kind::part) selection_.setHovered(place.id);
        if (place.kind == OutlineModel::Kind::cutout) selection_.setHovered(place.part);
        if (place.kind == OutlineModel::Kind::fixture) selection_.setHovered({});
    });
    connect(model_, &OutlineModel::renameAsked, this, [this](const QString& part, const QString& name) {
        // Not while the view is still closing its editor.
        QMetaObject::invokeMethod(this, [this, part, name] {
            document_.apply(tr("Rename %1").arg(part), [&](const Plan& plan) {
                return changePart(plan, part.toStdString(), [&](Part& p) {
                    p.name = name.isEmpty() ? std::nullopt : std::optional(name.toStdString());
                });
            });
        }, Qt::QueuedConnection);
    });
    useInk();
}

void PartsOutline::refresh()
{
    if (!isVisible()) return;
    {
        // Rows that go take their selection with them; what is chosen is for `Selection` alone to say.
        const QScopedValueRollback guard(following_, true);
        const bool first = model_->rowCount() == 0;
        model_->setPlan(document_.plan());
        if (first) view_->expandAll();
    }
    const bool isEmpty = model_->rowCount() == 0;
    if (empty_->isHidden() == isEmpty) empty_->setVisible(isEmpty);
    showSelection();
}

void PartsOutline::takeSelection()
{
    if (following_) return;
    const QScopedValueRollback guard(following_, true);
    QStringList parts;
    QList<OutlineModel::Place> others;
    for (const QModelIndex& index : view_->selectionModel()->selectedIndexes()) {
        const OutlineModel::Place place = model_->placeOf(index);
        if (place.kind == OutlineModel::Kind::part) {
            parts.append(place.id);
        } else {
            others.append(place);
        }
    }
    if (!parts.isEmpty()) {
        selection_.setParts(parts);
    } else if (others.isEmpty()) {
        selection_.clear();
    } else if (others.last().kind == OutlineModel::Kind::cutout) {
        selection_.setCutout({others.last().part, others.last().id});
    } else {
        selection_.setFixture(others.last().id);
    }
}

void PartsOutline::showSelection()
{
    if (following_ || !isVisible()) return;
    const QScopedValueRollback guard(following_, true);
    QItemSelection chosen;
    QModelIndex first;
    const auto add = [&](const QModelIndex& index) {
        if (!index.isValid()) return;
        if (!first.isValid()) first = index;
        chosen.select(index, index);
    };
    if (!selection_.cutout().isEmpty()) {
        add(model_->indexOfCutout(selection_.cutout().part, selection_.cutout().cutout));
    } else if (!selection_.fixture().isEmpty()) {
        add(model_->indexOfFixture(selection_.fixture()));
    } else {
        for (const QString& part : selection_.parts()) add(model_->indexOfPart(part));
    }
    if (chosen.indexes() == view_->selectionModel()->selection().indexes()) return;
    view_->selectionModel()->select(chosen, QItemSelectionModel::ClearAndSelect);
    if (first.isValid() && !view_->hasFocus()) {
        view_->selectionModel()->setCurrentIndex(first, QItemSelectionModel::NoUpdate);
        view_->scrollTo(first);
    }
}

void PartsOutline::useInk()
{
    const Ink ink = inkOf(palette());
    model_->setInk(ink);
    QPalette own;
    own.setColor(QPalette::Highlight, mixed(ink.sheet, ink.chosen, 0.24));
    own.setColor(QPalette::HighlightedText, ink.ink);
    view_->setPalette(own);
}

void PartsOutline::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    refresh();
}

void PartsOutline::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) useInk();
}

bool PartsOutline::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == view_->viewport() && event->type() == QEvent::Leave) selection_.setHovered({});
    if (watched == view_ && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if ((key == Qt::Key_Return || key == Qt::Key_Enter) && view_->currentIndex().isValid()) {
            const OutlineModel::Place place = model_->placeOf(view_->currentIndex());
            if (place.kind == OutlineModel::Kind::part) emit partsAsked({place.id});
            if (place.kind == OutlineModel::Kind::cutout) emit partsAsked({place.part});
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace yardcast::ui
