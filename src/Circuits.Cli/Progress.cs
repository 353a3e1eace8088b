using System.Diagnostics;
using System.Globalization;

namespace Circuits.Cli;

/// <summary>A line on the terminal that says how far the work is, and goes when it is done.</summary>
/// <param name="tell">Writes to the terminal; null where nobody watches.</param>
/// <param name="total">How much there is to do.</param>
/// <param name="noun">What is counted, in the plural.</param>
internal sealed class Progress(Action<string>? tell, long total, string noun) : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);

    private readonly Stopwatch since = new();
    private int width;

    /// <summary>Says how much is done.</summary>
    public void Show(long done)
    {
        if (tell is null || (since.IsRunning && since.Elapsed < Pause)) return;
        since.Restart();
        var percent = total == 0 ? 100 : (int)((Int128)done * 100 / total);
        var line = string.Create(CultureInfo.InvariantCulture, $"{percent} % of {total} {noun}");
        tell("\r" + line.PadRight(width));
        width = line.Length;
    }

    /// <summary>Takes the line back.</summary>
    public void Dispose()
    {
        if (tell is null || width == 0) return;
        tell("\r" + new string(' ', width) + "\r");
        width = 0;
    }
}
