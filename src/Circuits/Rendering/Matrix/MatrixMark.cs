using Circuits.Model;

namespace Circuits.Rendering.Matrix;

/// <summary>A letter for each verdict.</summary>
internal static class MatrixMark
{
    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.AsCharted => ".",
        Verdict.Weak => "W",
        Verdict.Unwanted => "U",
        Verdict.Lost => "L",
        _ => "?",
    };
}
