#include "core/cutting/sheet_tree.h"

#include <algorithm>

namespace yardcast::sheets {

/// A part without its rests: the least box it needs.
struct SheetForest::Tight {
    Um w = 0;
    Um h = 0;
    bool row = false;
    bool alongX = false;
    bool turned = false;
    int item = -1;
    std::vector<int> parts;
};

SheetForest::SheetForest(const std::vector<Bin>& sheets) : sheetCount_(static_cast<int>(sheets.size()))
{
    for (const Bin& sheet : sheets) {
        addRest(make(-1, sheet.w, sheet.h));
    }
}

int SheetForest::make(int parent, Um w, Um h)
{
    int i = 0;
    if (free_.empty()) {
        i = static_cast<int>(nodes_.size());
        nodes_.emplace_back();
    } else {
        i = free_.back();
        free_.pop_back();
        at(i) = TreeNode{};
    }
    at(i).w = w;
    at(i).h = h;
    at(i).parent = parent;
    if (parent >= 0) {
        const int first = at(parent).first;
        at(i).next = first;
        if (first >= 0) {
            at(first).prev = i;
        }
        at(parent).first = i;
    }
    return i;
}

void SheetForest::addRest(int node)
{
    at(node).kind = TreeNode::Kind::rest;
    at(node).slot = static_cast<int>(rests_.size());
    rests_.push_back(node);
}

void SheetForest::addItem(int node, int item, bool turned)
{
    at(node).kind = TreeNode::Kind::item;
    at(node).item = item;
    at(node).turned = turned;
    at(node).slot = static_cast<int>(items_.size());
    items_.push_back(node);
}

void SheetForest::dropFromList(std::vector<int>& list, int node)
{
    const int slot = at(node).slot;
    const int last = list.back();
    list[static_cast<std::size_t>(slot)] = last;
    at(last).slot = slot;
    list.pop_back();
    at(node).slot = -1;
}

void SheetForest::release(int node)
{
    if (at(node).kind == TreeNode::Kind::rest) {
        dropFromList(rests_, node);
    } else if (at(node).kind == TreeNode::Kind::item) {
        dropFromList(items_, node);
    }
    free_.push_back(node);
}

void SheetForest::unlink(int node)
{
    const int prev = at(node).prev;
    const int next = at(node).next;
    if (prev >= 0) {
        at(prev).next = next;
    } else {
        at(at(node).parent).first = next;
    }
    if (next >= 0) {
        at(next).prev = prev;
    }
}

void SheetForest::dropChildren(int node)
{
    for (int child = at(node).first; child >= 0;) {
        const int next = at(child).next;
        dropChildren(child);
        release(child);
        child = next;
    }
    at(node).first = -1;
}

void SheetForest::makeRest(int node)
{
    if (at(node).kind == TreeNode::Kind::rest) {
        return;
    }
    if (at(node).kind == TreeNode::Kind::item) {
        dropFromList(items_, node);
    }
    dropChildren(node);
    addRest(node);
    // Rests of one row lie side by side as soon as its parts change places.
    for (int parent = at(node).parent; parent >= 0; parent = at(node).parent) {
        for (int other = at(parent).first; other >= 0; other = at(other).next) {
            if (other != node && at(other).kind == TreeNode::Kind::rest) {
                (at(parent).alongX ? at(node).w : at(node).h) += at(parent).alongX ? at(other).w : at(other).h;
                unlink(other);
                release(other);
                break;
            }
        }
        if (at(parent).first != node || at(node).next >= 0) {
            return;
        }
        release(node);
        at(parent).first = -1;
        addRest(parent);
        node = parent;
    }
}

int SheetForest::sheetOf(int node) const
{
    while (this->node(node).parent >= 0) {
        node = this->node(node).parent;
    }
    return node;
}

/// A part of `size` along one way, severed from a rest that is longer that way; the rest keeps what is over.
int SheetForest::splitOff(int rest, Um size, bool alongX)
{
    const int parent = at(rest).parent;
    if (parent >= 0 && at(parent).alongX == alongX) {
        (alongX ? at(rest).w : at(rest).h) -= size;
        return alongX ? make(parent, size, at(rest).h) : make(parent, at(rest).w, size);
    }
    dropFromList(rests_, rest);
    at(rest).kind = TreeNode::Kind::row;
    at(rest).alongX = alongX;
    const Um w = at(rest).w;
    const Um h = at(rest).h;
    addRest(alongX ? make(rest, w - size, h) : make(rest, w, h - size));
    return alongX ? make(rest, size, h) : make(rest, w, size);
}

void SheetForest::insert(int rest, int item, Um w, Um h, bool turned, bool columnFirst)
{
    int part = rest;
    for (const bool alongX : {columnFirst, !columnFirst}) {
        const Um size = alongX ? w : h;
        if (size == (alongX ? at(part).w : at(part).h)) {
            continue;
        }
        if (part == rest) {
            part = splitOff(part, size, alongX);
        } else {
            at(part).kind = TreeNode::Kind::row;
            at(part).alongX = alongX;
            const Um partW = at(part).w;
            const Um partH = at(part).h;
            addRest(alongX ? make(part, partW - size, partH) : make(part, partW, partH - size));
            part = alongX ? make(part, size, partH) : make(part, partW, size);
        }
    }
    if (part == rest) {
        dropFromList(rests_, rest);
    }
    addItem(part, item, turned);
}

void SheetForest::gather(int node, std::vector<int>& found) const
{
    if (this->node(node).kind == TreeNode::Kind::item) {
        found.push_back(node);
    }
    for (int child = this->node(node).first; child >= 0; child = this->node(child).next) {
        gather(child, found);
    }
}

int SheetForest::gatherTight(int node, std::vector<Tight>& out) const
{
    const TreeNode& from = this->node(node);
    if (from.kind == TreeNode::Kind::rest) {
        return -1;
    }
    Tight tight;
    if (from.kind == TreeNode::Kind::item) {
        tight.w = from.w;
        tight.h = from.h;
        tight.item = from.item;
        tight.turned = from.turned;
    } else {
        tight.row = true;
        tight.alongX = from.alongX;
        for (int child = from.first; child >= 0; child = this->node(child).next) {
            const int part = gatherTight(child, out);
            if (part < 0) {
                continue;
            }
            const Tight& of = out[static_cast<std::size_t>(part)];
            tight.w = tight.alongX ? tight.w + of.w : std::max(tight.w, of.w);
            tight.h = tight.alongX ? std::max(tight.h, of.h) : tight.h + of.h;
            if (of.row && of.alongX == tight.alongX) {
                tight.parts.insert(tight.parts.end(), of.parts.begin(), of.parts.end());
            } else {
                tight.parts.push_back(part);
            }
        }
        if (tight.parts.empty()) {
            return -1;
        }
        if (tight.parts.size() == 1) {
            return tight.parts.front();
        }
    }
    out.push_back(std::move(tight));
    return static_cast<int>(out.size()) - 1;
}

/// Lays a part into a rest at least as large.
void SheetForest::lay(int node, int tight, std::vector<Tight>& parts, bool restAbove)
{
    const Tight part = parts[static_cast<std::size_t>(tight)];
    if (!part.row) {
        insert(node, part.item, part.w, part.h, part.turned, !restAbove);
        return;
    }
    if (restAbove && at(node).h > part.h) {
        node = splitOff(node, part.h, false);
        addRest(node);
    }
    if (!restAbove && at(node).w > part.w) {
        node = splitOff(node, part.w, true);
        addRest(node);
    }
    for (std::size_t i = 0; i < part.parts.size(); ++i) {
        const Tight& inner = parts[static_cast<std::size_t>(part.parts[i])];
        const Um size = part.alongX ? inner.w : inner.h;
        const bool all = size == (part.alongX ? at(node).w : at(node).h);
        const int parent = at(node).parent;
        int box = node;
        int rest = node;
        if (!all) {
            const bool same = parent >= 0 && at(parent).alongX == part.alongX;
            box = splitOff(node, size, part.alongX);
            addRest(box);
            if (!same) {
                // The rest is the row's other part now.
                rest = at(box).next >= 0 ? at(box).next : at(box).prev;
            }
        }
        lay(box, part.parts[i], parts, part.alongX);
        node = rest;
    }
}

void SheetForest::tighten(int sheet, bool restAbove)
{
    std::vector<Tight> parts;
    const int whole = gatherTight(sheet, parts);
    if (whole < 0) {
        return;
    }
    makeRest(sheet);
    lay(sheet, whole, parts, restAbove);
}

void SheetForest::copySheet(const SheetForest& from, int sheet, int to)
{
    std::vector<Tight> parts;
    const int whole = from.gatherTight(sheet, parts);
    if (whole >= 0) {
        lay(to, whole, parts, true);
    }
}

int SheetForest::cuts(int node) const
{
    int sum = 0;
    int parts = 0;
    for (int child = this->node(node).first; child >= 0; child = this->node(child).next) {
        ++parts;
        sum += cuts(child);
    }
    return sum + std::max(0, parts - 1);
}

int SheetForest::settings(int node) const
{
    const bool alongX = this->node(node).alongX;
    const auto isSame = [&](int a, int b) {
        return this->node(b).kind != TreeNode::Kind::rest
            && (alongX ? this->node(a).w == this->node(b).w : this->node(a).h == this->node(b).h);
    };
    int sum = 0;
    bool anyRest = false;
    bool anyAlone = false;
    for (int child = this->node(node).first; child >= 0; child = this->node(child).next) {
        if (this->node(child).kind == TreeNode::Kind::rest) {
            anyRest = true;
            continue;
        }
        sum += settings(child);
        bool before = false;
        bool after = false;
        for (int other = this->node(node).first; other != child; other = this->node(other).next) {
            before = before || isSame(child, other);
        }
        for (int other = this->node(child).next; other >= 0 && !before; other = this->node(other).next) {
            after = after || isSame(child, other);
        }
        sum += before ? 0 : 1;
        anyAlone = anyAlone || !(before || after);
    }
    // What stays when the others are cut off needs no cut of its own.
    return sum - (!anyRest && anyAlone ? 1 : 0);
}

}  // namespace yardcast::sheets
