using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Judging.Sizes;

/// <summary>A size that a file does not give, so that one was assumed.</summary>
/// <param name="Name">What it is of: <c>return spring of clutch high</c>.</param>
/// <param name="Assumed">What was assumed: <c>480 N</c>.</param>
/// <param name="Less">The less that is tried: <c>half</c>.</param>
/// <param name="More">The more: <c>double</c>.</param>
/// <param name="Vary">The assembly with less, for -1, or more, for 1.</param>
internal sealed record MissingSize(string Name, Phrase Assumed, Phrase Less, Phrase More, Func<int, Assembly> Vary)
{
    /// <summary>The clutch it is a size of; null for all else.</summary>
    public string? Clutch { get; init; }
}
