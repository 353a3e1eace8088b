using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Solving;

namespace Circuits.Tests.Properties;

/// <summary>Holds the solver's answers for a unit against the brute-force network.</summary>
internal static class BruteCheck
{
    /// <summary>How near pressures of the two ways must be, kPa and as a fraction.</summary>
    private const double Near = 1e-5;

    /// <summary>Most combinations that are tried one by one for a state that is said never to settle.</summary>
    private const int MostCombinations = 2_000;

    public static string? FirstFault(UnitSpec unit, Func<UnitSpec, ImmutableArray<string>, GearSpec, SolvedGear, string?> check)
    {
        var read = CircuitReader.ReadText(SpecText.Of(unit), "drawn.yaml");
        if (read.Unit is null) return $"not read: {read.Findings[0].Message} at {read.Findings[0].Place}";
        foreach (var choice in unit.Choices)
        {
            var assembly = Assembly.Of(read.Unit, [.. choice.Zip(read.Unit.Parts, (name, part) => part.FindRevision(name)!)]);
            var solved = SolvedAssembly.Of(assembly);
            for (var i = 0; i < unit.Gears.Length; i++)
            {
                if (check(unit, choice, unit.Gears[i], solved.Gears[i]) is { } fault) return $"{fault} ({string.Join(' ', choice)}, {unit.Gears[i].Name})";
            }
        }

        return null;
    }

    public static string? FaultOf(UnitSpec unit, ImmutableArray<string> choice, GearSpec gear, SolvedGear solved)
    {
        var network = BruteNetwork.Of(unit, choice, gear);
        return FaultOf(network, solved.Solution, fromRest: true)
            ?? solved.Others.Select(other => FaultOf(network, other.Solution, fromRest: false)).FirstOrDefault(fault => fault is not null);
    }

    private static string? FaultOf(BruteNetwork network, GearSolution solution, bool fromRest)
    {
        if (!solution.Settled) return null;
        if (StateOf(network, solution) is not { } state) return "other elements: the product has more, fewer or others";
        var pressures = new BrutePressures(network, state);
        var given = new Dictionary<int, double>();
        foreach (var (passage, cell) in network.CellOf)
        {
            var pressure = solution.PressureAt(solution.Network.FindNode(new PassageName(passage.Part, passage.Passage)));
            if (!given.TryAdd(cell, pressure) && Apart(given[cell], pressure)) return $"one cell: {passage} has {pressure} and {given[cell]}";
        }

        var trapped = pressures.Trapped();
        if (fromRest && trapped.Any(cell => given.GetValueOrDefault(cell) != 0)) return "trapped: oil has pressure from rest";
        var imbalance = pressures.Imbalance(cell => given.GetValueOrDefault(cell));
        if (imbalance > Near * Math.Max(1, pressures.Pressure.Max())) return $"imbalance: {imbalance} kPa in {state}";
        if (BruteForce.Faults(network, state, pressures, slack: 0.01, fromRest).FirstOrDefault() is { } fault) return $"state: {fault}";
        return fromRest ? Relaxed(network, state, given) : null;
    }

    /// <summary>The relaxed pressures of the same positions, where the relaxation comes to rest, must be the same.</summary>
    private static string? Relaxed(BruteNetwork network, BruteState state, Dictionary<int, double> given)
    {
        var relaxed = new BrutePressures(network, state);
        if (!relaxed.Relax()) return null;
        foreach (var (cell, pressure) in given)
        {
            if (Apart(pressure, relaxed.Pressure[cell]))
                return $"pressure: {network.CellOf.First(pair => pair.Value == cell).Key} has {pressure}, relaxed {relaxed.Pressure[cell]}, in {state}";
        }

        return null;
    }

    public static string? WrongDespair(UnitSpec unit, ImmutableArray<string> choice, GearSpec gear, SolvedGear solved)
    {
        if (solved.Solution.Settled) return null;
        var network = BruteNetwork.Of(unit, choice, gear);
        if (network.Combinations > MostCombinations) return null;
        return BruteForce.All(network, slack: -0.01).Select(found => $"settles: {found.State} agrees with itself; cycle {string.Join(", ", solved.Solution.Cycle)}").FirstOrDefault();
    }

    private static bool Apart(double a, double b) => Math.Abs(a - b) > Near * Math.Max(100, Math.Max(a, b));

    private static BruteState? StateOf(BruteNetwork network, GearSolution solution)
    {
        var product = solution.Network;
        if (network.Spools.Length != product.Spools.Length || network.Balls.Length != product.Balls.Length || network.Regulators.Length != product.Regulators.Length)
            return null;
        var spools = product.Spools.Select((spool, index) => (spool.Name, index)).ToDictionary();
        var balls = product.Balls.Select((ball, index) => (ball.Name, index)).ToDictionary();
        var regulators = product.Regulators.Select((regulator, index) => (regulator.Name, index)).ToDictionary();
        if (network.Balls.Any(ball => product.Balls[balls[ball.Name]].Seats.Length != ball.Beyond.Length)) return null;
        return new BruteState(
            [.. network.Spools.Select(spool => solution.Moved[spools[spool.Name]])],
            [.. network.Balls.Select(ball => solution.Balls[balls[ball.Name]])],
            [.. network.Regulators.Select(regulator => solution.Modes[regulators[regulator.Name]])]);
    }
}
