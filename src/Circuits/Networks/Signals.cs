using System.Collections.Immutable;

namespace Circuits.Networks;

/// <summary>A pressure that acts on a land or sets a regulator.</summary>
/// <param name="Node">Where it comes from; -1 when this assembly lacks that passage.</param>
/// <param name="Factor">Newtons per kilopascal for a spool, kilopascals per kilopascal for a regulator.</param>
public readonly record struct Signal(int Node, double Factor)
{
    internal static ImmutableArray<Signal> Renumbered(ImmutableArray<Signal> signals, NewNumbers numbers) =>
        [.. signals.Select(signal => new Signal(numbers[signal.Node], signal.Factor))];
}
