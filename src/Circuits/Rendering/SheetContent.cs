using System.Collections.Immutable;

namespace Circuits.Rendering;

/// <summary>One line of a sheet.</summary>
/// <param name="Text">The line.</param>
/// <param name="Depth">0 for an item of its own, 1 for one below the item before.</param>
internal readonly record struct SheetLine(string Text, int Depth = 0);

/// <summary>A table of a sheet; every row has a cell for every head.</summary>
internal sealed record SheetTable(ImmutableArray<string> Heads, ImmutableArray<ImmutableArray<string>> Rows);

/// <summary>What a section of a sheet is about.</summary>
internal enum SheetPart
{
    Complaint,
    Cause,
    Correction,
    Parts,
    Evidence,
    Expected,
    Notes,
    Assumptions,
    Cautions,
}

/// <summary>A section of a sheet: lines, then a table.</summary>
internal sealed record SheetSection(SheetPart Part, string Title, ImmutableArray<SheetLine> Lines, SheetTable? Table = null);

/// <summary>A sheet, before anyone lays it out.</summary>
internal sealed record SheetContent(string Title, ImmutableArray<KeyValuePair<string, string>> Head, ImmutableArray<SheetSection> Sections);
