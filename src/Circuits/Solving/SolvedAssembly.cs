using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>A gear solved from another start.</summary>
/// <param name="From">The gear that it was reached from; null for rest.</param>
/// <param name="Solution">Where it leads.</param>
public sealed record OtherStart(string? From, GearSolution Solution);

/// <summary>A gear of an assembly, solved.</summary>
/// <param name="Gear">The gear.</param>
/// <param name="Solution">The answer: from rest, or from the gear that this one comes after.</param>
/// <param name="Others">Where other starts lead, when that is somewhere else.</param>
public sealed record SolvedGear(GearState Gear, GearSolution Solution, ImmutableArray<OtherStart> Others);

/// <summary>An assembly with its network and every gear solved. Immutable.</summary>
/// <param name="Network">The network.</param>
/// <param name="Gears">Its gears, in the order of the file.</param>
public sealed record SolvedAssembly(Network Network, ImmutableArray<SolvedGear> Gears)
{
    /// <summary>Builds the network of an assembly and solves every gear.</summary>
    /// <param name="assembly">The assembly.</param>
    public static SolvedAssembly Of(Assembly assembly) => Of(Plan.Of(NetworkBuilder.Build(assembly)));

    /// <summary>Solves every gear of a compiled network.</summary>
    /// <param name="plan">The compiled network.</param>
    public static SolvedAssembly Of(Plan plan)
    {
        var gears = plan.Network.Assembly.Unit.Gears;
        var solver = new AssemblySolver(plan, [.. gears.Select(gear => GearInputs.Of(plan.Network, gear))]);
        var solved = ImmutableArray.CreateBuilder<SolvedGear>(gears.Length);
        for (var gear = 0; gear < gears.Length; gear++) solved.Add(solver.Solve(gear));
        return new SolvedAssembly(plan.Network, solved.MoveToImmutable());
    }

    /// <summary>A compiled network's gears by their number, each solved only once it is asked for, from the one start that counts.</summary>
    /// <param name="plan">The compiled network.</param>
    public static Func<int, GearSolution> OneByOne(Plan plan) =>
        new AssemblySolver(plan, [.. plan.Network.Assembly.Unit.Gears.Select(gear => GearInputs.Of(plan.Network, gear))]).Answer;

    /// <summary>Whether two states differ in what matters: spools, clutch pressures, and whether they settle.</summary>
    /// <param name="a">One state.</param>
    /// <param name="b">Another of the same network.</param>
    public static bool Differ(GearSolution a, GearSolution b)
    {
        // Two phases of one circle are no difference.
        if (!a.Settled && !b.Settled) return false;
        if (a.Settled != b.Settled || !a.Moved.SequenceEqual(b.Moved)) return true;
        return a.Network.Clutches.Any(clutch =>
            AreApart(a.PressureAt(clutch.Chamber), b.PressureAt(clutch.Chamber))
            || AreApart(a.PressureAt(clutch.ReleaseChamber), b.PressureAt(clutch.ReleaseChamber)));
    }

    /// <summary>Whether two pressures, kPa, differ by an amount that matters: 1 kPa, and one part in a hundred.</summary>
    /// <param name="a">One pressure.</param>
    /// <param name="b">The other.</param>
    public static bool AreApart(double a, double b) => Math.Abs(a - b) > Math.Max(1, 0.01 * Math.Max(a, b));
}
