#pragma once

namespace yardcast::ui {

/// The ways of using the pointer on the sheet.
enum class ToolKind {
    select,
    counter,         ///< drag to size
    counterPolygon,  ///< corner by corner
    support,
    panel,
    front,
    appliance,
    cutout,
    joint,
    rib,
    siteOutline,
    fixture,
    measure
};

/// What a drag from the parts tray carries: one word, UTF-8.
/// Parts: "counter", "support", "panel", "front", "appliance". Cutouts: "sink", "hob", "tap", "drain", "opening".
/// Fixtures: "water", "waste", "power", "gas", "wall", "tree", "door".
inline constexpr char kPartKindMime[] = "application/x-yardcast-part-kind";

}  // namespace yardcast::ui
