using System.Collections.Immutable;

namespace Circuits.Rendering;

/// <summary>How the chart's clutch columns share the room there is.</summary>
/// <param name="Heading">The widest line of a heading, in cells.</param>
/// <param name="Gap">Blanks between columns.</param>
/// <param name="PerChart">How many clutches stand side by side; the others go into a chart below.</param>
internal sealed record ClutchColumns(int Heading, int Gap, int PerChart)
{
    private const int Narrowest = 4;

    /// <summary>
    /// The most readable columns that fit: whole names, then names broken at hyphens, then closer columns, then words cut,
    /// then several charts.
    /// </summary>
    /// <param name="clutches">The clutches' names.</param>
    /// <param name="marks">The widest mark below them, in cells.</param>
    /// <param name="room">The cells there are, gaps included.</param>
    public static ClutchColumns Fitting(ImmutableArray<string> clutches, int marks, int room)
    {
        var longest = clutches.Select(name => Cells.Of(name)).DefaultIfEmpty(0).Max();
        var longestWord = clutches.SelectMany(name => Pieces(name, int.MaxValue)).Select(word => Cells.Of(word)).DefaultIfEmpty(0).Max();
        IEnumerable<(int Heading, int Gap)> choices =
        [
            .. Down(longest, longestWord).Select(heading => (heading, 2)),
            (longestWord, 1),
            .. Down(longestWord - 1, Narrowest).Select(heading => (heading, 1)),
        ];
        foreach (var (heading, gap) in choices)
        {
            if (clutches.Sum(name => Math.Max(marks, Width(name, heading)) + gap) <= room)
                return new ClutchColumns(heading, gap, Math.Max(1, clutches.Length));
        }

        return new ClutchColumns(Narrowest, 1, Math.Max(1, room / (Math.Max(marks, Narrowest) + 1)));
    }

    /// <summary>A heading on as many lines as it takes to keep within a width: cut at hyphens where that helps.</summary>
    internal static ImmutableArray<string> HeadingLines(string name, int width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var piece in Pieces(name, width))
        {
            if (line.Length > 0 && Cells.Of(line + piece) > width)
            {
                lines.Add(line);
                line = "";
            }

            line += piece;
        }

        return [.. lines, line];
    }

    private static IEnumerable<string> Pieces(string name, int width)
    {
        var words = name.Split('-');
        for (var i = 0; i < words.Length; i++)
        {
            var piece = i < words.Length - 1 ? words[i] + "-" : words[i];
            // A word too long for a line is cut into equal lengths: `overd`, `rive` reads better than `overdriv`, `e`.
            var lines = ((Cells.Of(piece) - 1) / width) + 1;
            foreach (var part in Cells.Cut(piece, ((Cells.Of(piece) - 1) / lines) + 1)) yield return part;
        }
    }

    private static IEnumerable<int> Down(int from, int to) => from < to ? [] : Enumerable.Range(0, from - to + 1).Select(i => from - i);

    private static int Width(string clutch, int heading) =>
        HeadingLines(clutch, heading).Max(line => Cells.Of(line));
}
