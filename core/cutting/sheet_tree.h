#pragma once

#include <cstdint>
#include <vector>

#include "core/cutting/sheet_units.h"

namespace yardcast::sheets {

/// A part of a sheet as straight cuts make it: a row of parts side by side, one piece, or a rest.
struct TreeNode {
    enum class Kind : std::uint8_t { rest, item, row };
    Um w = 0;
    Um h = 0;
    int parent = -1;
    int first = -1;        ///< of a row's parts
    int next = -1;
    int prev = -1;
    int item = -1;         ///< sort of an item
    int slot = -1;         ///< place in the list of rests or of items
    Kind kind = Kind::rest;
    bool alongX = false;   ///< a row's parts follow each other along x
    bool turned = false;   ///< an item lies turned
};

/// Sheets that are being filled, each a tree of straight cuts. Parts of a row may change places at will, so a row has at
/// most one rest. Node i is sheet i itself.
class SheetForest {
public:
    SheetForest() = default;
    explicit SheetForest(const std::vector<Bin>& sheets);

    const TreeNode& node(int i) const { return nodes_[static_cast<std::size_t>(i)]; }
    int sheetCount() const { return sheetCount_; }
    bool isEmpty(int sheet) const { return node(sheet).kind == TreeNode::Kind::rest; }
    const std::vector<int>& rests() const { return rests_; }
    const std::vector<int>& items() const { return items_; }
    int sheetOf(int node) const;

    /// Puts an item into a rest which it fits; the first cut severs a column as wide as the item (`columnFirst`) or a row
    /// as high.
    void insert(int rest, int item, Um w, Um h, bool turned, bool columnFirst);
    /// Takes away all items below a node; `taken(item)` is called for each.
    template <class Taken> void clear(int node, Taken taken)
    {
        scratch_.clear();
        gather(node, scratch_);
        for (const int i : scratch_) {
            taken(nodes_[static_cast<std::size_t>(i)].item);
        }
        makeRest(node);
    }
    /// Lays a sheet anew with the same parts: what every part of a row leaves free moves out of the row. `restAbove`
    /// chooses which way the sheet's own rest is severed first.
    void tighten(int sheet, bool restAbove);
    /// Fills an empty sheet of the same size as another forest's is filled.
    void copySheet(const SheetForest& from, int sheet, int to);
    /// Cuts that a sheet needs.
    int cuts(int sheet) const;
    /// Places to which its fence has to be set for them, those of each row by themselves.
    int settings(int sheet) const;

private:
    struct Tight;
    TreeNode& at(int i) { return nodes_[static_cast<std::size_t>(i)]; }
    int make(int parent, Um w, Um h);
    void addRest(int node);
    void addItem(int node, int item, bool turned);
    void dropFromList(std::vector<int>& list, int node);
    void release(int node);
    void unlink(int node);
    void dropChildren(int node);
    void makeRest(int node);
    int splitOff(int rest, Um size, bool alongX);
    void gather(int node, std::vector<int>& found) const;
    int gatherTight(int node, std::vector<Tight>& out) const;
    void lay(int node, int tight, std::vector<Tight>& parts, bool restAbove);

    std::vector<TreeNode> nodes_;
    std::vector<int> free_;
    std::vector<int> rests_;
    std::vector<int> items_;
    std::vector<int> scratch_;
    int sheetCount_ = 0;
};

}  // namespace yardcast::sheets
