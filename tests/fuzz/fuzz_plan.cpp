#include <cstddef>
#include <cstdint>

#include "tests/fuzz/exercise.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    yardcast::fuzz::exercise(std::string(reinterpret_cast<const char*>(data), size));
    return 0;
}
