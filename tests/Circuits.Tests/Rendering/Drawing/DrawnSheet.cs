using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Circuits.Rendering.Drawing;

namespace Circuits.Tests.Rendering.Drawing;

/// <summary>A drawing read back from its SVG: lettering as boxes, lines as corners.</summary>
internal sealed partial class DrawnSheet
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public DrawnSheet(string text)
    {
        Document = XDocument.Parse(text);
        Letters = [.. Document.Descendants(Svg + "text").Select(BoxOf)];
        Lines =
        [
            .. Named("line").Select(line => (line.Attribute("data-passage")?.Value ?? line.Attribute("data-element")!.Value, Corners(line.Elements(Svg + "path").First().Attribute("d")!.Value))),
        ];
    }

    public XDocument Document { get; }

    public XElement Root => Document.Root!;

    /// <summary>Each piece of lettering with the room that it takes at most.</summary>
    public List<LetterBox> Letters { get; }

    /// <summary>Each line: whose oil it holds, and its corners.</summary>
    public List<(string Of, List<(double X, double Y)> Corners)> Lines { get; }

    /// <summary>Groups whose class begins with a word.</summary>
    public IEnumerable<XElement> Named(string word) =>
        Document.Descendants(Svg + "g").Where(group => group.Attribute("class")?.Value.Split(' ')[0] == word);

    public IEnumerable<XElement> Elements(string name) => Document.Descendants(Svg + name);

    /// <summary>Pieces of lettering that lie on one another.</summary>
    public IEnumerable<string> Overlaps()
    {
        for (var i = 0; i < Letters.Count; i++)
        {
            for (var k = i + 1; k < Letters.Count; k++)
            {
                if (Letters[i].Meets(Letters[k])) yield return $"{Letters[i].Text} | {Letters[k].Text}";
            }
        }
    }

    /// <summary>Lines that run through lettering.</summary>
    public IEnumerable<string> Struck() =>
        from line in Lines
        from piece in line.Corners.Zip(line.Corners.Skip(1))
        let run = new LetterBox("", Math.Min(piece.First.X, piece.Second.X), Math.Min(piece.First.Y, piece.Second.Y), Math.Abs(piece.First.X - piece.Second.X), Math.Abs(piece.First.Y - piece.Second.Y))
        from letters in Letters
        where run.Meets(letters)
        select $"{line.Of} through {letters.Text}";

    /// <summary>Lines of different oil that lie on one another for more than a crossing.</summary>
    public IEnumerable<string> Merged()
    {
        var runs = Lines.SelectMany((line, i) => line.Corners.Zip(line.Corners.Skip(1)).Select(piece => (Line: i, line.Of, piece.First, piece.Second))).ToList();
        foreach (var a in runs)
        {
            foreach (var b in runs.Where(b => b.Line > a.Line && b.Of != a.Of))
            {
                if (a.First.X == a.Second.X && b.First.X == b.Second.X && a.First.X == b.First.X && Shared(a.First.Y, a.Second.Y, b.First.Y, b.Second.Y) > 1) yield return $"{a.Of} on {b.Of}, upright";
                if (a.First.Y == a.Second.Y && b.First.Y == b.Second.Y && a.First.Y == b.First.Y && Shared(a.First.X, a.Second.X, b.First.X, b.Second.X) > 1) yield return $"{a.Of} on {b.Of}, level";
            }
        }
    }

    /// <summary>How many pairs of lines cross.</summary>
    public int Crossings()
    {
        var runs = Lines.SelectMany((line, i) => line.Corners.Zip(line.Corners.Skip(1)).Select(piece => (Line: i, piece.First, piece.Second))).ToList();
        return runs.Where(run => run.First.X == run.Second.X).Sum(up => runs.Count(level => level.Line != up.Line && level.First.Y == level.Second.Y
            && up.First.X > Math.Min(level.First.X, level.Second.X) && up.First.X < Math.Max(level.First.X, level.Second.X)
            && level.First.Y > Math.Min(up.First.Y, up.Second.Y) && level.First.Y < Math.Max(up.First.Y, up.Second.Y)));
    }

    private static double Shared(double a, double b, double c, double d) => Math.Min(Math.Max(a, b), Math.Max(c, d)) - Math.Max(Math.Min(a, b), Math.Min(c, d));

    private static LetterBox BoxOf(XElement text)
    {
        var style = text.Attribute("class")?.Value.Split(' ') ?? [];
        var size = style.Contains("head") ? 17 : 11;
        var width = DrawnText.Width(text.Value, size, style.Intersect(["head", "name", "alarm", "other"]).Any());
        var x = Number(text.Attribute("x")) - (style.Contains("mid") ? width / 2 : 0);
        return new LetterBox(text.Value, x, Number(text.Attribute("y")) - (0.8 * size), width, size);
    }

    private static List<(double X, double Y)> Corners(string path) =>
        [.. Pair().Matches(path).Select(match => (double.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture), double.Parse(match.Groups[2].ValueSpan, CultureInfo.InvariantCulture)))];

    public static double Number(XAttribute? attribute) => double.Parse(attribute!.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"[ML](-?[\d.]+) (-?[\d.]+)")]
    private static partial Regex Pair();
}

/// <summary>A box with what is lettered in it.</summary>
internal sealed record LetterBox(string Text, double X, double Y, double Width, double Height)
{
    /// <summary>Whether two boxes share more than their edges.</summary>
    public bool Meets(LetterBox other) =>
        X + 0.2 < other.X + other.Width && other.X + 0.2 < X + Width && Y + 0.2 < other.Y + other.Height && other.Y + 0.2 < Y + Height;
}
