using Circuits.Laws;
using Circuits.Networks;

namespace Circuits.Solving.Flow;

internal sealed partial class FlowDrafter
{
    public void Regulators(Network network)
    {
        for (var i = 0; i < network.Regulators.Length; i++)
        {
            var regulator = network.Regulators[i];
            var signals = Signals(regulator).Nodes;
            if (regulator.Kind == RegulatorKind.Bypass)
            {
                AddBypass(regulator, i);
                continue;
            }

            if (regulator.Kind is RegulatorKind.Line or RegulatorKind.Relief)
            {
                int[] outlets = regulator.Spills.IsEmpty ? [0] : [.. regulator.Spills];
                for (var k = 0; k < outlets.Length; k++)
                    Add(FlowKind.SpillPort, regulator.Out, outlets[k], regulator.SquareMillimetres, i, k, -1, signals);
                continue;
            }

            if (regulator.From >= 0) Add(FlowKind.FeedPort, regulator.From, regulator.Out, regulator.SquareMillimetres, i, 0, -1, signals);
            if (regulator.To >= 0) Add(FlowKind.DrainPort, regulator.Out, regulator.To, regulator.SquareMillimetres, i, 0, -1, signals);
        }
    }

    private static (int[] Nodes, double[] Factors) Signals(RegulatorElement regulator)
    {
        var signals = regulator.SetBy.Where(signal => signal.Node > 0).ToList();
        return ([.. signals.Select(signal => signal.Node)], [.. signals.Select(signal => signal.Factor)]);
    }

    private static FlowRegulator RegulatorOf(RegulatorElement regulator, Func<IEnumerable<int>, int[]> byCell)
    {
        var (nodes, factors) = Signals(regulator);
        var spills = regulator.Kind is RegulatorKind.Line or RegulatorKind.Relief;
        return new FlowRegulator(
            byCell([regulator.Out])[0], regulator.Spring * Pascals, byCell(nodes), factors, regulator.Kind == RegulatorKind.Solenoid,
            (spills ? FlowDefaults.SpillBand : FlowDefaults.RegulatorBand) * Pascals)
        { Spool = SpoolOf(regulator) };
    }

    private static RegulatorSizes? SpoolOf(RegulatorElement regulator) => regulator.Spool is { } spool
        ? new RegulatorSizes(
            spool.Land.SquareMillimetres * SquareMetres, spool.Rate.NewtonsPerMillimetre * 1e3,
            regulator.SquareMillimetres * SquareMetres / (spool.Travel.Millimetres / 1e3), spool.Travel.Millimetres / 1e3, spool.Overlap.Millimetres / 1e3)
        : null;
}
