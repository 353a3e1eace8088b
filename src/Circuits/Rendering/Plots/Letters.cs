using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Circuits.Rendering.Plots;

/// <summary>A letter as strokes. The line of writing is at 3, capitals reach to 13, small letters to 10, tails to 0.</summary>
/// <param name="Advance">How far on the next letter begins, in hundredths of the size.</param>
/// <param name="Strokes">Lines of points.</param>
internal sealed record Letter(int Advance, ImmutableArray<ImmutableArray<(double X, double Y)>> Strokes);

/// <summary>
/// Letters drawn by strokes, for pictures made of pixels, and how wide text is in any picture. The advances are those of a wide sans-serif, so
/// that text which a viewer sets in a face of its own takes no more room than was kept for it.
/// </summary>
internal static class Letters
{
    /// <summary>Height of capitals as a share of the size.</summary>
    public const double Capital = 0.72;

    /// <summary>From one line to the next as a share of the size.</summary>
    public const double Line = 1.2;

    /// <summary>How far above the line of writing a line of text begins, as a share of the size.</summary>
    public const double Rise = 0.95;

    private const double Hundred = 100;
    private const int SmoothSteps = 4;

    private static readonly ImmutableDictionary<char, Letter> Known = Load();

    /// <summary>Stands for every letter that is not drawn here.</summary>
    private static readonly Letter Box = new(64, [[(0, 3), (0, 13), (6, 13), (6, 3), (0, 3)]]);

    /// <summary>The strokes of a text, and how wide each letter is; a wide letter of another script counts as one size.</summary>
    /// <param name="text">One line.</param>
    public static IEnumerable<(Letter Letter, double Advance)> Of(string text)
    {
        foreach (var element in Elements(text))
        {
            if (element.Length == 1 && Known.TryGetValue(element[0], out var letter)) yield return (letter, letter.Advance / Hundred);
            else yield return (Box, Cells.Of(element) switch { 0 => 0, 1 => 0.68, _ => 1.05 });
        }
    }

    /// <summary>How wide a line of text is, as a multiple of the size.</summary>
    public static double Width(string text) => Of(text).Sum(letter => letter.Advance);

    /// <summary>The text, shortened with three dots where it is wider than there is room.</summary>
    /// <param name="text">One line.</param>
    /// <param name="size">The size.</param>
    /// <param name="room">The room, in the unit of the size.</param>
    public static string Fit(string text, double size, double room)
    {
        if (Width(text) * size <= room) return text;
        var kept = new StringBuilder();
        var left = (room / size) - Width("...");
        foreach (var element in Elements(text))
        {
            left -= Width(element);
            if (left < 0) break;
            kept.Append(element);
        }

        return kept.Append("...").ToString();
    }

    private static IEnumerable<string> Elements(string text)
    {
        var elements = StringInfo.GetTextElementEnumerator(text);
        while (elements.MoveNext()) yield return elements.GetTextElement();
    }

    private static ImmutableDictionary<char, Letter> Load()
    {
        using var stream = typeof(Letters).Assembly.GetManifestResourceStream("plots/letters.txt") ?? throw new InvalidOperationException("The letters are missing.");
        using var reader = new StreamReader(stream);
        var known = ImmutableDictionary.CreateBuilder<char, Letter>();
        while (reader.ReadLine() is { Length: > 1 } line)
        {
            var words = line[2..].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            known[line[0]] = new Letter(int.Parse(words[0], CultureInfo.InvariantCulture), [.. words.Skip(1).Select(Stroke)]);
        }

        return known.ToImmutable();
    }

    // Two digits a point, of base 36; a wave before them has the corners rounded.
    private static ImmutableArray<(double X, double Y)> Stroke(string word)
    {
        var smooth = word[0] == '~';
        var points = word[(smooth ? 1 : 0)..].Chunk(2).Select(pair => (X: Digit(pair[0]), Y: Digit(pair[1]))).ToImmutableArray();
        return smooth ? Smooth(points) : points;
    }

    private static double Digit(char digit) => digit <= '9' ? digit - '0' : digit - 'a' + 10;

    // A Catmull-Rom curve through the points; a stroke that ends where it begins is a loop.
    private static ImmutableArray<(double X, double Y)> Smooth(ImmutableArray<(double X, double Y)> points)
    {
        var last = points.Length - 1;
        var loop = points[0] == points[last];
        var curve = ImmutableArray.CreateBuilder<(double X, double Y)>();
        for (var i = 0; i < last; i++)
        {
            var before = points[i > 0 ? i - 1 : loop ? last - 1 : 0];
            var after = points[i + 2 <= last ? i + 2 : loop ? 1 : last];
            for (var k = 0; k < SmoothSteps; k++)
            {
                var t = k / (double)SmoothSteps;
                curve.Add((At(before.X, points[i].X, points[i + 1].X, after.X, t), At(before.Y, points[i].Y, points[i + 1].Y, after.Y, t)));
            }
        }

        curve.Add(points[last]);
        return curve.ToImmutable();

        static double At(double a, double b, double c, double d, double t) =>
            b + (0.5 * t * (c - a + (t * ((2 * a) - (5 * b) + (4 * c) - d + (t * ((3 * (b - c)) + d - a))))));
    }
}
