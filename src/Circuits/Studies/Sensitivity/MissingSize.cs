using Circuits.Model;

namespace Circuits.Studies.Sensitivity;

/// <summary>A size that a file does not give, so that one was assumed.</summary>
/// <param name="Name">What it is of: <c>return spring of clutch high</c>.</param>
/// <param name="Assumed">What was assumed: <c>480 N</c>.</param>
/// <param name="Less">The less and the more that are tried, in words: <c>half</c>.</param>
/// <param name="More">The more: <c>double</c>.</param>
/// <param name="Vary">The assembly with less, for -1, or more, for 1.</param>
internal sealed record MissingSize(string Name, string Assumed, string Less, string More, Func<int, Assembly> Vary);
