using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Drawing.Joints;

/// <summary>The legend of a joint drawing.</summary>
internal static class JointLegend
{
    private const double Column = 72;
    private const double RowHeight = 9;

    /// <summary>How high it is at a width.</summary>
    public static double HeightOf(JointLook look, double width) => Math.Ceiling(Items(look).Count() / (double)Columns(width)) * RowHeight;

    /// <summary>Writes it.</summary>
    public static void Write(SvgWriter svg, JointLook look, string prefix, double left, double top, double width)
    {
        svg.Begin("g", ("class", "legend"));
        var count = 0;
        foreach (var (sample, words) in Items(look))
        {
            var (x, y) = (left + (count % Columns(width) * Column), top + (count / Columns(width) * RowHeight));
            count++;
            Sample(svg, sample, prefix, x + 5, y + 4);
            svg.Text(x + 12, y + 5, words);
        }

        svg.End();
    }

    private static int Columns(double width) => Math.Max(1, (int)(width / Column));

    private static IEnumerable<(string Sample, string Words)> Items(JointLook look)
    {
        yield return ("track upper", $"passage of {DrawnText.Short(look.Joint.Upper.Name, 16)}");
        yield return ("track lower", $"passage of {DrawnText.Short(look.Joint.Lower.Name, 16)}");
        yield return ("hole kept", "hole or slot, to scale");
        yield return ("hole kept unsure", "size or outline not given");
        yield return ("blank kept", "blank: metal or paper");
        yield return ("globe kept", "ball over its seat, to scale");
        if (look.Over is null) yield break;
        foreach (var change in (LookChange[])[LookChange.Removed, LookChange.Added])
        {
            var word = JointStyle.WordOf(change);
            yield return ($"hole {word}", $"{word}: hole or slot");
            yield return ($"track {word}", $"{word}: passage");
            yield return ($"globe {word}", $"{word}: ball");
            yield return ($"blank {word}", $"{word}: blank");
        }
    }

    private static void Sample(SvgWriter svg, string style, string prefix, double x, double y)
    {
        switch (style.Split(' ')[0])
        {
            case "track":
                svg.Line($"M{x - 2:0.##} {y:0.##}h4", style);
                break;
            case "hole":
                svg.Empty("circle", ("cx", Markup.Number(x)), ("cy", Markup.Number(y)), ("r", "2.2"), ("class", style), ("fill", style.EndsWith("added", StringComparison.Ordinal) ? $"url(#{prefix}added)" : null));
                break;
            case "globe":
                svg.Circle(x, y, 2.6, style);
                break;
            default:
                svg.Line($"M{x - 1.2:0.##} {y - 1.2:0.##}l2.4 2.4m0 -2.4l-2.4 2.4", style);
                break;
        }
    }
}
