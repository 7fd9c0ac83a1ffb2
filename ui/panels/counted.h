#pragma once

#include <QString>

namespace yardcast::ui {

/// "1 bag" or "%1 bags" with the number put in.
inline QString counted(int count, const QString& one, const QString& many)
{
    return count == 1 ? one : many.arg(count);
}

}  // namespace yardcast::ui
