#include "ui/panels/fields/list_field.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QScopedValueRollback>
#include <QToolButton>

#include "ui/look/theme.h"
#include "ui/panels/fields/field_column.h"
#include "ui/panels/line_view.h"

namespace yardcast::ui {

namespace {

constexpr int kMostRows = 6;

QToolButton* wordButton(const QString& text, const QString& name, QWidget* parent)
{
    auto* button = new QToolButton(parent);
    button->setObjectName(name);
    button->setText(text);
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    return button;
}

}  // namespace

ListField::ListField(FieldHost& host, const QString& path, const ListWords& words, const QList<LineColumn>& columns,
                     ListAccess access, const Describe& describe, QWidget* parent)
    : Field(host, path, words.title, parent), words_(words), access_(std::move(access)),
      table_(new LineView(new LineModel(columns), this)), form_(new FieldColumn(host, this)),
      add_(wordButton(words.addText, path + QStringLiteral("+"), this)),
      remove_(wordButton(words.removeText, path + QStringLiteral("-"), this)), empty_(new QLabel(words.emptyText, this))
{
    auto* content = new QWidget(this);
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(kStepPx);
    empty_->setWordWrap(true);
    empty_->setForegroundRole(QPalette::PlaceholderText);
    column->addWidget(empty_);
    table_->setAccessibleName(words.title);
    table_->setFrameShape(QFrame::StyledPanel);
    column->addWidget(table_);
    column->addWidget(form_);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(kStepPx);
    buttons->addWidget(add_);
    buttons->addWidget(remove_);
    buttons->addStretch(1);
    column->addLayout(buttons);
    setContent(content, words.showsTitle);
    setFocusProxy(table_);
    describe(*form_, index_);
    connect(table_, &LineView::currentLineChanged, this, [this](int row) {
        if (showing_ || row < 0 || row == *index_) return;
        form_->commit();
        *index_ = row;
        showForm();
    });
    connect(add_, &QToolButton::clicked, this, &ListField::add);
    connect(remove_, &QToolButton::clicked, this, &ListField::remove);
}

void ListField::showPlan(const Plan& plan)
{
    const int count = access_.count(plan);
    setThere(count >= 0);
    if (count < 0) return;
    // Rows that come and go move the current line; that is no choice of the person's.
    const QScopedValueRollback guard(showing_, true);
    QList<Line> lines;
    for (int i = 0; i < count; ++i) {
        lines.append({.key = QString::number(i), .cells = access_.cells(plan, i), .source = i});
    }
    table_->lineModel().setLines(std::move(lines));
    if (wanted_ >= 0) *index_ = std::exchange(wanted_, -1);
    *index_ = qBound(count > 0 ? 0 : -1, *index_, count - 1);
    if (table_->currentRow() != *index_) {
        table_->setCurrentIndex(*index_ < 0 ? QModelIndex() : table_->lineModel().index(*index_, 0));
    }
    // An empty table is no target; its room goes to the words that say what the list is for.
    table_->setVisible(count > 0);
    empty_->setVisible(count == 0 && !empty_->text().isEmpty());
    int height = table_->header()->sizeHint().height() + 2;
    for (int row = 0; row < qMin(count, kMostRows); ++row) height += table_->rowHeightAt(row);
    table_->setFixedHeight(height);
    form_->showPlan(plan);
    form_->setVisible(count > 0);
    remove_->setVisible(count > 0);
    remove_->setEnabled(count > 0 && (!access_.canRemove || access_.canRemove(plan, *index_)));
}

void ListField::showForm()
{
    form_->restore();
    showPlan(*host().plan());
}

bool ListField::commit() { return form_->commit(); }

void ListField::setCurrentIndex(int index)
{
    if (index < 0 || index >= table_->lineModel().rowCount()) return;
    table_->setCurrentIndex(table_->lineModel().index(index, 0));
}

void ListField::add()
{
    form_->commit();
    const int after = *index_;
    wanted_ = after + 1;
    host().apply(words_.addText, [add = access_.add, after](const Plan& plan) { return add(plan, after); });
    wanted_ = -1;
}

void ListField::remove()
{
    form_->restore();
    host().apply(words_.removeText,
                 [remove = access_.remove, index = *index_](const Plan& plan) { return remove(plan, index); });
}

}  // namespace yardcast::ui
