using System.Collections.Immutable;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>A cell of a table.</summary>
/// <param name="Text">What it shows; may be of several lines.</param>
/// <param name="Style">Its style on a terminal.</param>
/// <param name="Spoken">What is read out instead of a mark that only looks like what it means; null where the text says it.</param>
internal sealed record GridCell(string Text, Style Style, string? Spoken = null);

/// <summary>A column of a table.</summary>
/// <param name="Heading">What stands above it, line by line.</param>
/// <param name="Name">What a cell is of, where there is no column to stand in.</param>
/// <param name="Right">Whether its cells end at one edge.</param>
/// <param name="Wrap">Whether its cells may be broken into lines.</param>
/// <param name="Gap">Blanks behind it.</param>
internal sealed record GridColumn(ImmutableArray<string> Heading, string Name, bool Right, bool Wrap, int Gap);

/// <summary>What is set out in rows and columns, before a page says how: as a table, or as records. The first column says what a row is about.</summary>
internal sealed class Grid
{
    private const int Narrowest = 12;

    private readonly List<GridColumn> columns = [];
    private readonly List<ImmutableArray<GridCell>> rows = [];

    /// <summary>The columns in order.</summary>
    public IReadOnlyList<GridColumn> Columns => columns;

    /// <summary>The rows in order; each has a cell for every column.</summary>
    public IReadOnlyList<ImmutableArray<GridCell>> Rows => rows;

    /// <summary>Adds a column.</summary>
    public void AddColumn(GridColumn column) => columns.Add(column);

    /// <summary>Adds a row.</summary>
    public void AddRow(params ReadOnlySpan<GridCell> cells) => rows.Add([.. cells]);

    /// <summary>
    /// The columns in bands that fit side by side, one below the other; every band begins with the first column, so that it can be read alone.
    /// </summary>
    /// <param name="room">The cells there are.</param>
    /// <param name="widths">The least that a column takes, in cells, without its gap.</param>
    public ImmutableArray<ImmutableArray<int>> Bands(int room, out ImmutableArray<int> widths)
    {
        // Nothing takes more than half of the room, so that beside the first column there is always room for another.
        var most = Math.Max(1, (room / 2) - 2);
        widths = [.. columns.Select((column, i) => Math.Min(Natural(i), column.Wrap ? Narrowest : int.MaxValue))];
        if (Sum(widths, Enumerable.Range(0, columns.Count)) > room) widths = [.. widths.Select(width => Math.Min(width, most))];
        var bands = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        for (var next = Math.Min(1, columns.Count); bands.Count == 0 || next < columns.Count;)
        {
            List<int> band = columns.Count == 0 ? [] : [0];
            while (next < columns.Count && (band.Count == 1 || Sum(widths, [.. band, next]) <= room)) band.Add(next++);
            bands.Add([.. band]);
        }

        return bands.ToImmutable();
    }

    /// <summary>The widest that a column gets, in cells.</summary>
    public int Natural(int column) =>
        columns[column].Heading.Concat(rows.SelectMany(row => row[column].Text.Split('\n'))).Select(Cells.Of).DefaultIfEmpty(0).Max();

    /// <summary>
    /// The widths of a band's columns where words have to be broken to fit: what is left over goes to the columns that are still too narrow. Null where
    /// breaking lines between words is enough.
    /// </summary>
    /// <param name="band">The columns.</param>
    /// <param name="least">The least that a column takes.</param>
    /// <param name="room">The cells there are.</param>
    public ImmutableArray<int>? Broken(ImmutableArray<int> band, ImmutableArray<int> least, int room)
    {
        if (band.All(i => (columns[i].Wrap ? LongestWord(i) : Natural(i)) <= least[i])) return null;
        var given = least.ToArray();
        for (var left = room - Sum(least, band); left > 0; left--)
        {
            if (band.Where(i => given[i] < Natural(i)).Select(i => (int?)i).MinBy(i => given[i!.Value]) is not { } narrowest) break;
            given[narrowest]++;
        }

        return [.. given];
    }

    private int LongestWord(int column) =>
        columns[column].Heading.Concat(rows.Select(row => row[column].Text)).SelectMany(text => text.Split([' ', '\n'])).Max(Cells.Of);

    // The gap behind the last one is not seen.
    private int Sum(ImmutableArray<int> widths, IEnumerable<int> band)
    {
        var all = band.ToList();
        return all.Sum(i => widths[i] + columns[i].Gap) - (all.Count == 0 ? 0 : columns[all[^1]].Gap);
    }
}
