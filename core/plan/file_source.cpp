#include "core/plan/file_source.h"

#include <nlohmann/json.hpp>

namespace yardcast {

bool operator==(const FileSource& a, const FileSource& b)
{
    if (a.unknown == b.unknown) return true;
    if (!a.unknown || !b.unknown) return false;
    return *a.unknown == *b.unknown;
}

}  // namespace yardcast
