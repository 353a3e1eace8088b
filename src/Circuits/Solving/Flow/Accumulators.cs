using Circuits.Networks;
using Circuits.Quantities;

namespace Circuits.Solving.Flow;

internal sealed partial class PistonDrafter
{
    public void Accumulators(Network network)
    {
        foreach (var accumulator in network.Accumulators)
        {
            if (AccumulatorPiston(accumulator) is { } piston) accumulators.Add(piston);
        }
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
            assume(new Assumption($"assumed {new SpringRate(rate)} for the spring of accumulator {element.Name}: no rate given", element.Source.Place));
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
}
