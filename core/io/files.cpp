#include <atomic>
#include <cerrno>
#include <cstdlib>
#include <system_error>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/io/plan_file.h"

namespace yardcast {

namespace {

namespace fs = std::filesystem;

std::string reason(int error) { return std::generic_category().message(error); }

/// A file descriptor that closes itself; closing early tells whether it went well.
class Descriptor {
public:
    explicit Descriptor(int fd) : fd_(fd) {}
    ~Descriptor()
    {
        if (fd_ >= 0) ::close(fd_);
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;

    int get() const { return fd_; }
    bool valid() const { return fd_ >= 0; }
    bool close()
    {
        const int fd = fd_;
        fd_ = -1;
        return ::close(fd) == 0;
    }

private:
    int fd_;
};

int openRetrying(const char* path, int flags, mode_t mode = 0)
{
    int fd = -1;
    do {
        fd = ::open(path, flags | O_CLOEXEC, mode);
    } while (fd < 0 && errno == EINTR);
    return fd;
}

/// 0, or the system's error.
int writeAll(int fd, const std::string& text)
{
    std::size_t done = 0;
    while (done < text.size()) {
        const ssize_t wrote = ::write(fd, text.data() + done, text.size() - done);
        if (wrote < 0 && errno == EINTR) continue;
        if (wrote < 0) return errno;
        done += static_cast<std::size_t>(wrote);
    }
    return 0;
}

/// Renaming is only safe against a power cut once the folder itself is on disk. File systems that cannot do it say so
/// with EINVAL; the file is written all the same.
void syncFolder(const fs::path& folder)
{
    const Descriptor fd(openRetrying(folder.c_str(), O_RDONLY | O_DIRECTORY));
    if (fd.valid()) ::fsync(fd.get());
}

/// A name beside the target that nothing has yet.
fs::path besideName(const fs::path& target)
{
    static std::atomic<unsigned> counter{0};
    const std::string name = "." + target.filename().string() + "." + std::to_string(::getpid()) + "-"
        + std::to_string(counter.fetch_add(1)) + ".part";
    return target.parent_path() / name;
}

/// Where the text ends up: through symbolic links, so that a link stays a link.
fs::path resolved(const fs::path& path)
{
    std::error_code error;
    fs::path real = fs::canonical(path, error);
    if (error) real = fs::absolute(path, error);
    return error ? path : real;
}

std::string writeStraight(const fs::path& path, const std::string& text)
{
    Descriptor fd(openRetrying(path.c_str(), O_WRONLY));
    if (!fd.valid()) return reason(errno);
    if (const int error = writeAll(fd.get(), text)) return reason(error);
    return fd.close() ? std::string{} : reason(errno);
}

/// Writes, flushes and closes the new file; 0 or the system's error.
int fillNewFile(const fs::path& path, const std::string& text, const struct stat* replaced)
{
    Descriptor fd(openRetrying(path.c_str(), O_WRONLY | O_CREAT | O_EXCL, 0666));
    if (!fd.valid()) return errno;
    if (replaced && ::fchmod(fd.get(), replaced->st_mode & 07777) != 0) return errno;
    if (const int error = writeAll(fd.get(), text)) return error;
    if (::fsync(fd.get()) != 0 && errno != EINVAL) return errno;
    return fd.close() ? 0 : errno;
}

}  // namespace

FileText readFile(const fs::path& path)
{
    FileText result;
    const Descriptor fd(openRetrying(path.c_str(), O_RDONLY));
    if (!fd.valid()) {
        result.error = reason(errno);
        return result;
    }
    std::string text;
    char buffer[1 << 16];
    for (;;) {
        const ssize_t got = ::read(fd.get(), buffer, sizeof buffer);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) {
            result.error = reason(errno);
            return result;
        }
        if (got == 0) break;
        text.append(buffer, static_cast<std::size_t>(got));
        if (text.size() > kLargestPlanBytes) {
            result.error = reason(EFBIG);
            return result;
        }
    }
    result.text = std::move(text);
    return result;
}

std::string writeFileAtomically(const fs::path& path, const std::string& text)
{
    const fs::path target = resolved(path);
    if (!target.has_filename()) return reason(EISDIR);
    struct stat old {};
    const bool exists = ::stat(target.c_str(), &old) == 0;
    if (exists && S_ISDIR(old.st_mode)) return reason(EISDIR);
    // A pipe or a device is written to; renaming over it would take it away.
    if (exists && !S_ISREG(old.st_mode)) return writeStraight(target, text);
    if (exists && ::access(target.c_str(), W_OK) != 0) return reason(errno);

    const fs::path fresh = besideName(target);
    int error = fillNewFile(fresh, text, exists ? &old : nullptr);
    if (error == 0 && ::rename(fresh.c_str(), target.c_str()) != 0) error = errno;
    if (error != 0) {
        if (error != EEXIST) ::unlink(fresh.c_str());
        return reason(error);
    }
    syncFolder(target.parent_path());
    return {};
}

}  // namespace yardcast
