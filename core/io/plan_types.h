#pragma once

#include <memory>
#include <optional>
#include <type_traits>
#include <vector>

#include "core/plan/plan.h"

/// What the visitors of core/io/plan_fields.h ask about a member's type.
namespace yardcast::io_types {

template <class T>
struct OptionalOf : std::false_type {};
template <class T>
struct OptionalOf<std::optional<T>> : std::true_type {
    using Inner = T;
};

template <class T>
struct ListOf : std::false_type {};
template <class T>
struct ListOf<std::vector<T>> : std::true_type {
    using Inner = T;
};

/// Values with a JSON object of their own.
template <class T>
constexpr bool isObject = requires(const T& t) { t.source; };
template <>
inline constexpr bool isObject<PartPtr> = true;

/// Objects, and lists of them: what stands as null in the source of what they belong to.
template <class T>
constexpr bool hasOwnSource()
{
    if constexpr (OptionalOf<T>::value) {
        return hasOwnSource<typename OptionalOf<T>::Inner>();
    } else if constexpr (ListOf<T>::value) {
        return hasOwnSource<typename ListOf<T>::Inner>();
    } else {
        return isObject<T>;
    }
}

}  // namespace yardcast::io_types
