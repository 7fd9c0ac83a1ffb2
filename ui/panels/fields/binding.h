#pragma once

#include <cmath>
#include <optional>

#include <QString>

#include "ui/panels/fields/scope.h"

namespace yardcast::ui {

/// What a field reads: nothing there, one value, or several that differ.
template <class V>
struct Reading {
    bool there = false;
    bool mixed = false;
    V value{};
};

/// What a field shows and how what is typed gets into the plan; the field knows no plan type.
template <class V>
struct Binding {
    std::function<Reading<V>(const Plan&)> read;
    std::function<Plan(const Plan&, const V&)> write;
};

/// `toField` turns the value of the plan into that of the field, `assign` the other way.
template <class V, class T, class ToField, class Assign>
Binding<V> bindAs(const Scope<T>& scope, ToField toField, Assign assign)
{
    return {[read = scope.read, toField](const Plan& plan) {
                Reading<V> reading;
                for (const T* value : read(plan)) {
                    V shown = toField(*value);
                    if (!reading.there) {
                        reading.value = std::move(shown);
                    } else if (!(reading.value == shown)) {
                        reading.mixed = true;
                    }
                    reading.there = true;
                }
                return reading;
            },
            [change = scope.change, assign](const Plan& plan, const V& value) {
                return change(plan, [&](T& target) { assign(target, value); });
            }};
}

/// A number that may be left out; a field of a number that may not is told so by its rules.
using Number = std::optional<double>;

inline Binding<Number> bindNumber(const Scope<double>& scope)
{
    return bindAs<Number>(
        scope, [](double value) { return Number(value); },
        [](double& target, const Number& value) { target = value.value_or(target); });
}

inline Binding<Number> bindNumber(const Scope<std::optional<double>>& scope)
{
    return bindAs<Number>(
        scope, [](const std::optional<double>& value) { return value; },
        [](std::optional<double>& target, const Number& value) { target = value; });
}

inline Binding<Number> bindNumber(const Scope<int>& scope)
{
    return bindAs<Number>(
        scope, [](int value) { return Number(value); },
        [](int& target, const Number& value) {
            if (value) target = static_cast<int>(std::lround(*value));
        });
}

inline Binding<Number> bindNumber(const Scope<std::optional<int>>& scope)
{
    return bindAs<Number>(
        scope, [](const std::optional<int>& value) { return value ? Number(*value) : Number(); },
        [](std::optional<int>& target, const Number& value) {
            target = value ? std::optional(static_cast<int>(std::lround(*value))) : std::nullopt;
        });
}

inline Binding<QString> bindText(const Scope<std::string>& scope)
{
    return bindAs<QString>(
        scope, [](const std::string& value) { return QString::fromStdString(value); },
        [](std::string& target, const QString& value) { target = value.toStdString(); });
}

/// Empty text is no value.
inline Binding<QString> bindText(const Scope<std::optional<std::string>>& scope)
{
    return bindAs<QString>(
        scope, [](const std::optional<std::string>& value) { return QString::fromStdString(value.value_or("")); },
        [](std::optional<std::string>& target, const QString& value) {
            target = value.isEmpty() ? std::nullopt : std::optional(value.toStdString());
        });
}

/// The word of a choice: the number of the enumerator.
template <class Enum>
    requires std::is_enum_v<Enum>
Binding<QString> bindChoice(const Scope<Enum>& scope)
{
    return bindAs<QString>(
        scope, [](Enum value) { return QString::number(static_cast<int>(value)); },
        [](Enum& target, const QString& word) { target = static_cast<Enum>(word.toInt()); });
}

/// Empty word: left to its default.
template <class Enum>
    requires std::is_enum_v<Enum>
Binding<QString> bindChoice(const Scope<std::optional<Enum>>& scope)
{
    return bindAs<QString>(
        scope,
        [](const std::optional<Enum>& value) { return value ? QString::number(static_cast<int>(*value)) : QString(); },
        [](std::optional<Enum>& target, const QString& word) {
            target = word.isEmpty() ? std::nullopt : std::optional(static_cast<Enum>(word.toInt()));
        });
}

inline Binding<bool> bindYesNo(const Scope<bool>& scope)
{
    return bindAs<bool>(
        scope, [](bool value) { return value; }, [](bool& target, bool value) { target = value; });
}

/// Whether something is there at all; ticked it begins as `fresh`.
template <class T>
Binding<bool> bindPresence(const Scope<std::optional<T>>& scope, const T& fresh)
{
    return bindAs<bool>(
        scope, [](const std::optional<T>& value) { return value.has_value(); },
        [fresh](std::optional<T>& target, bool there) {
            if (there == target.has_value()) return;
            target = there ? std::optional<T>(fresh) : std::nullopt;
        });
}

}  // namespace yardcast::ui
