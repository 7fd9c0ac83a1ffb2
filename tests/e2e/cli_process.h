#pragma once

#include <string>
#include <vector>

namespace yardcast::e2e {

struct Outcome {
    bool ended = false;  ///< by itself, not by a signal or the time limit
    int code = -1;
    std::string out;
    std::string err;
};

/// Runs yardcast-cli without a display, in a locale with a decimal comma where the system has one. What only prints an
/// answer about a sample is run once in a process.
Outcome run(const std::vector<std::string>& arguments);

std::vector<std::string> samplePaths();
std::string readText(const std::string& path);

/// A folder that is gone at the end of the test.
class Folder {
public:
    Folder();
    ~Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::string path(const std::string& name) const { return path_ + "/" + name; }
    /// Writes a file and gives its path.
    std::string write(const std::string& name, const std::string& text) const;

private:
    std::string path_;
};

/// A plan without a flaw: one small slab on two supports that two people can lift.
std::string smallPlan();

}  // namespace yardcast::e2e
