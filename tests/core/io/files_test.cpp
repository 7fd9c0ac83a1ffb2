#include <csignal>
#include <fstream>

#include <gtest/gtest.h>

#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "core/io/plan_file.h"

namespace yardcast {
namespace {

namespace fs = std::filesystem;

class Files : public ::testing::Test {
protected:
    void SetUp() override
    {
        std::string pattern = (fs::temp_directory_path() / "yardcast-files-XXXXXX").string();
        ASSERT_TRUE(::mkdtemp(pattern.data()));
        folder_ = pattern;
    }
    void TearDown() override { fs::remove_all(folder_); }

    std::size_t entries() const
    {
        return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
    }

    fs::path folder_;
};

TEST_F(Files, WritesAndReadsBack)
{
    const fs::path path = folder_ / "plän.yardplan";
    const std::string text("a\nb\0c", 5);
    EXPECT_EQ(writeFileAtomically(path, text), "");
    EXPECT_EQ(readFile(path).text, text);
    EXPECT_EQ(writeFileAtomically(path, "shorter"), "");
    EXPECT_EQ(readFile(path).text, "shorter");
    EXPECT_EQ(entries(), 1u);
}

TEST_F(Files, SaysWhyItCannotRead)
{
    EXPECT_FALSE(readFile(folder_ / "none").text);
    EXPECT_NE(readFile(folder_ / "none").error, "");
    EXPECT_FALSE(readFile(folder_).text) << "a folder is no file";
    EXPECT_FALSE(readFile("/dev/zero").text) << "endless files are left alone";
}

TEST_F(Files, SaysWhyItCannotWrite)
{
    EXPECT_NE(writeFileAtomically(folder_ / "no" / "such" / "folder", "x"), "");
    EXPECT_NE(writeFileAtomically(folder_, "x"), "");
    EXPECT_NE(writeFileAtomically("", "x"), "");
    EXPECT_EQ(entries(), 0u);
}

TEST_F(Files, KeepsTheModeOfTheFileItReplaces)
{
    const fs::path path = folder_ / "a";
    ASSERT_EQ(writeFileAtomically(path, "x"), "");
    ASSERT_EQ(::chmod(path.c_str(), 0640), 0);
    ASSERT_EQ(writeFileAtomically(path, "y"), "");
    struct stat info {};
    ASSERT_EQ(::stat(path.c_str(), &info), 0);
    EXPECT_EQ(info.st_mode & 0777, 0640u);
}

TEST_F(Files, ALinkStaysALink)
{
    const fs::path real = folder_ / "real";
    const fs::path link = folder_ / "link";
    ASSERT_EQ(writeFileAtomically(real, "old"), "");
    fs::create_symlink("real", link);
    ASSERT_EQ(writeFileAtomically(link, "new"), "");
    EXPECT_TRUE(fs::is_symlink(link));
    EXPECT_EQ(readFile(real).text, "new");
}

TEST_F(Files, ADeviceIsWrittenToAndNotReplaced)
{
    EXPECT_EQ(writeFileAtomically("/dev/null", "x"), "");
    EXPECT_TRUE(fs::is_character_file("/dev/null"));
    EXPECT_NE(writeFileAtomically("/dev/full", "x"), "") << "a full disk is reported";
    EXPECT_TRUE(fs::is_character_file("/dev/full"));
}

TEST_F(Files, ADiskThatFillsUpLeavesTheOldFile)
{
    const fs::path path = folder_ / "plan";
    ASSERT_EQ(writeFileAtomically(path, "the old plan"), "");
    // In a child, for the limit cannot be taken back.
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) {
        std::signal(SIGXFSZ, SIG_IGN);
        const rlimit limit{4096, 4096};
        ::setrlimit(RLIMIT_FSIZE, &limit);
        const std::string error = writeFileAtomically(path, std::string(100'000, 'x'));
        ::_exit(error.empty() ? 1 : 0);
    }
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    EXPECT_EQ(status, 0) << "the failure is reported";
    EXPECT_EQ(readFile(path).text, "the old plan");
    EXPECT_EQ(entries(), 1u) << "nothing half-written is left";
}

TEST_F(Files, KilledWhileWritingLeavesAWholeFile)
{
    const fs::path path = folder_ / "plan";
    const std::string a(2'000'000, 'a');
    const std::string b(2'000'000, 'b');
    ASSERT_EQ(writeFileAtomically(path, a), "");
    for (int round = 0; round < 12; ++round) {
        const pid_t child = ::fork();
        ASSERT_GE(child, 0);
        if (child == 0) {
            for (;;) {
                writeFileAtomically(path, b);
                writeFileAtomically(path, a);
            }
        }
        ::usleep(static_cast<useconds_t>(2000 + 1700 * round));
        ASSERT_EQ(::kill(child, SIGKILL), 0);
        int status = 0;
        ASSERT_EQ(::waitpid(child, &status, 0), child);
        const FileText found = readFile(path);
        ASSERT_TRUE(found.text);
        EXPECT_TRUE(*found.text == a || *found.text == b) << "round " << round;
    }
}

}  // namespace
}  // namespace yardcast
