#pragma once

#include <memory>

#include "ui/panels/fields/field.h"
#include "ui/panels/fields/scope.h"
#include "ui/panels/line_model.h"

class QLabel;
class QToolButton;

namespace yardcast::ui {

class FieldColumn;
class LineView;

/// How a list of the plan is shown and changed; the field knows no element type.
struct ListAccess {
    std::function<int(const Plan&)> count;                          ///< -1: there is no such list now
    std::function<QStringList(const Plan&, int index)> cells;       ///< one line of the table
    std::function<Plan(const Plan&, int after)> add;                ///< after this index, -1 for an empty list
    std::function<Plan(const Plan&, int index)> remove;
    std::function<bool(const Plan&, int index)> canRemove{};        ///< always, where not given
};

/// From the scope of a list: `cellsOf` gives the table's texts, `fresh` a new element.
template <class T>
ListAccess listAccess(const Scope<std::vector<T>>& scope, std::function<QStringList(const T&, int)> cellsOf,
                      std::function<T(const Plan&)> fresh)
{
    const auto listOf = [read = scope.read](const Plan& plan) -> const std::vector<T>* {
        const std::vector<const std::vector<T>*> lists = read(plan);
        return lists.size() == 1 ? lists[0] : nullptr;
    };
    ListAccess access;
    access.count = [listOf](const Plan& plan) {
        const std::vector<T>* list = listOf(plan);
        return list ? static_cast<int>(list->size()) : -1;
    };
    access.cells = [listOf, cellsOf](const Plan& plan, int index) {
        const std::vector<T>* list = listOf(plan);
        return list ? cellsOf((*list)[static_cast<std::size_t>(index)], index) : QStringList();
    };
    access.add = [change = scope.change, fresh](const Plan& plan, int after) {
        return change(plan, [&](std::vector<T>& list) {
            const auto at = std::clamp<std::ptrdiff_t>(after + 1, 0, static_cast<std::ptrdiff_t>(list.size()));
            list.insert(list.begin() + at, fresh(plan));
        });
    };
    access.remove = [change = scope.change](const Plan& plan, int index) {
        return change(plan, [&](std::vector<T>& list) {
            if (index >= 0 && index < static_cast<int>(list.size())) list.erase(list.begin() + index);
        });
    };
    return access;
}

struct ListWords {
    QString title;       ///< shown above the table unless the group is called the same
    QString addText;     ///< of the button and in the undo list: "Add a rib"
    QString removeText;  ///< likewise
    QString emptyText;
    bool showsTitle = true;
};

/// A list of the plan: a small table, the fields of the line chosen in it, buttons to add and remove.
class ListField : public Field {
    Q_OBJECT

public:
    using Describe = std::function<void(FieldColumn& column, const std::shared_ptr<const int>& index)>;
    ListField(FieldHost& host, const QString& path, const ListWords& words, const QList<LineColumn>& columns,
              ListAccess access, const Describe& describe, QWidget* parent);

    void showPlan(const Plan& plan) override;
    bool commit() override;

    int currentIndex() const { return *index_; }
    void setCurrentIndex(int index);
    LineView& table() const { return *table_; }
    FieldColumn& form() const { return *form_; }

private:
    void add();
    void remove();
    void showForm();

    ListWords words_;
    ListAccess access_;
    std::shared_ptr<int> index_ = std::make_shared<int>(-1);
    LineView* table_;
    FieldColumn* form_;
    QToolButton* add_;
    QToolButton* remove_;
    QLabel* empty_;
    int wanted_ = -1;
    bool showing_ = false;
};

}  // namespace yardcast::ui
