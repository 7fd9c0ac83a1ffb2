#pragma once

#include <string>

namespace yardcast::ui {

/// Something of the plan under the pointer.
struct Hit {
    enum class What { none, part, cutout, fixture };
    What what = What::none;
    std::string part;     ///< also the counter of a cutout
    std::string cutout;
    std::string fixture;
    friend bool operator==(const Hit&, const Hit&) = default;
};

}  // namespace yardcast::ui
