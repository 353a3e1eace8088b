namespace Circuits.Rendering;

/// <summary>How text is laid out.</summary>
public sealed record TextOptions
{
    /// <summary>The width in display cells; lines are wrapped to it where they can be. 40 or more; the default is 80.</summary>
    public int Width
    {
        get;
        init => field = Math.Max(40, value);
    } = 80;

    /// <summary>Whether to use colour; the default is not to.</summary>
    public bool Color { get; init; }

    /// <summary>Whether lines are drawn with box characters; otherwise with ASCII. The default is box characters.</summary>
    public bool Unicode { get; init; } = true;

    /// <summary>
    /// Whether the text is to be read out or searched line by line: one fact a line, tables as records, nothing drawn; then width, colour
    /// and box characters do not matter. The default is not to.
    /// </summary>
    public bool Plain { get; init; }

    /// <summary>The units; the default is SI.</summary>
    public UnitSystem Units { get; init; }

    /// <summary>80 columns, no colour, box characters, SI.</summary>
    public static TextOptions Default { get; } = new();
}
