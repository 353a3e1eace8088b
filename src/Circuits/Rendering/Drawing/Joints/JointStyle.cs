using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Drawing.Joints;

/// <summary>Colours, lines and sizes of joint drawings; all sizes in millimetres.</summary>
internal static class JointStyle
{
    /// <summary>Type of location numbers.</summary>
    public const double Number = 2.3;

    /// <summary>Type of everything else.</summary>
    public const double Type = 2.7;

    /// <summary>From one row of lettering to the next.</summary>
    public const double Row = 4;

    /// <summary>The length of the scale bar.</summary>
    public const double Bar = 50;

    /// <summary>The style sheet.</summary>
    public static string Sheet { get; } = string.Join('\n', Rules().Select(rule => $".oil-joint {rule}")) + "\n";

    /// <summary>The word for a change, as styles and data carry it.</summary>
    public static string WordOf(LookChange change) => change switch
    {
        LookChange.Removed => "removed",
        LookChange.Added => "added",
        _ => "kept",
    };

    private static IEnumerable<string> Rules()
    {
        const string removed = "#B01E28";
        const string added = "#0B5FA5";
        yield return $"text{{font:{Markup.Number(Type)}px {DrawnText.Family};fill:{Palette.Ink}}}";
        yield return $".number{{font-size:{Markup.Number(Number)}px}}";
        yield return ".head{font-size:5px;font-weight:bold}";
        yield return ".name{font-weight:bold}";
        yield return $".alarm{{fill:{Palette.Alarm};font-weight:bold}}";
        yield return $"text.removed{{fill:{removed};font-weight:bold;stroke:none}}";
        yield return $"text.added{{fill:{added};font-weight:bold;stroke:none}}";
        yield return ".track{fill:none;stroke-linecap:round;stroke-linejoin:round}";
        yield return ".upper{stroke:#CFDDEB;stroke-width:7}";
        yield return ".lower{stroke:#E7C998;stroke-width:3}";
        yield return $".track.removed{{stroke:{removed};stroke-width:.5;stroke-dasharray:2 1}}";
        yield return $".track.added{{stroke:{added};stroke-width:.9;stroke-dasharray:.1 1.4}}";
        yield return $".hole.kept{{fill:#FFFFFF;stroke:{Palette.Ink};stroke-width:.25}}";
        yield return $".hole.removed{{fill:none;stroke:{removed};stroke-width:.45;stroke-dasharray:1.4 .8}}";
        yield return $".hole.added{{stroke:{added};stroke-width:.45}}";
        yield return $".unsure{{stroke-dasharray:.5 .5}}";
        yield return $".globe{{fill:#8892A0;fill-opacity:.35;stroke:{Palette.Ink};stroke-width:.25}}";
        yield return $".globe.removed{{fill:none;stroke:{removed};stroke-dasharray:1.4 .8}}";
        yield return $".globe.added{{stroke:{added};stroke-width:.5;stroke-dasharray:.2 .6}}";
        yield return $".blank{{fill:none;stroke:{Palette.Ink};stroke-width:.3}}";
        yield return $".blank.removed{{stroke:{removed};stroke-dasharray:.8 .5}}";
        yield return $".blank.added{{stroke:{added};stroke-width:.6}}";
        yield return $".thin{{fill:none;stroke:{Palette.Ink};stroke-width:.15}}";
        yield return $".bar{{fill:{Palette.Ink};stroke:none}}";
    }
}
