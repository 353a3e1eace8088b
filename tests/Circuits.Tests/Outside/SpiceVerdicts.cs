using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Judging.Conditions;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Solving;
using Circuits.Solving.Flow;
using Circuits.Studies.Faults;
using Circuits.Studies.Matrix;
using Circuits.Tests.Solving.Flow;

namespace Circuits.Tests.Outside;

/// <summary>
/// Holds what verdicts rest on against a circuit simulator: line and every clutch's net pressure, as a report tells them at each condition of a gear. Of seeded mixes of
/// the demo units, each with a fault. Within 0.1 % and 0.1 kPa.
/// </summary>
/// <param name="units">The demo units to draw from.</param>
internal sealed class SpiceVerdicts(ImmutableArray<string> units)
{
    private readonly List<UnitJudge> judges = [.. units.Select(name => new UnitJudge(CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!))];
    private int settled;
    private int asked;
    private int several;

    /// <summary>Pressures compared.</summary>
    public int Compared { get; private set; }

    /// <summary>Gears that are not as charted.</summary>
    public int Bad { get; private set; }

    /// <summary>What is apart, a line each.</summary>
    public List<string> Apart { get; } = [];

    /// <summary>What was done.</summary>
    public string Summary => $"{asked} assemblies, {Bad} of their gears not as charted, {Compared} pressures, {Apart.Count} apart; {settled} states settled in time, {several} of them to another steady state that balances as well";

    /// <summary>Draws a mix, a fault and a gear, and compares them.</summary>
    /// <param name="seed">The seed.</param>
    public void Compare(int seed)
    {
        var random = new Random(seed);
        var judge = judges[random.Next(judges.Count)];
        var space = MatrixSpace.Of(judge.Unit)!;
        var assembly = space.At(random.NextInt64(space.Count));
        var broken = FaultLibrary.Of(assembly).ToList();
        assembly = broken[random.Next(broken.Count)].In(assembly);
        var gear = judge.Report(assembly, timed: false).Gears[random.Next(judge.Unit.Gears.Length)];
        asked++;
        Bad += gear.Verdict == Verdict.AsCharted ? 0 : 1;
        var flow = new FlowCase(assembly);
        var start = flow.Static(gear.Gear);
        foreach (var told in gear.Conditions.Where(condition => condition.Verdict != Verdict.DidNotConverge))
        {
            var conditions = FlowConditions.Of(judge.Unit, told.At.Celsius, told.At.RevolutionsPerMinute, []);
            var netlist = new SpiceNetlist(flow.Flow, conditions);
            var apart = Untrue(flow, told, SpiceProgram.Values(SpiceProgram.Run(netlist.Steady(start)).Output)).ToList();
            if (apart.Count > 0)
            {
                // Its iteration found nothing, or another of several steady states: history decides, so it is asked to follow it.
                settled++;
                var values = SpiceProgram.Values(SpiceProgram.Run(netlist.Settling(start, 2)).Output);
                apart = [.. Untrue(flow, told, values)];

                // Oil that is shut in keeps whatever pressure it had: then both answers balance.
                if (apart.Count > 0 && !Unbalanced(flow, start.Inputs, conditions, values).Any())
                {
                    several++;
                    apart.Clear();
                }
            }

            Compared += 1 + told.Clutches.Length;
            Apart.AddRange(apart.Select(fault => $"{seed}: {judge.Unit.Name} {string.Join(' ', assembly.Choice.Select(part => part.Value))} {string.Join(' ', assembly.Changes.Select(change => PhraseWords.Of(change)))}, {gear.Gear} {told.At.Name}: {fault}"));
        }
    }

    /// <summary>Places where the simulator's pressures do not balance in the library, within a thousandth of what the pump gives.</summary>
    internal static IEnumerable<string> Unbalanced(FlowCase flow, GearInputs inputs, FlowConditions conditions, Dictionary<string, double> values)
    {
        flow.Balance.Set(inputs, conditions);
        for (var cell = 1; cell < flow.Flow.Cells; cell++) flow.Balance.Pressure[cell] = 1e3 * values.GetValueOrDefault($"v(c{cell})");
        flow.Balance.Evaluate(withSlopes: false);
        for (var cell = 1; cell < flow.Flow.Cells; cell++)
        {
            var net = Math.Abs(flow.Balance.Net[cell]);
            if (!(net <= 1e-3 * flow.Balance.Pumped)) yield return $"{flow.Flow.Names[cell]}: {net / flow.Balance.Pumped:0.0 %} out of balance";
        }
    }

    private static IEnumerable<string> Untrue(FlowCase flow, ConditionReport told, Dictionary<string, double> values)
    {
        if (!IsNear(told.LineKilopascals, At(flow.Network.Pump))) yield return $"line: {told.LineKilopascals} kPa, simulator {At(flow.Network.Pump)}";
        foreach (var (clutch, report) in flow.Network.Clutches.Zip(told.Clutches))
        {
            var theirs = clutch.Chamber < 0 ? 0 : Math.Max(0, At(clutch.Chamber) - (clutch.ReleaseChamber < 0 ? 0 : clutch.ReleaseShare * At(clutch.ReleaseChamber)));
            if (!IsNear(report.Kilopascals, theirs)) yield return $"{report.Clutch}: {report.Kilopascals} kPa, simulator {theirs}";
        }

        double At(int node) => flow.Flow.CellOf[node] == 0 ? 0 : values.GetValueOrDefault($"v(c{flow.Flow.CellOf[node]})", double.NaN);

        static bool IsNear(double mine, double theirs) => Math.Abs(mine - theirs) <= (1e-3 * Math.Abs(theirs)) + 0.1;
    }
}
