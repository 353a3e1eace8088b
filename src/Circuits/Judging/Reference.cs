using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>The matched sets that an assembly is held against: those that share most parts with it.</summary>
/// <param name="sets">The matched sets, solved; empty when the file declares none.</param>
internal sealed class Reference(ImmutableArray<SolvedAssembly> sets)
{
    // Threads that solve faults share one reference.
    private readonly Lock working = new();
    private readonly Dictionary<(string Clutch, int Gear), double?> pressures = [];
    private readonly Dictionary<int, CrossFeeds.Basis> bases = [];

    /// <summary>The matched sets, solved; empty when the file declares none.</summary>
    public ImmutableArray<SolvedAssembly> Sets { get; } = sets;

    /// <summary>Names of the matched sets.</summary>
    public ImmutableArray<string> Names => [.. Sets.Select(set => set.Network.Assembly.Matched!)];

    /// <summary>The states of one gear in each set.</summary>
    /// <param name="gear">The gear's number.</param>
    public ImmutableArray<GearSolution> In(int gear) => [.. Sets.Select(set => set.Gears[gear].Solution)];

    /// <summary>
    /// The states that show which way a clutch's oil ought to take in a gear: that gear in each set. Where none of them feeds it, the other gears of
    /// the assembly itself that do: a clutch that comes on in one gear is fed the same way in the next, and what parts it there is what stands otherwise.
    /// </summary>
    /// <param name="clutch">The clutch.</param>
    /// <param name="gear">The gear's number.</param>
    /// <param name="here">The assembly.</param>
    public ImmutableArray<GearSolution> WaysOf(ClutchElement clutch, int gear, SolvedAssembly here)
    {
        var states = In(gear);
        if (clutch.Chamber < 0 || states.Any(state => Feeds(state, state.Network.Clutches.First(other => other.Clutch.Name == clutch.Clutch.Name)))) return states;
        ImmutableArray<GearSolution> others = [.. here.Gears.Where((other, index) => index != gear && Charts.Applies(other.Gear, clutch.Clutch.Name) && Feeds(other.Solution, clutch)).Select(other => other.Solution)];
        return others.IsEmpty ? states : others;
    }

    private static bool Feeds(GearSolution state, ClutchElement clutch) => NetPressure.Of(clutch, state) > state.Line / 2;

    /// <summary>
    /// Pressure at which a clutch holds in a gear: what the first set gives it there when charted, else the least that
    /// it gives it in a gear where it is charted. Null without a matched set or a chart.
    /// </summary>
    public double? ClutchPressure(string clutch, int gear)
    {
        if (Sets.IsEmpty) return null;
        lock (working)
        {
            if (!pressures.TryGetValue((clutch, gear), out var pressure)) pressures[(clutch, gear)] = pressure = FindClutchPressure(clutch, gear);
            return pressure;
        }
    }

    /// <summary>What foreign oil of a gear is told by.</summary>
    /// <param name="gear">The gear's number.</param>
    public CrossFeeds.Basis BasisOf(int gear)
    {
        lock (working)
        {
            if (!bases.TryGetValue(gear, out var basis)) bases[gear] = basis = new CrossFeeds.Basis(In(gear));
            return basis;
        }
    }

    private double? FindClutchPressure(string clutch, int gear)
    {
        var set = Sets[0];
        var element = set.Network.Clutches.First(candidate => candidate.Clutch.Name == clutch);
        var charted = set.Gears.Where(solved => Charts.Applies(solved.Gear, clutch)).ToList();
        if (Charts.Applies(set.Gears[gear].Gear, clutch)) return NetPressure.Of(element, set.Gears[gear].Solution);
        return charted.Count == 0 ? null : charted.Min(solved => NetPressure.Of(element, solved.Solution));
    }
}

/// <summary>What the apply chart says.</summary>
internal static class Charts
{
    public static bool Applies(GearState gear, string clutch)
    {
        foreach (var use in gear.Apply)
        {
            if (use.Name == clutch) return true;
        }

        return false;
    }
}

/// <summary>A clutch's pressure as its plates feel it.</summary>
internal static class NetPressure
{
    /// <summary>Apply pressure less what release oil takes off, kPa, at least 0.</summary>
    public static double Of(ClutchElement clutch, GearSolution solution) =>
        Math.Max(0, solution.PressureAt(clutch.Chamber) - (clutch.ReleaseShare * solution.PressureAt(clutch.ReleaseChamber)));
}
