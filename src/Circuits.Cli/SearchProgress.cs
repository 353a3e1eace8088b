using System.Diagnostics;
using System.Globalization;

namespace Circuits.Cli;

/// <summary>A line on the terminal that counts what a search has looked at, and goes when it is done.</summary>
/// <param name="tell">Writes to the terminal; null where nobody watches.</param>
/// <param name="noun">What is counted, in the plural.</param>
internal sealed class SearchProgress(Action<string>? tell, string noun) : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);

    private readonly Stopwatch since = Stopwatch.StartNew();
    private int width;

    /// <summary>Says how much is done.</summary>
    public void Show(int done)
    {
        if (tell is null || since.Elapsed < Pause) return;
        since.Restart();
        var line = string.Create(CultureInfo.InvariantCulture, $"{done} {noun}");
        tell("\r" + line.PadRight(width));
        width = line.Length;
    }

    /// <summary>Takes the line back.</summary>
    public void Dispose()
    {
        if (width > 0) tell?.Invoke("\r" + new string(' ', width) + "\r");
        width = 0;
    }
}
