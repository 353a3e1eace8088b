namespace Circuits.Cli;

/// <summary>A drawing as text, with the line ends that drawings have everywhere.</summary>
internal static class SvgText
{
    /// <summary>What is written.</summary>
    /// <param name="write">Writes the drawing.</param>
    public static string Of(Action<TextWriter> write)
    {
        var text = new StringWriter { NewLine = "\n" };
        write(text);
        return text.ToString();
    }
}
