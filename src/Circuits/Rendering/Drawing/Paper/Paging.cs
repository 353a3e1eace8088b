using System.Collections.Immutable;

namespace Circuits.Rendering.Drawing.Paper;

/// <summary>
/// A drawing that goes over as many pages as it needs, all lengths in millimetres. Each page repeats a strip of its neighbour, with
/// crosses to lay one on the other by; what should stay whole is whole on one of them.
/// </summary>
internal sealed class Paging
{
    /// <summary>What a page repeats of its neighbour at least.</summary>
    public const double Shared = 10;

    private readonly ImmutableArray<double> lefts;
    private readonly ImmutableArray<double> tops;
    private readonly double width;
    private readonly double height;

    private Paging(double roomX, double roomY, double width, double height, IReadOnlyList<(double From, double To)> acrossWhole, IReadOnlyList<(double From, double To)> downWhole)
    {
        (RoomX, RoomY) = (roomX, roomY);
        (this.width, this.height) = (width, height);
        lefts = Cut(width, roomX, acrossWhole);
        tops = Cut(height, roomY, downWhole);
    }

    /// <summary>What a page holds of the drawing, across.</summary>
    public double RoomX { get; }

    /// <summary>What a page holds of the drawing, down.</summary>
    public double RoomY { get; }

    /// <summary>How many pages there are side by side.</summary>
    public int Columns => lefts.Length;

    /// <summary>How many pages there are one below the other.</summary>
    public int Rows => tops.Length;

    /// <summary>How many pages there are.</summary>
    public int Count => Columns * Rows;

    /// <summary>Divides a drawing of a size over pages with so much room.</summary>
    public static Paging Of(double roomX, double roomY, double width, double height) => new(roomX, roomY, width, height, [], []);

    /// <summary>Divides a drawing of a size over pages with so much room, and keeps boxes whole: each is on one page from edge to edge, if a page can hold it.</summary>
    public static Paging Of(double roomX, double roomY, double width, double height, IReadOnlyList<(double X, double Y, double Width, double Height)> whole) =>
        new(roomX, roomY, width, height, [.. whole.Select(box => (box.X, box.X + box.Width))], [.. whole.Select(box => (box.Y, box.Y + box.Height))]);

    /// <summary>The upper left corner of what a page shows, from the drawing's own.</summary>
    /// <param name="page">Its number, from 0; pages are counted from left to right, then downwards.</param>
    public (double X, double Y) Corner(int page) => (lefts[page % Columns], tops[page / Columns]);

    /// <summary>Where crosses stand, in the middle of what two pages share.</summary>
    public IEnumerable<(double X, double Y)> Crosses()
    {
        for (var i = 1; i < Columns; i++)
        {
            foreach (var y in Along(tops, RoomY, height)) yield return ((lefts[i] + lefts[i - 1] + RoomX) / 2, y);
        }

        for (var i = 1; i < Rows; i++)
        {
            foreach (var x in Along(lefts, RoomX, width)) yield return (x, (tops[i] + tops[i - 1] + RoomY) / 2);
        }
    }

    private static ImmutableArray<double> Cut(double length, double room, IReadOnlyList<(double From, double To)> whole)
    {
        var starts = ImmutableArray.CreateBuilder<double>();
        starts.Add(0);
        while (starts[^1] + room < length - 1e-9)
        {
            var end = starts[^1] + room;
            var next = whole.Where(piece => piece.From < end && piece.To > end && piece.To - piece.From < room / 2).Select(piece => piece.From).Append(end - Shared).Min();
            starts.Add(next);
        }

        return starts.ToImmutable();
    }

    // Two for each page, so that its neighbour cannot be laid askew.
    private static IEnumerable<double> Along(ImmutableArray<double> starts, double room, double length)
    {
        foreach (var from in starts)
        {
            var to = Math.Min(from + room, length);
            yield return from + ((to - from) / 4);
            yield return to - ((to - from) / 4);
        }
    }
}
