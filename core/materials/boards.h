#pragma once

/// Boards and battens that moulds are made of.
namespace yardcast {

/// Coated chipboard, the weakest board in use for moulds. Bending strength: EN 312 type P2, 13 to 20 mm, at least 11 MPa
/// (from memory). Modulus: EN 312 P2 asks for 1600 MPa at least, EN 12369-1 gives 2900 MPa as the mean of P4 (both from
/// memory); what is sold lies between, here 2500: an estimate. Dry, bent flat, for hours.
inline constexpr double kMouldBoardElasticMpa = 2500.0;
inline constexpr double kMouldBoardStrengthMpa = 11.0;
/// Strip that can be bent round a curve, mm: hardboard. Common practice, no source.
inline constexpr double kBendableStripMm = 3.0;
/// Batten for holding down and for posts, mm. Common practice, no source.
inline constexpr double kMouldBattenWidthMm = 48.0;
inline constexpr double kMouldBattenThicknessMm = 24.0;
/// Of such a batten on edge: C16 of EN 338 has 8000 MPa on the mean and a characteristic bending strength of 16 MPa;
/// EN 1995-1-1 for loads of hours, 0.9 / 1.3 of that (all from memory).
inline constexpr double kBattenElasticMpa = 8000.0;
inline constexpr double kBattenStrengthMpa = 16.0 * 0.9 / 1.3;

}  // namespace yardcast
