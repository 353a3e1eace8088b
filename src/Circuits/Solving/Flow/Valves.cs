using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;

namespace Circuits.Solving.Flow;

internal sealed partial class FlowDrafter
{
    private static (int[] Nodes, double[] Factors) Forces(SpoolElement spool)
    {
        var moving = spool.MovedBy.Where(signal => signal.Node > 0).ToList();
        var holding = spool.HeldBy.Where(signal => signal.Node > 0).ToList();
        return (
            [.. moving.Concat(holding).Select(signal => signal.Node)],
            [.. moving.Select(signal => signal.Factor * PerPascal), .. holding.Select(signal => -signal.Factor * PerPascal)]);
    }

    private FlowSpool SpoolOf(SpoolElement spool, Func<IEnumerable<int>, int[]> byCell)
    {
        // Nothing moves one that has stuck; a force without end says the same.
        if (spool.Stuck is { } stuck)
            return new FlowSpool([], [], stuck == StuckAt.Moved ? -FlowDefaults.StuckForce : FlowDefaults.StuckForce, FlowDefaults.LeastSpoolForce);
        var (nodes, factors) = Forces(spool);
        var rate = spool.Source.HeldBy.OfType<SpoolForce.Spring>().Concat(spool.Source.MovedBy.OfType<SpoolForce.Spring>())
            .Sum(spring => spring.Rate?.NewtonsPerMillimetre ?? 0);
        var given = rate * (spool.Source.Travel?.Millimetres ?? 0);
        if (given <= 0)
        {
            assumptions.Add(new Assumption(
                $"assumed that valve {spool.Name} travels over {new Share(FlowDefaults.SpoolRange)} of its spring's force: no spring rate and travel given",
                spool.Source.Place));
        }

        var range = given > 0 ? given : FlowDefaults.SpoolRange * Math.Abs(spool.Springs);
        return new FlowSpool(byCell(nodes), factors, spool.Springs, Math.Max(range, FlowDefaults.LeastSpoolForce))
        {
            Lap = spool.Source is { Travel: { } travel, Overlap: { } overlap } ? (travel.Millimetres / 1e3, overlap.Millimetres / 1e3) : null,
        };
    }
}
