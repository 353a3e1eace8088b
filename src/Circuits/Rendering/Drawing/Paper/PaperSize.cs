namespace Circuits.Rendering.Drawing.Paper;

/// <summary>A size of paper, in millimetres, upright.</summary>
/// <param name="Word">The word for it.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
public readonly record struct PaperSize(string Word, double Width, double Height)
{
    /// <summary>ISO 216 A4.</summary>
    public static PaperSize A4 { get; } = new("a4", 210, 297);

    /// <summary>Letter, 8 1/2 by 11 inches.</summary>
    public static PaperSize Letter { get; } = new("letter", 215.9, 279.4);

    /// <summary>Every size that there is a word for.</summary>
    public static IReadOnlyList<PaperSize> All { get; } = [A4, Letter];
}
