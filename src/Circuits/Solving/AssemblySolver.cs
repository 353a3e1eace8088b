using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Solving;

/// <summary>Solves the gears of an assembly that are asked for, each once. Not for use by several threads at once.</summary>
/// <param name="plan">The compiled network.</param>
/// <param name="inputs">What each gear sets.</param>
internal sealed class AssemblySolver(Plan plan, ImmutableArray<GearInputs> inputs)
{
    private GearSolver? working;
    private readonly ImmutableArray<GearState> gears = plan.Network.Assembly.Unit.Gears;
    private readonly GearSolution?[] answers = new GearSolution?[inputs.Length];

    private GearSolver Solver => working ??= new GearSolver(plan);

    /// <summary>Lets go of what solving works with, which is much more than the answers. Further gears can be asked for.</summary>
    public void Rest() => working = null;

    /// <summary>A gear's answer, and where other starts lead.</summary>
    /// <param name="gear">The gear's number.</param>
    public SolvedGear Solve(int gear)
    {
        var answer = Answer(gear, []);
        return new SolvedGear(gears[gear], answer, [.. OtherStarts(gear, answer)]);
    }

    /// <summary>A gear's answer, from the one start that counts.</summary>
    /// <param name="gear">The gear's number.</param>
    public GearSolution Answer(int gear) => Answer(gear, []);

    /// <summary>The gear that another comes after, by number; -1 for none.</summary>
    /// <param name="gears">The gears, in the order of the file.</param>
    /// <param name="gear">The gear's number.</param>
    public static int Before(ImmutableArray<GearState> gears, int gear)
    {
        if (gears[gear].After is not { } after) return -1;
        for (var i = 0; i < gears.Length; i++)
        {
            if (gears[i].Name == after.Name) return i;
        }

        return -1;
    }

    /// <summary>A gear that comes after another starts from that one's answer; a circle of them starts at rest.</summary>
    private GearSolution Answer(int gear, HashSet<int> asked)
    {
        if (answers[gear] is { } known) return known;
        var before = asked.Add(gear) ? Before(gears, gear) : -1;
        var answer = before < 0 ? Solver.FromRest(inputs[gear]) : Solver.FromGear(inputs[gear], Answer(before, asked));
        return answers[gear] = answer;
    }

    private IEnumerable<OtherStart> OtherStarts(int gear, GearSolution answer)
    {
        if (gears[gear].After is not null)
        {
            var rest = Solver.FromRest(answer.Inputs);
            if (SolvedAssembly.Differ(answer, rest)) yield return new OtherStart(null, rest);
        }

        foreach (var neighbour in new[] { gear - 1, gear + 1 })
        {
            if (neighbour < 0 || neighbour >= gears.Length || gears[neighbour].Name == gears[gear].After?.Name) continue;
            var other = Solver.FromGear(answer.Inputs, Answer(neighbour, []), answer.Settled, answer);
            if (SolvedAssembly.Differ(answer, other)) yield return new OtherStart(gears[neighbour].Name, other);
        }
    }
}
