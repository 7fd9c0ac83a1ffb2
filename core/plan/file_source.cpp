#include "core/plan/file_source.h"

#include <nlohmann/json.hpp>

namespace yardcast {

bool operator==(const FileSource& a, const FileSource& b)
{
    if (a.object == b.object) return true;
    if (!a.object || !b.object) return false;
    return *a.object == *b.object;
}

}  // namespace yardcast
