#pragma once

#include <string>
#include <utility>

#include "core/plan/validation.h"

/// What the checks of a plan share. For core/plan/validation only.
namespace yardcast::validation {

using Values = std::map<std::string, FindingValue>;

/// Nearer than this, mm, is touching.
inline constexpr double kTouchMm = 1.0;
/// Nothing of a kitchen is longer, mm.
inline constexpr double kLongestMm = 20'000.0;
/// Nothing of it lies farther from the datum of the plan, mm.
inline constexpr double kFarthestMm = 100'000.0;
/// Corners of an outline, members of any other list inside a part, bars in one piece with all groups counted: far
/// beyond any kitchen, and few enough that the figures of one part never keep anybody waiting.
inline constexpr std::size_t kMostCorners = 500;
inline constexpr std::size_t kMostMembers = 100;
inline constexpr std::size_t kMostBars = 500;

/// What a number may be, both ends allowed.
struct Range {
    double least;
    double most;
    const char* unit;
};

/// "/parts/3", then "rim/depth_mm": the keys of a pointer joined.
inline std::string join(const std::string& pointer, const std::string& key) { return pointer + "/" + key; }
inline std::string join(const std::string& pointer, std::size_t index)
{
    return pointer + "/" + std::to_string(index);
}

/// Collects what is found about one thing of the plan: a part, a mix, the site.
class Subject {
public:
    Subject(std::vector<Finding>& findings, std::string pointer, std::vector<std::string> subjects)
        : findings_(findings), pointer_(std::move(pointer)), subjects_(std::move(subjects))
    {
    }

    /// `key` is relative to the thing: "rim/depth_mm".
    void add(const char* code, Severity severity, const std::string& key, Values values = {})
    {
        Finding finding;
        finding.code = code;
        finding.severity = severity;
        finding.subjects = subjects_;
        finding.pointer = key.empty() ? pointer_ : join(pointer_, key);
        finding.values = std::move(values);
        findings_.push_back(std::move(finding));
    }

    /// The thing cannot be computed.
    void addUnusable(const char* code, const std::string& key, Values values = {})
    {
        usable_ = false;
        add(code, Severity::stop, key, std::move(values));
    }

    /// True when the number lies in the range. Out of it is a stop; what is no size at all also makes the thing
    /// unusable: no number, none (or as good as none, or less) where something must be, or beyond every measure.
    bool number(const std::string& key, double value, Range range);

    /// Each coordinate within kFarthestMm; reports the first that is not, and the thing is unusable then.
    bool point(const std::string& key, Point p);
    bool points(const std::string& key, const std::vector<Point>& list);

    /// At most so many members; more make the thing unusable.
    bool count(const std::string& key, std::size_t members, std::size_t most);

    void markUnusable() { usable_ = false; }
    bool usable() const { return usable_; }
    const std::string& pointer() const { return pointer_; }

private:
    std::vector<Finding>& findings_;
    std::string pointer_;
    std::vector<std::string> subjects_;
    bool usable_ = true;
};

/// The shorter side, mm, of the box around what two regions share; 0 where they only touch (`kTouchMm`).
double overlapMm(const Region& a, const Region& b);

/// Sizes, numbers, references of each kind; `subject` becomes unusable where the part cannot be computed.
void checkCounter(const Counter& counter, Subject& subject);
void checkSupport(const Support& support, Subject& subject);
void checkPanel(const Panel& panel, Subject& subject);
void checkFront(const Front& front, Subject& subject);
void checkAppliance(const Appliance& appliance, Subject& subject);
void checkSteel(const Steel& steel, double depthMm, const Ring& outline, Subject& subject);

/// Of a counter whose numbers are good: what lies where it should not.
void checkLayoutOfCounter(const Counter& counter, Subject& subject);

/// Everything of the plan outside its parts.
void checkSettings(const Plan& plan, Validation& validation);

/// What one part says about another: rests, collisions, the site. Leaves out unusable parts.
void checkNeighbours(const Plan& plan, Validation& validation);

}  // namespace yardcast::validation
