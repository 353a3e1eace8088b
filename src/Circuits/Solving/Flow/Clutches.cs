using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;

namespace Circuits.Solving.Flow;

internal sealed partial class PistonDrafter
{
    public void Clutches(Network network)
    {
        for (var i = 0; i < network.Clutches.Length; i++)
        {
            if (network.Clutches[i].Chamber < 0) continue;
            clutches.Add(ClutchPiston(network.Clutches[i], i));
            if (DeadVolume(network.Clutches[i]) is { } dead) clutches.Add(dead);
        }
    }

    private FlowPiston ClutchPiston(ClutchElement element, int number)
    {
        var clutch = element.Clutch;
        var sizes = new ClutchSizes(clutch);
        Missing(clutch.Area is null, clutch, $"piston area", new Area(sizes.Area));
        Missing(clutch.Stroke is null && clutch.Fill is null, clutch, $"fill volume", new Volume(sizes.Fill));
        Missing(clutch.ReturnSpring is null, clutch, $"return spring", new Force(sizes.Spring));
        Missing(clutch.Rate is null, clutch, $"return spring rate", new SpringRate(sizes.Rate));
        Missing(clutch.PackRate is null, clutch, $"stiffness of the plates", new SpringRate(sizes.PackRate));
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

    /// <summary>
    /// What a clutch takes beyond what its piston sweeps. Off, it runs empty by its own height of oil; it fills again before any pressure is made. So it is a
    /// vessel that the head of a few inches of oil fills.
    /// </summary>
    private FlowPiston? DeadVolume(ClutchElement element)
    {
        var clutch = element.Clutch;
        var sizes = new ClutchSizes(clutch);
        if (!(sizes.DeadVolume > 0)) return null;
        assume(new Assumption(
            $"assumed that {new Volume(sizes.DeadVolume)} of the fill of clutch {clutch.Name}, which its piston does not sweep, run empty while it is off", clutch.Place));
        var area = sizes.Area * 1e-6;
        var stroke = sizes.DeadVolume * 1e-6 / area;
        return new FlowPiston
        {
            Name = $"{clutch.Name}'s dead volume",
            Apply = cellOf[element.Chamber],
            Release = 0,
            ApplyArea = area,
            ReleaseArea = 0,
            Preload = 0,
            Rate = area * FlowDefaults.ChamberHead * 1e3 / stroke,
            Stroke = stroke,
        };
    }

    private void Missing<T>(bool isMissing, Clutch clutch, PhraseBuilder what, T size)
        where T : struct, IQuantity
    {
        if (isMissing) assume(new Assumption($"assumed {size} for the {what.ToPhrase()} of clutch {clutch.Name}: none given", clutch.Place));
    }
}
