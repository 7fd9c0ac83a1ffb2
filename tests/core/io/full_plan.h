#pragma once

namespace yardcast::samples {

/// Every key of the file format, with values that differ from the defaults. Everything in it is invented.
inline constexpr const char* kFullPlan = R"json({
  "yardplan": 1,
  "title": "Kitchen by the pear tree",
  "currency": "CHF",
  "site": {
    "outline": [[0, 0], [6000, 0], [6000, 4000], [0, 4000]],
    "ground": {"level_mm": -12, "fall_percent": 1.5, "fall_towards_deg": 250},
    "fixtures": [
      {"id": "tap", "kind": "water", "at": [100, 3900]},
      {"id": "drain", "kind": "waste", "at": [150, 3900]},
      {"id": "box", "kind": "power", "at": [200, 3900]},
      {"id": "bottle", "kind": "gas", "at": [5800, 3800], "size": [300, 300]},
      {"id": "house", "kind": "wall", "at": [0, 3950], "size": [6000, 50]},
      {"id": "pear", "kind": "tree", "at": [5500, 500], "size": [350, 350]},
      {"id": "garden door", "kind": "door", "at": [2500, 3950], "size": [900, 50]},
      {"id": "gully", "kind": "other", "at": [3000, 100]}
    ]
  },
  "conditions": {"air_c": 24.5, "high_c": 29, "low_c": 13, "humidity_percent": 48, "wind_kmh": 11, "concrete_c": 23,
    "water_c": 12, "ice_percent": 15, "materials_c": 21, "measured": [{"h": 0, "c": 23.5}, {"h": 6.5, "c": 28}]},
  "crew": {"people": 3, "lift_limit_kg": 22.5},
  "mixer": {"drum_l": 120, "batch_minutes": 10, "usable_percent": 60},
  "budget": {"limit": 1100.5, "quote": 6400},
  "mixes": [
    {
      "id": "worktop",
      "bag": {"mass_kg": 25, "yield_l": 11.8, "water_l": 2.7, "cement_kg": 4.4, "max_aggregate_mm": 4, "yield_spread_percent": 5},
      "strength_class": "C30/37",
      "cement_speed": "R",
      "extra_cement_percent": 4,
      "silica_fume_percent": 8,
      "plasticiser_percent": 1.2,
      "pigment_percent": 2.5,
      "fibres": [{"kind": "AR glass", "kg_per_m3": 3}, {"kind": "PP", "kg_per_m3": 0.9}],
      "max_water_cement": 0.45,
      "air_percent": 4.5,
      "allowance_percent": 10,
      "trial": {"bucket_l": 10, "concrete_kg": 22.6, "water_l": 2.75}
    },
    {
      "id": "body",
      "bag": {"mass_kg": 40, "yield_l": 19, "water_l": 4.2, "cement_kg": 6.5, "max_aggregate_mm": 16},
      "strength_class": "C20/25",
      "cement_speed": "S"
    },
    {
      "id": "own",
      "recipe": {
        "cement_kg_m3": 360, "water_l_m3": 160, "sand_percent": 48,
        "sand": {"density_kg_m3": 2630, "absorption_percent": 0.8, "moisture_percent": 4},
        "gravel": {"density_kg_m3": 2700, "absorption_percent": 0.5, "moisture_percent": 1},
        "max_aggregate_mm": 16, "cement_bag_kg": 20
      }
    },
    {
      "id": "by density",
      "bag": {"mass_kg": 25, "fresh_density_kg_m3": 2240, "water_l": 2.9, "cement_kg": 4.1}
    }
  ],
  "pour": {"start_h": 6.5, "hours": 7, "order": ["C1", "S1"], "moulds": 3, "working_minutes": 60},
  "mould": {
    "board_mm": 21, "sides": "beside_base", "edge": "chamfer", "edge_mm": 8, "former": "foam", "draft_deg": 4,
    "tolerance_mm": 1.5, "bow_mm": 0.8, "bracket_mm": 450, "saw_mm": 3.5, "trim_mm": 10, "least_strip_mm": 60,
    "offcuts": [{"size": [900, 420], "thickness_mm": 21, "count": 2}], "shared": [{"castings": ["C1.1", "C1.2"]}]
  },
  "season": [
    {"month": 5, "low_c": 8, "high_c": 18, "humidity_percent": 62, "wind_kmh": 12},
    {"month": 6, "low_c": 11, "high_c": 22, "humidity_percent": 58, "wind_kmh": 9}
  ],
  "assumptions": {
    "bed_n_mm3": 4, "stripping_factor": 1.4, "handling_factor": 1.2, "mould_surface": "rough", "suction_kpa": 2.5,
    "crack_safety": 1.7, "even_load_kpa": 3, "person_n": 900, "exposure": "XD3", "late_corner_mm": 15,
    "frost": "XF4", "curing_class": 4, "strip_mpa": 12
  },
  "parts": [
    {
      "id": "C1",
      "kind": "counter",
      "name": "long bench",
      "at": [500, 1200],
      "turn_deg": 0.5,
      "top_mm": 905,
      "outline": [[0, 0], [2400, 0], [2400, 640], [0, 640]],
      "thickness_mm": 38,
      "rim": {"depth_mm": 70, "width_mm": 55, "edges": [0, 1, 3]},
      "filler": {"density_kg_m3": 30, "stays": false},
      "ribs": [{"from": [1200, 0], "to": [1200, 640], "width_mm": 90}],
      "cutouts": [
        {
          "id": "K1", "purpose": "sink", "shape": "rectangle", "centre": [600, 330], "size": [520, 390],
          "turn_deg": 2, "corner_radius_mm": 25, "rim_mm": 50
        },
        {"id": "K2", "purpose": "tap", "shape": "circle", "centre": [600, 575], "diameter_mm": 35},
        {"id": "K3", "purpose": "hob", "shape": "rectangle", "centre": [1800, 320], "size": [500, 380]},
        {"id": "K4", "purpose": "drain", "shape": "circle", "centre": [1150, 330], "diameter_mm": 50},
        {"id": "K5", "purpose": "other", "shape": "circle", "centre": [1300, 330], "diameter_mm": 60}
      ],
      "joints": [{"from": [1250, 0], "to": [1250, 640], "gap_mm": 5}],
      "mix": "worktop",
      "cast": "face_up",
      "steel": {
        "mesh": {"bar_mm": 3, "pitch_mm": 40, "cover_mm": 18, "material": "basalt"},
        "bars": [
          {
            "from": [60, 60], "to": [2340, 60], "diameter_mm": 6, "count": 2, "spacing_mm": 30, "cover_mm": 25,
            "material": "stainless"
          }
        ]
      },
      "loads": [{"name": "oven", "centre": [2200, 320], "size": [300, 400], "mass_kg": 45}],
      "imposed": "person",
      "lift": {"age_h": 60, "grips": [[200, 0], [2200, 0]], "people": 4, "carry": "on_edge"},
      "drip": {"edges": [0, 1], "from_edge_mm": 15, "width_mm": 10, "depth_mm": 6},
      "rebate": {"edges": [2], "width_mm": 52, "depth_mm": 10}
    },
    {
      "id": "S1",
      "kind": "support",
      "at": [600, 1200],
      "turn_deg": 90,
      "length_mm": 600,
      "width_mm": 110,
      "base_mm": 10,
      "height_mm": 815,
      "core": {"length_mm": 440, "height_mm": 640, "thickness_mm": 45, "density_kg_m3": 25},
      "mix": "body",
      "cast": "upright",
      "pads": {"count": 3, "size": [90, 100], "thickness_mm": 10}
    },
    {
      "id": "P1",
      "kind": "panel",
      "at": [500, 1850],
      "turn_deg": 0,
      "length_mm": 2000,
      "thickness_mm": 45,
      "base_mm": 905,
      "height_mm": 320,
      "core": {"length_mm": 1800, "height_mm": 200, "thickness_mm": 15, "density_kg_m3": 20},
      "mix": "worktop",
      "cast": "flat",
      "steel": {"mesh": {"bar_mm": 4, "pitch_mm": 50, "cover_mm": 20}}
    },
    {
      "id": "F1",
      "kind": "front",
      "at": [710, 1210],
      "turn_deg": 0,
      "from": [0, 0],
      "to": [1500, 0],
      "bottom_mm": 70,
      "top_mm": 820,
      "batten": {"width_mm": 44, "thickness_mm": 26, "gap_mm": 7, "run": "level", "bevel_deg": 15, "species": "oak"},
      "doors": [{"from_mm": 100, "to_mm": 700, "hinges": "right"}],
      "measured": {
        "bottom_mm": 1500, "top_mm": 1501, "left_mm": 750, "right_mm": 751,
        "diagonal_rising_mm": 1677, "diagonal_falling_mm": 1678
      }
    },
    {
      "id": "A1",
      "kind": "appliance",
      "at": [2550, 1300],
      "turn_deg": 0,
      "on": "C1",
      "size": [300, 400],
      "height_mm": 350,
      "mass_kg": 45,
      "surface_c": 180,
      "clearance_mm": 60
    }
  ],
  "owned": [{"item": "mesh", "amount": 1.5}],
  "prices": [{"item": "dry_mix", "pack_size": 25, "price": 5.35}]
}
)json";

}  // namespace yardcast::samples
