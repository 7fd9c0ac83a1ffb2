#include "ui/live/thread_manners.h"

#ifdef __linux__
#include <sys/resource.h>
#include <unistd.h>
#endif

namespace yardcast::ui {

void giveWay(int niceness)
{
#ifdef __linux__
    // On Linux niceness is that of a thread. Where it is refused all goes on as before.
    setpriority(PRIO_PROCESS, static_cast<id_t>(gettid()), niceness);
#else
    static_cast<void>(niceness);
#endif
}

}  // namespace yardcast::ui
