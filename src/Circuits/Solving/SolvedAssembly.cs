using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>A gear solved from another start.</summary>
/// <param name="Start">The start, in words: <c>from rest</c>, <c>from 2</c>.</param>
/// <param name="Solution">Where it leads.</param>
public sealed record OtherStart(string Start, GearSolution Solution);

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
        var run = new Run(plan);
        return new SolvedAssembly(plan.Network, run.SolveAll());
    }

    /// <summary>A compiled network's gears by their number, each solved only once it is asked for, from the one start that counts.</summary>
    /// <param name="plan">The compiled network.</param>
    public static Func<int, GearSolution> OneByOne(Plan plan)
    {
        var run = new Run(plan);
        return run.Answer;
    }

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

    private sealed class Run(Plan plan)
    {
        private readonly GearSolver solver = new(plan);
        private readonly ImmutableArray<GearState> gears = plan.Network.Assembly.Unit.Gears;
        private readonly Dictionary<string, GearSolution> answers = [];

        public ImmutableArray<SolvedGear> SolveAll()
        {
            foreach (var gear in gears) Answer(gear, []);
            return [.. gears.Select((gear, index) => new SolvedGear(gear, answers[gear.Name], [.. OtherStarts(gear, index)]))];
        }

        public GearSolution Answer(int gear) => Answer(gears[gear], []);

        /// <summary>A gear that comes after another starts from that one's answer; a circle of them starts at rest.</summary>
        private GearSolution Answer(GearState gear, HashSet<string> asked)
        {
            if (answers.TryGetValue(gear.Name, out var known)) return known;
            var inputs = GearInputs.Of(plan.Network, gear);
            var before = gear.After is { } after && asked.Add(gear.Name) ? gears.FirstOrDefault(other => other.Name == after.Name) : null;
            var answer = before is null ? solver.FromRest(inputs) : solver.FromGear(inputs, Answer(before, asked));
            return answers[gear.Name] = answer;
        }

        private IEnumerable<OtherStart> OtherStarts(GearState gear, int index)
        {
            var answer = answers[gear.Name];
            if (gear.After is not null)
            {
                var rest = solver.FromRest(answer.Inputs);
                if (Differ(answer, rest)) yield return new OtherStart("from rest", rest);
            }

            foreach (var neighbour in new[] { index - 1, index + 1 })
            {
                if (neighbour < 0 || neighbour >= gears.Length || gears[neighbour].Name == gear.After?.Name) continue;
                var other = solver.FromGear(answer.Inputs, answers[gears[neighbour].Name], answer.Settled);
                if (Differ(answer, other)) yield return new OtherStart($"from {gears[neighbour].Name}", other);
            }
        }
    }
}
