namespace Circuits.Reading;

/// <summary>What goes wrong with files, in words of our own: the compiled program carries none of the base library's.</summary>
public static class FileFault
{
    /// <summary>Whether this is how the base library says that a file cannot be read or written.</summary>
    /// <param name="fault">What was thrown.</param>
    public static bool IsOne(Exception fault) => fault is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException;

    /// <summary>
    /// Why a file cannot be written, as it goes on after "cannot write" and its name.
    /// </summary>
    /// <param name="fault">What was thrown.</param>
    public static string WhyNotWritten(Exception fault) => fault switch
    {
        FileNotFoundException => "no file can be made there",
        DirectoryNotFoundException => "its folder does not exist",
        UnauthorizedAccessException => "no permission to write there",
        PathTooLongException => "the path is too long",
        IOException => OfNumber(fault.HResult),
        _ => "that is no path",
    };

    /// <summary>Why a file cannot be read.</summary>
    /// <param name="fault">What was thrown.</param>
    internal static FileReadException Reading(Exception fault) => fault switch
    {
        FileNotFoundException or DirectoryNotFoundException => Missing(),
        UnauthorizedAccessException => new("may not be read", "Check who may read the file."),
        _ => new("cannot be read", "Check the path and the disk."),
    };

    /// <summary>Nothing stands at the path.</summary>
    internal static FileReadException Missing() => new("does not exist", "Check the path.");

    // Numbers of errors that systems share (errno, or the low half of a Windows code).
    private static string OfNumber(int number) => (OperatingSystem.IsWindows() ? -(number & 0xFFFF) : number) switch
    {
        28 or -112 or -39 => "the disk is full",
        122 => "the user's share of the disk is full",
        27 => "the file would become too large",
        30 or -19 => "the disk is read-only",
        5 => "the disk does not answer as it should",
        6 => "nothing is there to take it",
        11 or -32 or -33 => "another program holds it",
        32 or -109 or -232 => "whoever read it has stopped",
        40 or -1921 => "its links lead in a circle",
        _ => FormattableString.Invariant($"the system refuses it (error {number & 0xFFFF})"),
    };
}
