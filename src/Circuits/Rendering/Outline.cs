using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>A line with lines below it, before a page says how: as a drawn tree, or as numbered lines.</summary>
/// <param name="pieces">The line, in pieces of a style each.</param>
internal sealed class Outline(params (string Text, Style Style)[] pieces)
{
    /// <summary>The line.</summary>
    public IReadOnlyList<(string Text, Style Style)> Pieces => pieces;

    /// <summary>What stands below it.</summary>
    public List<Outline> Below { get; } = [];
}
