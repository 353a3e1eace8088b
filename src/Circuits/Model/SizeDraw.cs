using Circuits.Findings;

namespace Circuits.Model;

/// <summary>Where a size comes out within its tolerance: from -1, its least, by 0, as written, to 1, its most.</summary>
/// <param name="place">The line of the size.</param>
/// <param name="side">0; 1 for the second side of a slot.</param>
public delegate double SizeDraw(Place place, int side);
