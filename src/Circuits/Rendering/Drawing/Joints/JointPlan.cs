using Circuits.Model;
using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Drawing.Joints;

/// <summary>A rectangle, in millimetres, y downwards.</summary>
internal readonly record struct Extent(double Left, double Top, double Right, double Bottom)
{
    public double Width => Right - Left;

    public double Height => Bottom - Top;

    public bool Meets(Extent other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public Extent Wider(double by) => new(Left - by, Top - by, Right + by, Bottom + by);

    public Extent With(Extent other) => new(Math.Min(Left, other.Left), Math.Min(Top, other.Top), Math.Max(Right, other.Right), Math.Max(Bottom, other.Bottom));

    public static Extent Around(double x, double y, double radius) => new(x - radius, y - radius, x + radius, y + radius);
}

/// <summary>A joint to scale: holes, slots, balls, blanks, tracks, and a number beside each location. It draws at 1:1, y downwards.</summary>
internal sealed class JointPlan
{
    private const double Unsized = 3;

    private readonly JointLook look;
    private readonly UnitSystem units;
    private readonly Dictionary<string, (double X, double Y)> at;
    private readonly List<(string Id, double X, double Y, double FromX, double FromY, bool Led)> numbers = [];

    /// <summary>Lays a joint out.</summary>
    public JointPlan(JointLook look, UnitSystem units)
    {
        this.look = look;
        this.units = units;
        at = look.Locations.ToDictionary(location => location.Id, location => (location.X, -location.Y));
        var taken = Figures().ToList();
        PlaceNumbers(taken);
        Extent = taken.Count == 0 ? default : taken.Aggregate((a, b) => a.With(b)).Wider(3);
    }

    /// <summary>All that the plan covers.</summary>
    public Extent Extent { get; }

    /// <summary>Draws it.</summary>
    /// <param name="svg">What it is written to.</param>
    /// <param name="prefix">What names of patterns begin with.</param>
    public void Draw(SvgWriter svg, string prefix)
    {
        foreach (var track in look.Tracks.OrderBy(track => track.IsUpper ? 0 : 1).ThenBy(track => track.Change)) DrawTrack(svg, track);
        foreach (var location in look.Locations) svg.Circle(at[location.Id].X, at[location.Id].Y, 0.35, "bar");
        foreach (var opening in look.Openings.Where(opening => opening.Change != LookChange.Removed).OrderBy(opening => opening.Change)) DrawOpening(svg, opening, prefix);
        foreach (var ball in look.Balls) DrawBall(svg, ball);

        // Outlines alone, which a larger hole that comes instead must not hide.
        foreach (var opening in look.Openings.Where(opening => opening.Change == LookChange.Removed)) DrawOpening(svg, opening, prefix);
        foreach (var blank in look.Blanks.Where(blank => !look.Openings.Any(opening => opening.Locations.Contains(blank.Location)) || blank.Change != LookChange.Kept)) DrawBlank(svg, blank);
        foreach (var number in numbers)
        {
            if (number.Led) svg.Line($"M{number.FromX:0.##} {number.FromY:0.##}L{number.X + 1:0.##} {number.Y - (JointStyle.Number / 2):0.##}", "thin");
            svg.Leaf("text", DrawnText.Short(number.Id, 8), ("x", Markup.Number(number.X)), ("y", Markup.Number(number.Y)), ("class", "number"), ("data-location", number.Id));
        }
    }

    private IEnumerable<Extent> Figures()
    {
        foreach (var location in look.Locations) yield return Extent.Around(at[location.Id].X, at[location.Id].Y, 1.6);
        foreach (var opening in look.Openings)
        {
            var (centre, length, width, degrees) = SlotOf(opening);
            if (opening.Shape is Shape.Slot)
            {
                // Long and aslant, it is taken as a row of spots.
                foreach (var (x, y) in Along(centre, length, degrees)) yield return Extent.Around(x, y, width / 2);
            }
            else
            {
                yield return Extent.Around(centre.X, centre.Y, Radius(opening));
            }
        }

        foreach (var ball in look.Balls) yield return Extent.Around(at[ball.Location].X, at[ball.Location].Y, (ball.Millimetres ?? Unsized) / 2);
    }

    /// <summary>Beside each location, where nothing else is; further off, with a line to it, where it is crowded.</summary>
    private void PlaceNumbers(List<Extent> taken)
    {
        foreach (var location in look.Locations)
        {
            var (x, y) = at[location.Id];
            var width = DrawnText.Width(DrawnText.Short(location.Id, 8), JointStyle.Number);
            for (var ring = 0; ; ring++)
            {
                var radius = 2.2 + ring;
                var found = false;
                for (var k = 0; k < 16 && !found; k++)
                {
                    var angle = (-Math.PI / 4) + (k * Math.PI / 8 * (k % 2 == 0 ? 1 : -1));
                    var (cx, cy) = (x + (radius * Math.Cos(angle)), y + (radius * Math.Sin(angle)));
                    var left = cx + (Math.Cos(angle) < -0.3 ? -width : Math.Cos(angle) > 0.3 ? 0 : -width / 2);
                    var box = new Extent(left, cy - (JointStyle.Number / 2), left + width, cy + (JointStyle.Number / 2));
                    if (taken.Exists(box.Wider(0.2).Meets)) continue;
                    taken.Add(box);
                    numbers.Add((location.Id, left, box.Bottom - 0.4, x, y, ring > 3));
                    found = true;
                }

                if (found) break;
            }
        }
    }

    private void DrawTrack(SvgWriter svg, LookTrack track)
    {
        var runs = Runs(track);
        var path = string.Concat(runs);
        var other = look.Tracks.FirstOrDefault(other => other.Name == track.Name && other.Change != track.Change);
        var changed = other is null ? path : string.Concat(runs.Except(Runs(other)));
        svg.Begin("g", ("class", "passage"), ("data-passage", track.Name.ToString()), ("data-change", JointStyle.WordOf(track.Change)));
        svg.Leaf("title", $"{track.Name}, {(track.IsUpper ? look.Joint.Upper.Name : look.Joint.Lower.Name)}, at {string.Join(", ", track.Locations)}");
        svg.Empty("path", ("d", path), ("class", $"track {(track.IsUpper ? "upper" : "lower")}"));
        if (track.Change != LookChange.Kept && changed.Length > 0) svg.Empty("path", ("d", changed), ("class", $"track {JointStyle.WordOf(track.Change)}"));
        svg.End();
    }

    private List<string> Runs(LookTrack track) =>
        [.. Tree([.. track.Locations.Select(id => at[id])]).Select(pair => SvgWriter.Path($"M{pair.A.X:0.##} {pair.A.Y:0.##}L{pair.B.X:0.##} {pair.B.Y:0.##}"))];

    /// <summary>The shortest tree over some points. The file tells where a track opens, not how it runs.</summary>
    private static IEnumerable<((double X, double Y) A, (double X, double Y) B)> Tree(List<(double X, double Y)> points)
    {
        if (points.Count == 1)
        {
            yield return (points[0], (points[0].X + 0.01, points[0].Y));
            yield break;
        }

        List<(double X, double Y)> reached = [points[0]];
        var left = points.Skip(1).ToList();
        while (left.Count > 0)
        {
            var (a, b) = reached.SelectMany(a => left.Select(b => (A: a, B: b))).MinBy(pair => Distance(pair.A, pair.B));
            reached.Add(b);
            left.Remove(b);
            yield return (a, b);
        }
    }

    private static double Distance((double X, double Y) a, (double X, double Y) b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));

    private void DrawOpening(SvgWriter svg, LookOpening opening, string prefix)
    {
        var (centre, length, width, angle) = SlotOf(opening);
        var style = $"hole {JointStyle.WordOf(opening.Change)}";
        var fill = opening.Change == LookChange.Added ? $"url(#{prefix}added)" : null;
        svg.Begin("g", ("class", "opening"), ("data-element", $"{opening.Sheet}@{string.Join('-', opening.Locations)}"), ("data-change", JointStyle.WordOf(opening.Change)));
        svg.Leaf("title", $"{opening.Sheet}@{string.Join('-', opening.Locations)}: {JointTable.SizeOf(opening.Shape, units)}");
        switch (opening.Shape)
        {
            case Shape.Slot:
                svg.Empty(
                    "rect", ("x", Markup.Number(centre.X - (length / 2))), ("y", Markup.Number(centre.Y - (width / 2))), ("width", Markup.Number(length)), ("height", Markup.Number(width)),
                    ("rx", Markup.Number(width / 2)), ("class", style), ("fill", fill), ("transform", SvgWriter.Path($"rotate({angle:0.##} {centre.X:0.##} {centre.Y:0.##})")));
                break;
            case Shape.Cutout cutout:
                var side = Math.Sqrt(cutout.Size.SquareMillimetres);
                svg.Box(centre.X - (side / 2), centre.Y - (side / 2), side, side, style + " unsure", fill: fill);
                break;
            default:
                svg.Empty("circle", ("cx", Markup.Number(centre.X)), ("cy", Markup.Number(centre.Y)), ("r", Markup.Number(Radius(opening))), ("class", opening.Shape is Shape.Hole ? style : style + " unsure"), ("fill", fill));
                break;
        }

        svg.End();
    }

    private static double Radius(LookOpening opening) => opening.Shape switch
    {
        Shape.Hole hole => hole.Diameter.Millimetres / 2,
        { Area: { } area } => Math.Sqrt(area.SquareMillimetres / 2),
        _ => Unsized / 2,
    };

    /// <summary>Centre, length, width and turn of an opening; it lies along the line from its first location to its last.</summary>
    private ((double X, double Y) Centre, double Length, double Width, double Degrees) SlotOf(LookOpening opening)
    {
        var (first, last) = (at[opening.Locations[0]], at[opening.Locations[^1]]);
        var centre = ((first.X + last.X) / 2, (first.Y + last.Y) / 2);
        var degrees = Math.Atan2(last.Y - first.Y, last.X - first.X) * 180 / Math.PI;
        return opening.Shape is Shape.Slot slot ? (centre, slot.Length.Millimetres, slot.Width.Millimetres, degrees) : (centre, 0, 0, 0);
    }

    private static IEnumerable<(double X, double Y)> Along((double X, double Y) centre, double length, double degrees)
    {
        for (var step = -length / 2; step <= length / 2; step += 1) yield return (centre.X + (step * Math.Cos(degrees * Math.PI / 180)), centre.Y + (step * Math.Sin(degrees * Math.PI / 180)));
    }

    private void DrawBall(SvgWriter svg, LookBall ball)
    {
        var (x, y) = at[ball.Location];
        svg.Begin("g", ("class", "ball"), ("data-element", ball.Name), ("data-change", JointStyle.WordOf(ball.Change)));
        svg.Leaf("title", $"ball {ball.Name}, its seat at {ball.Location}");
        svg.Circle(x, y, (ball.Millimetres ?? Unsized) / 2, $"globe {JointStyle.WordOf(ball.Change)}{(ball.Millimetres is null ? " unsure" : "")}");
        svg.End();
    }

    private void DrawBlank(SvgWriter svg, LookBlank blank)
    {
        var (x, y) = at[blank.Location];
        svg.Begin("g", ("class", "closed"), ("data-element", $"{blank.Sheet}@{blank.Location}"), ("data-change", JointStyle.WordOf(blank.Change)));
        svg.Leaf("title", $"{blank.Sheet} is blank at {blank.Location}");
        svg.Line($"M{x - 1.2:0.##} {y - 1.2:0.##}l2.4 2.4m0 -2.4l-2.4 2.4", $"blank {JointStyle.WordOf(blank.Change)}");
        svg.End();
    }
}
