using Circuits.Model;

namespace Circuits.Rendering.Matrix;

/// <summary>A letter for each verdict.</summary>
internal static class MatrixMark
{
    /// <summary>What the letters mean, best first, and the star of a matched set.</summary>
    public static IEnumerable<string> Legend =>
    [
        ". as charted", "N not decided", "W weak", "O over-pressure", "S starved", "U unwanted", "L lost", "X did not converge", "? never settles",
        "* matched set",
    ];

    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.AsCharted => ".",
        Verdict.Weak => "W",
        Verdict.Unwanted => "U",
        Verdict.Lost => "L",
        Verdict.NotDecided => "N",
        Verdict.OverPressure => "O",
        Verdict.Starved => "S",
        Verdict.DidNotConverge => "X",
        _ => "?",
    };
}
