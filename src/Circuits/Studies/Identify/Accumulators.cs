using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class ElementTraits
{
    public void Accumulators(int revision)
    {
        foreach (var accumulator in part.Revisions[revision].Accumulators) DeriveAccumulator(part.Name, accumulator, revision, table);
    }

    private static void DeriveAccumulator(string part, Accumulator accumulator, int revision, TraitTable table)
    {
        table.Yes(WithSize(part, TraitKind.Accumulator, accumulator.Name, $"accumulator {accumulator.Name}", false, Means.Look, Means.Caliper), revision);
        table.Size(
            WithSize(part, TraitKind.Accumulator, accumulator.Name, $"accumulator {accumulator.Name}", true, Means.Look, Means.Caliper), revision,
            accumulator.Area is { } area ? new BenchSize(Math.Round(area.EquivalentDiameter, 2), null) : null);
    }
}

internal sealed partial class Unseen
{
    public void Accumulators(Revision revision)
    {
        foreach (var accumulator in revision.Accumulators)
        {
            Add($"accumulator {accumulator.Name}", Join(
            [
                accumulator.At.Name.ToString(), accumulator.Back?.Name.ToString() ?? "", Of(accumulator.Area?.SquareMillimetres),
                Of(accumulator.Spring?.Newtons), Of(accumulator.Rate?.NewtonsPerMillimetre), Of(accumulator.Stroke?.Millimetres),
            ]));
        }
    }
}
