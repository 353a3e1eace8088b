using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Drawing;

/// <summary>
/// How drawings tell the states of oil apart: a colour and a pattern each. The colours differ in lightness as well as in hue, so that they
/// stay apart for eyes without red or green receptors, and on a grey print; a test holds them to that.
/// </summary>
internal static class Palette
{
    /// <summary>Foreign oil's way in, and whatever else is wrong.</summary>
    public const string Alarm = "#8A0F5A";

    /// <summary>What differs from what the drawing is held against.</summary>
    public const string Difference = "#0B6E4F";

    /// <summary>Lines of figures and lettering.</summary>
    public const string Ink = "#1B1F24";

    /// <summary>What is not in use.</summary>
    public const string Faint = "#9AA3AD";

    /// <summary>The states, in the order of the legend.</summary>
    public static OilLook[] Looks { get; } = [OilLook.Supply, OilLook.Reduced, OilLook.Exhaust, OilLook.Trapped, OilLook.CrossFeed];

    /// <summary>A state's colour.</summary>
    public static string ColourOf(OilLook look) => look switch
    {
        OilLook.Supply => "#B01E28",
        OilLook.Reduced => "#E9A13B",
        OilLook.Exhaust => "#7FB3D9",
        OilLook.Trapped => "#3D2C8D",
        _ => "#E0218A",
    };

    /// <summary>A state's word, as styles and data carry it.</summary>
    public static string WordOf(OilLook look) => look switch
    {
        OilLook.Supply => "supply",
        OilLook.Reduced => "reduced",
        OilLook.Exhaust => "exhaust",
        OilLook.Trapped => "trapped",
        _ => "cross-feed",
    };

    /// <summary>What a state means, for the legend.</summary>
    public static string MeaningOf(OilLook look) => look switch
    {
        OilLook.Supply => "supply: line pressure",
        OilLook.Reduced => "reduced: under pressure, less than line",
        OilLook.Exhaust => "exhaust: open to sump",
        OilLook.Trapped => "trapped: joined to neither",
        _ => "cross-feed: foreign oil",
    };

    /// <summary>The style sheet of a circuit drawing; every rule begins with the class of the drawing, so that it stays within it.</summary>
    public static string Style { get; } = string.Join('\n', Rules().Select(rule => $".oil-circuit {rule}")) + "\n";

    /// <summary>The patterns that fill passages.</summary>
    /// <param name="svg">What they are written to.</param>
    /// <param name="prefix">What their names begin with.</param>
    public static void Patterns(SvgWriter svg, string prefix)
    {
        foreach (var look in Looks)
        {
            svg.Begin(
                "pattern", ("id", prefix + WordOf(look)), ("width", "6"), ("height", "6"), ("patternUnits", "userSpaceOnUse"),
                ("patternTransform", look == OilLook.Reduced ? "rotate(45)" : null));
            var colour = ColourOf(look);
            svg.Box(0, 0, 6, 6, fill: look is OilLook.Supply or OilLook.Trapped ? colour : "#FFFFFF");
            switch (look)
            {
                case OilLook.Reduced:
                    svg.Box(0, 0, 3.6, 6, fill: colour);
                    break;
                case OilLook.Exhaust:
                    svg.Box(1, 1, 2.6, 2.6, fill: colour);
                    break;
                case OilLook.Trapped:
                    svg.Box(0, 0, 1.4, 6, fill: "#FFFFFF");
                    svg.Box(0, 0, 6, 1.4, fill: "#FFFFFF");
                    break;
                case OilLook.CrossFeed:
                    svg.Empty("path", ("d", "M0 0L3 3L6 0V3L3 6L0 3Z"), ("fill", colour));
                    break;
                default:
                    break;
            }

            svg.End();
        }
    }

    private static IEnumerable<string> Rules()
    {
        yield return $"text{{font:{DiagramSizes.Type}px {DrawnText.Family};fill:{Ink}}}";
        yield return ".name{font-weight:bold}";
        yield return ".head{font-size:17px;font-weight:bold}";
        yield return $".alarm{{fill:{Alarm};font-weight:bold}}";
        yield return $".other{{fill:{Difference};font-weight:bold}}";
        yield return ".faint{fill:#5A626C}";
        yield return ".mid{text-anchor:middle}";
        yield return $".fig{{fill:#FFFFFF;stroke:{Ink};stroke-width:1.4}}";
        yield return $".ink{{fill:none;stroke:{Ink};stroke-width:1.4}}";
        yield return $".thin{{fill:none;stroke:{Ink};stroke-width:1}}";
        yield return $".pilot{{fill:none;stroke:{Ink};stroke-width:1.2;stroke-dasharray:4 2}}";
        yield return $".solid{{fill:{Ink};stroke:none}}";
        yield return $".idle{{fill:none;stroke:{Faint};stroke-width:1}}";
        yield return $".idlefig{{fill:#F4F6F8;stroke:{Faint};stroke-width:1}}";
        yield return $".active{{fill:#FFF8DC;stroke:{Ink};stroke-width:1.8}}";
        yield return $".globe{{fill:#C9CFD6;stroke:{Ink};stroke-width:1.2}}";
        yield return $".ring{{fill:none;stroke:{Difference};stroke-width:2.4}}";
        yield return $".entry{{fill:none;stroke:{Alarm};stroke-width:3;stroke-dasharray:7 3}}";
        yield return $".stop{{fill:none;stroke:{Alarm};stroke-width:1.5}}";
        yield return ".wire{fill:none;stroke-linejoin:round}";
        yield return ".under{fill:none;stroke:#FFFFFF;stroke-width:6.5}";
        yield return $".wire.supply{{stroke:{ColourOf(OilLook.Supply)};stroke-width:3.4}}";
        yield return $".wire.reduced{{stroke:{ColourOf(OilLook.Reduced)};stroke-width:3.4;stroke-dasharray:11 3}}";
        yield return $".wire.exhaust{{stroke:{ColourOf(OilLook.Exhaust)};stroke-width:2.2;stroke-dasharray:2.5 2.5}}";
        yield return $".wire.trapped{{stroke:{ColourOf(OilLook.Trapped)};stroke-width:3;stroke-dasharray:9 3 2 3}}";
        yield return $".wire.cross-feed{{stroke:{ColourOf(OilLook.CrossFeed)};stroke-width:5.4}}";
        yield return ".core{fill:none;stroke:#FFFFFF;stroke-width:1.8;stroke-dasharray:6 3}";
    }
}
