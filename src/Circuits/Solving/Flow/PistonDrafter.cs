using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving.Flow;

/// <summary>What a network's clutches, accumulators and passages hold.</summary>
/// <param name="network">The network.</param>
/// <param name="cellOf">The cell of each node.</param>
/// <param name="assume">Takes a sentence and an element for every size that had to be assumed.</param>
internal sealed class PistonDrafter(Network network, int[] cellOf, Action<Assumption> assume)
{
    public IEnumerable<FlowPiston> Pistons()
    {
        for (var i = 0; i < network.Clutches.Length; i++)
        {
            if (network.Clutches[i].Chamber >= 0) yield return ClutchPiston(network.Clutches[i], i);
        }

        foreach (var accumulator in network.Accumulators)
        {
            if (AccumulatorPiston(accumulator) is { } piston) yield return piston;
        }
    }

    /// <summary>Oil in each cell with pistons at rest, m3.</summary>
    public double[] Volumes(int cells)
    {
        var volumes = new double[cells];
        foreach (var node in network.Nodes)
        {
            if (node.Kind != NodeKind.Chamber) volumes[cellOf[node.Index]] += 1e-6 * FlowDefaults.PassageVolume;
        }

        foreach (var (part, revision) in network.Assembly.Unit.Parts.Zip(network.Assembly.Revisions))
        {
            foreach (var passage in revision.Passages)
            {
                var node = network.FindNode(new PassageName(part.Name, passage.Name));
                if (node > 0 && Given(passage) is { } millilitres) volumes[cellOf[node]] += 1e-6 * (millilitres - FlowDefaults.PassageVolume);
            }
        }

        // The arm of a track has a share too small to matter, but not none.
        for (var cell = 1; cell < cells; cell++) volumes[cell] = Math.Max(volumes[cell], 1e-7);
        return volumes;
    }

    private static double? Given(Passage passage) =>
        passage.Volume?.Millilitres
        ?? (passage is { Length: { } length, Section: { } section } ? length.Millimetres * section.SquareMillimetres / 1000 : null);

    private FlowPiston ClutchPiston(ClutchElement element, int number)
    {
        var clutch = element.Clutch;
        var sizes = new ClutchSizes(clutch);
        Missing(clutch.Area is null, clutch, "piston area", sizes.Area, "mm2");
        Missing(clutch.Stroke is null && clutch.Fill is null, clutch, "fill volume", sizes.Fill, "mL");
        Missing(clutch.ReturnSpring is null, clutch, "return spring", sizes.Spring, "N");
        Missing(clutch.Rate is null, clutch, "return spring rate", sizes.Rate, "N/mm");
        Missing(clutch.PackRate is null, clutch, "stiffness of the plates", sizes.PackRate, "N/mm");
        return new FlowPiston
        {
            Name = clutch.Name,
            Apply = cellOf[element.Chamber],
            Release = element.ReleaseChamber < 0 ? 0 : cellOf[element.ReleaseChamber],
            ApplyArea = sizes.Area * 1e-6,
            ReleaseArea = element.ReleaseChamber < 0 ? 0 : sizes.Area * element.ReleaseShare * 1e-6,
            Preload = sizes.Spring,
            Rate = Math.Max(sizes.Rate, FlowDefaults.LeastRate) * 1e3,
            Stroke = sizes.Stroke / 1e3,
            PackRate = Math.Max(sizes.PackRate, FlowDefaults.LeastRate) * 1e3,
            Clutch = number,
        };
    }

    private FlowPiston? AccumulatorPiston(AccumulatorElement element)
    {
        if (element.Source is not { Area: { } area, Stroke: { } stroke })
        {
            assume(new Assumption($"assumed that accumulator {element.Name} takes up nothing: no area and stroke given", element.Source.Place));
            return null;
        }

        var preload = element.Source.Spring?.Newtons ?? 0;
        var rate = element.Source.Rate?.NewtonsPerMillimetre ?? (FlowDefaults.ReturnRise * Math.Max(preload, 1) / stroke.Millimetres);
        if (element.Source.Rate is null)
            assume(new Assumption($"assumed {rate:0.#} N/mm for the spring of accumulator {element.Name}: no rate given", element.Source.Place));
        var back = element.Source.Back is { } use ? Math.Max(network.FindNode(use.Name), 0) : 0;
        return new FlowPiston
        {
            Name = element.Name,
            Apply = cellOf[element.Node],
            Release = cellOf[back],
            ApplyArea = area.SquareMillimetres * 1e-6,
            ReleaseArea = back > 0 ? area.SquareMillimetres * 1e-6 : 0,
            Preload = preload,
            Rate = Math.Max(rate, FlowDefaults.LeastRate) * 1e3,
            Stroke = stroke.Millimetres / 1e3,
        };
    }

    private void Missing(bool isMissing, Clutch clutch, string what, double value, string unit)
    {
        if (isMissing)
            assume(new Assumption(FormattableString.Invariant($"assumed {value:0.#} {unit} for the {what} of clutch {clutch.Name}: none given"), clutch.Place));
    }
}
