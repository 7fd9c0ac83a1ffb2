#pragma once

#include <optional>
#include <string>

#include <QObject>

#include "core/plan/plan.h"
#include "core/purchase/price_book.h"
#include "core/remedy/remedies.h"
#include "ui/live/newest_work.h"

namespace yardcast::ui {

/// Searches for the lightest or cheapest form of a counter on a thread of its own. One search at a time; asking for
/// another, or cancelling, ends the one under way.
class SearchRunner : public QObject {
    Q_OBJECT

public:
    explicit SearchRunner(QObject* parent = nullptr);

    void search(const PlanPtr& plan, const PriceBook& prices, const std::string& counter, SearchGoal goal);
    void cancel();
    bool isSearching() const { return searching_; }

signals:
    void progressed(const SearchStep& step);
    /// Nothing: no form of those tried holds. Not emitted for a search that was cancelled.
    void found(const PlanPtr& plan, const std::string& counter, const std::optional<SearchAnswer>& answer);

private:
    bool searching_ = false;
    NewestWork work_;
};

}  // namespace yardcast::ui
