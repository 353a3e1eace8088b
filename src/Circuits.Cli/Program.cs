using Circuits.Reading;

namespace Circuits.Cli;

internal static class Program
{
    private static int Main(string[] args)
    {
        var streams = new StandardStreams();
        using var outputs = new OutputFiles(new InputFiles());
        using var interruption = new Interruption(outputs);
        // Not disposed: the command flushes them, and says so when that fails. The buffer is large enough that a block of rows goes out in one
        // piece, which a pipe then takes whole or not at all.
        return CommandLine.Run(args, new Surroundings(streams.Out(2 * RowBlocks.Size), streams.Diagnostics(1024))
        {
            OutIsTerminal = !Console.IsOutputRedirected,
            ErrorIsTerminal = !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") != "dumb",
            TerminalWidth = Width(),
            Variable = Environment.GetEnvironmentVariable,
            Listen = interruption.Listen,
            InterruptedExit = () => interruption.Exit,
            Outputs = outputs,
        });
    }

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
