#pragma once

#include <algorithm>
#include <functional>
#include <memory>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "core/plan/edits.h"
#include "core/plan/plan.h"

namespace yardcast::ui {

/// Where a value of type T lives in a plan: how to read it and how to change it. There are several where several parts
/// are chosen, and none where the property is not there (a rim of a counter without one). A scope holds no pointer
/// into a plan, only the way.
template <class T>
struct Scope {
    std::function<std::vector<const T*>(const Plan&)> read;
    std::function<Plan(const Plan&, const std::function<void(T&)>&)> change;

    /// A value inside this one. `access` takes `auto&` and gives a pointer to the value, null where it is not there.
    template <class Access>
    auto member(Access access) const
    {
        using U = std::remove_const_t<std::remove_pointer_t<decltype(access(std::declval<const T&>()))>>;
        Scope<U> inner;
        inner.read = [outer = read, access](const Plan& plan) {
            std::vector<const U*> found;
            for (const T* value : outer(plan)) {
                if (const U* there = access(*value)) found.push_back(there);
            }
            return found;
        };
        inner.change = [outer = change, access](const Plan& plan, const std::function<void(U&)>& edit) {
            return outer(plan, [&](T& value) {
                if (U* there = access(value)) edit(*there);
            });
        };
        return inner;
    }
};

/// The value of an optional; not there while it is empty.
template <class T>
Scope<T> contentOf(const Scope<std::optional<T>>& scope)
{
    return scope.member([](auto& value) { return value ? &*value : nullptr; });
}

/// The element of a list that `index` names at the time; not there while it is out of range.
template <class T>
Scope<T> elementOf(const Scope<std::vector<T>>& scope, std::shared_ptr<const int> index)
{
    return scope.member([index](auto& list) -> decltype(list.data()) {
        const bool there = *index >= 0 && *index < static_cast<int>(list.size());
        return there ? &list[static_cast<std::size_t>(*index)] : nullptr;
    });
}

inline Scope<Plan> planScope()
{
    return {[](const Plan& plan) { return std::vector<const Plan*>{&plan}; },
            [](const Plan& plan, const std::function<void(Plan&)>& edit) { return changePlan(plan, edit); }};
}

inline Scope<Part> partScope(const Ids& ids)
{
    return {[ids](const Plan& plan) {
                std::vector<const Part*> found;
                for (const std::string& id : ids) {
                    if (const Part* part = findPart(plan, id)) found.push_back(part);
                }
                return found;
            },
            [ids](const Plan& plan, const std::function<void(Part&)>& edit) {
                Plan changed = plan;
                for (const std::string& id : ids) changed = changePart(changed, id, edit);
                return changed;
            }};
}

template <class Body>
Scope<Body> bodyScope(const Scope<Part>& parts)
{
    return parts.member([](auto& part) { return std::get_if<Body>(&part.body); });
}

inline Scope<Cutout> cutoutScope(const Scope<Counter>& counter, const std::string& id)
{
    return counter.member([id](auto& c) -> decltype(c.cutouts.data()) {
        const auto found = std::ranges::find(c.cutouts, id, &Cutout::id);
        return found == c.cutouts.end() ? nullptr : &*found;
    });
}

inline Scope<Fixture> fixtureScope(const std::string& id)
{
    return planScope().member([id](auto& plan) -> decltype(plan.site.fixtures.data()) {
        const auto found = std::ranges::find(plan.site.fixtures, id, &Fixture::id);
        return found == plan.site.fixtures.end() ? nullptr : &*found;
    });
}

}  // namespace yardcast::ui
