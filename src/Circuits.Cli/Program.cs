using System.Text;

namespace Circuits.Cli;

internal static class Program
{
    private static int Main(string[] args)
    {
        using var interruption = new Interruption();
        // Not disposed: the command flushes them, and says so when that fails.
        return CommandLine.Run(args, new Surroundings(Utf8(Console.OpenStandardOutput(), 2 * RowBlocks.Size), Utf8(Console.OpenStandardError(), 1024))
        {
            OutIsTerminal = !Console.IsOutputRedirected,
            ErrorIsTerminal = !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") != "dumb",
            TerminalWidth = Width(),
            Variable = Environment.GetEnvironmentVariable,
            Listen = interruption.Listen,
        });
    }

    // Output is UTF-8 whatever the locale: the same input gives the same bytes. The buffer is large enough that a block of rows
    // goes out in one piece, which a pipe then takes whole or not at all.
    private static StreamWriter Utf8(Stream stream, int characters) => new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), characters) { AutoFlush = false };

    private static int Width()
    {
        if (Console.IsOutputRedirected) return 80;
        try
        {
            return Math.Clamp(Console.WindowWidth, 40, 200);
        }
        catch (IOException)
        {
            return 80;
        }
    }
}
