using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Networks;

/// <summary>An accumulator.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="Node">The node that fills it.</param>
/// <param name="Millilitres">What it takes up over its stroke.</param>
/// <param name="Source">The model's accumulator.</param>
public sealed record AccumulatorElement(string Name, int Node, double Millilitres, Accumulator Source)
{
    internal AccumulatorElement Renumbered(NewNumbers numbers)
    {
        var (name, node, millilitres, source) = this;
        return new AccumulatorElement(name, numbers[node], millilitres, source);
    }
}

public sealed partial class Network
{
    /// <summary>Accumulators.</summary>
    public required ImmutableArray<AccumulatorElement> Accumulators { get; init; }
}

internal sealed partial class Draft
{
    public List<AccumulatorElement> Accumulators { get; } = [];
}

internal sealed partial class ElementDrafter
{
    public void Accumulators(Owner owner)
    {
        foreach (var accumulator in owner.Revision.Accumulators) AddAccumulator(owner, accumulator);
    }

    private void AddAccumulator(Owner owner, Accumulator accumulator)
    {
        var name = $"{owner.Part.Name}.{accumulator.Name}";
        var node = Resolve(accumulator.At, name, "is filled from");
        if (node < 0) return;

        // Square millimetres times millimetres are microlitres.
        var volume = accumulator is { Area: { } area, Stroke: { } stroke } ? area.SquareMillimetres * stroke.Millimetres / 1000 : 1;
        draft.Accumulators.Add(new AccumulatorElement(name, node, volume, accumulator));
    }
}
