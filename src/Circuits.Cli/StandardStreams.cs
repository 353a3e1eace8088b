using System.Text;
using Circuits.Reading;

namespace Circuits.Cli;

/// <summary>
/// What the caller opened for the program to write to. A caller may have closed it: that is said when something is to be written, and not
/// before. Until then something else must hold its number, or the next file that is opened gets it, and diagnostics land there.
/// </summary>
internal sealed class StandardStreams
{
    private const string Nothing = "/dev/null";
    private const int Output = 1;
    private const int Error = 2;

    private readonly HashSet<int> closed = [];

    /// <summary>Looks at what the caller opened; before any other file is opened.</summary>
    public StandardStreams()
    {
        if (OperatingSystem.IsWindows() || !File.Exists(Nothing)) return;
        try
        {
            while (TakeNumber())
            {
            }
        }
        catch (Exception fault) when (FileFault.IsOne(fault))
        {
            // A machine without it: then a stream that is closed shows when it is opened.
        }
    }

    /// <summary>Standard output, with room for so many characters.</summary>
    /// <param name="characters">How many.</param>
    public StreamWriter Out(int characters) => Utf8(Output, Console.OpenStandardOutput, characters);

    /// <summary>Standard error, with room for so many characters.</summary>
    /// <param name="characters">How many.</param>
    public StreamWriter Diagnostics(int characters) => Utf8(Error, Console.OpenStandardError, characters);

    // Output is UTF-8 whatever the locale: the same input gives the same bytes.
    private StreamWriter Utf8(int number, Func<Stream> open, int characters) =>
        new(closed.Contains(number) ? new ClosedStream() : Opened(open), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), characters) { AutoFlush = false };

    private static Stream Opened(Func<Stream> open)
    {
        try
        {
            return open();
        }
        catch (Exception fault) when (FileFault.IsOne(fault))
        {
            return new ClosedStream();
        }
    }

    /// <summary>Takes the lowest number that is free, if the caller left one of the first three so; it stays open to the end of the program.</summary>
    private bool TakeNumber()
    {
        var handle = File.OpenHandle(Nothing, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        var number = (int)handle.DangerousGetHandle();
        if (number > Error)
        {
            handle.Dispose();
            return false;
        }

        handle.SetHandleAsInvalid();
        closed.Add(number);
        return true;
    }
}
