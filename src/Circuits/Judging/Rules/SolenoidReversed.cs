using Circuits.Findings;
using Circuits.Solving;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>solenoid-reversed</c>.</summary>
internal sealed class SolenoidReversed : AssemblyRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "solenoid-reversed", Severity.Error,
        Meaning: "In a matched set, what a solenoid takes from has no supply in any gear in which it is shut, and what it feeds has: feed and out are exchanged.",
        OnTheRoad: "Whenever the solenoid opens it would drain its own supply.",
        Example: "shift: {feed: signal, out: line}: line is supplied while the solenoid is shut, signal never is.",
        Mend: "Exchange feed and out.");

    /// <inheritdoc/>
    public override void Find(AssemblyContext assembly, List<Finding> found)
    {
        var network = assembly.Solved.Network;
        if (network.Assembly.Matched is null) return;
        for (var i = 0; i < network.Switches.Length; i++)
        {
            var (name, source) = network.Switches[i];
            var (feed, outlet) = (network.FindNode(source.Feed.Name), network.FindNode(source.Out.Name));
            var shut = assembly.Gears.Where(gear => !gear.Solution.Inputs.Fed[i]).Select(gear => gear.Solution).ToList();
            if (feed < 0 || outlet < 0 || shut.Exists(gear => IsSupplied(gear, feed)) || !shut.Exists(gear => IsSupplied(gear, outlet))) continue;
            found.Add(Rule.At(source.Place, $"{name}: {source.Feed.Name}, which it takes from, has no supply while it is shut, and {source.Out.Name}, which it feeds, has", "Exchange feed and out."));
        }
    }

    private static bool IsSupplied(GearSolution gear, int node) => gear.OilAt(node) is OilState.Supply or OilState.Between;
}
