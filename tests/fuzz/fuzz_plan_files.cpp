/// fuzz_plan_files COUNT SEED FILES...
/// Reads COUNT damaged copies of the plan files and of one plan that has every key, and does with each that still reads
/// all that the program does with a plan. A copy that crashes it or takes too long is left as fuzz-failure.yardplan in
/// the folder the program was started in.
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <vector>

#include <fcntl.h>
#include <sys/time.h>
#include <unistd.h>

#include "core/io/plan_file.h"
#include "tests/core/io/full_plan.h"
#include "tests/fuzz/exercise.h"
#include "tests/fuzz/mutate.h"

namespace {

/// Seconds of work after which one file counts as a hang. Seconds on the clock would blame a busy machine's other work.
constexpr long kHangSeconds = 20;

void setWatch(long seconds)
{
    const itimerval watch{{0, 0}, {seconds, 0}};
    ::setitimer(ITIMER_PROF, &watch, nullptr);
}

double workSeconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

const std::string* current = nullptr;

extern "C" void keepCurrent(int signal)
{
    // Only calls that are safe in a signal handler.
    const int file = ::open("fuzz-failure.yardplan", O_WRONLY | O_CREAT | O_TRUNC, 0644);
    if (file >= 0 && current) {
        const ssize_t written = ::write(file, current->data(), current->size());
        (void)written;
        ::close(file);
    }
    const char hang[] = "a file takes too long\n";
    const char crash[] = "a file crashes the program\n";
    const ssize_t said = signal == SIGPROF ? ::write(2, hang, sizeof hang - 1) : ::write(2, crash, sizeof crash - 1);
    (void)said;
    std::signal(signal == SIGPROF ? SIGABRT : signal, SIG_DFL);
    ::raise(signal == SIGPROF ? SIGABRT : signal);
}

}  // namespace

int main(int argc, char** argv)
{
    if (argc < 4) {
        std::fprintf(stderr, "fuzz_plan_files COUNT SEED FILES...\n");
        return 2;
    }
    const unsigned long count = std::strtoul(argv[1], nullptr, 10);
    yardcast::fuzz::Mutator mutator(static_cast<std::uint32_t>(std::strtoul(argv[2], nullptr, 10)));
    std::vector<std::string> texts{yardcast::samples::kFullPlan};
    for (int i = 3; i < argc; ++i) {
        const yardcast::FileText file = yardcast::readFile(argv[i]);
        if (!file.text) {
            std::fprintf(stderr, "%s: %s\n", argv[i], file.error.c_str());
            return 2;
        }
        texts.push_back(*file.text);
        if (yardcast::fuzz::exercise(texts.back()) != yardcast::fuzz::Outcome::read) {
            std::fprintf(stderr, "%s is no plan\n", argv[i]);
            return 2;
        }
    }
    for (const int signal : {SIGPROF, SIGSEGV, SIGABRT, SIGFPE, SIGBUS, SIGILL}) std::signal(signal, keepCurrent);

    unsigned long read = 0;
    double slowest = 0.0;
    std::string slowestText;
    const double start = workSeconds();
    for (unsigned long i = 0; i < count; ++i) {
        const std::string text = mutator.mutate(texts[mutator.below(texts.size())]);
        current = &text;
        const double before = workSeconds();
        setWatch(kHangSeconds);
        if (yardcast::fuzz::exercise(text) == yardcast::fuzz::Outcome::read) ++read;
        setWatch(0);
        const double took = workSeconds() - before;
        if (took > slowest) {
            slowest = took;
            slowestText = text;
        }
        current = nullptr;
    }
    std::printf("%lu files, %lu of them plans that were assessed, %.0f s of work, slowest %.3f s\n", count, read,
                workSeconds() - start, slowest);
    if (std::getenv("FUZZ_KEEP_SLOWEST")) yardcast::writeFileAtomically("fuzz-slowest.yardplan", slowestText);
    return 0;
}
