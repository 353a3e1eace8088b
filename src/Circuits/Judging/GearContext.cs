using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Changes;
using Circuits.Judging.Conditions;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>What a rule sees of one gear.</summary>
/// <param name="Index">The gear's number.</param>
/// <param name="Solved">The gear, solved.</param>
/// <param name="Report">What has been found out about it.</param>
/// <param name="Reference">The same gear's reports in the nearest matched sets, with their states.</param>
internal sealed record GearContext(
    int Index, SolvedGear Solved, GearReport Report, ImmutableArray<ReferenceGear> Reference)
{
    public string Gear => Solved.Gear.Name;

    /// <summary>The static answer, which says what is open.</summary>
    public GearSolution Solution => Solved.Solution;

    /// <summary>The same with the pressures of the condition that decides, which are those told.</summary>
    public GearSolution Shown { get; init; } = Solved.Solution;

    /// <summary>The opening that differs most from the matched set's at the condition that decides; worked out when it is asked for. Null where none does.</summary>
    public Lazy<RelatedPlace?> DiffersMost { get; init; } = new((RelatedPlace?)null);

    public Network Network => Solution.Network;

    /// <summary>Whether the assembly is itself the matched set that it is held against.</summary>
    public bool IsMatched => Network.Assembly.Matched is not null;

    /// <summary>The condition that decides, as <c> at idle-hot</c>; empty for the static answer.</summary>
    public Phrase AtCondition => Report.DecidedAt is { } decided ? Phrase.Of($" at {decided.At}") : Phrase.Empty;

    /// <summary>What to add where the matched set is as bad at that condition: the fault is the unit's own.</summary>
    public Phrase Shared => Report.DecidedAt is { SharedByMatched: true } && !IsMatched ? Phrase.Of($"; the matched set has it too") : Phrase.Empty;

    /// <summary>Where the pump cannot hold line pressure at the condition that decides: what is left of it; else null.</summary>
    public Phrase? LineLow => Report.DecidedAt is { } decided && decided.LineOff(Network.Assembly.Unit.Thresholds) == LineState.Low
        ? Phrase.Of($"line has {new Pressure(decided.LineKilopascals)}, {new Pressure(decided.MatchedLineKilopascals!.Value)} with the matched set")
        : null;

    /// <summary>What to say of line pressure that is too low or too high: of the condition where it is furthest off, since one line a gear is enough. Null where it is not.</summary>
    /// <param name="state">Too low or too high.</param>
    public Phrase? LineOff(LineState state)
    {
        var worst = Report.Conditions.Where(condition => condition.LineOff(Network.Assembly.Unit.Thresholds) == state)
            .MaxBy(condition => Math.Abs(condition.LineKilopascals - condition.MatchedLineKilopascals!.Value) / condition.MatchedLineKilopascals!.Value);
        return worst is null ? null
            : Phrase.Of($"line has {new Pressure(worst.LineKilopascals)}{GearMention.In(Gear)} at {worst.At}, {new Pressure(worst.MatchedLineKilopascals!.Value)} with the matched set");
    }

    /// <summary>Where the file writes of what line pressure comes from: its regulator, else the pump.</summary>
    public Place LinePlace => Network.Regulators.FirstOrDefault(regulator => regulator.Kind == RegulatorKind.Line)?.Place ?? Network.Assembly.Unit.Pump!.Place;

    public ClutchElement Element(string clutch) => Network.Clutches.First(candidate => candidate.Clutch.Name == clutch);
}

/// <summary>A gear of a matched set.</summary>
/// <param name="Set">The set's name.</param>
/// <param name="Solution">Its state.</param>
/// <param name="Report">What has been found out about it.</param>
internal sealed record ReferenceGear(string Set, GearSolution Solution, GearReport Report);

/// <summary>Where a clutch is metered, whether it is on or off.</summary>
/// <param name="Supply">The narrowest opening on its way from a source; null without one.</param>
/// <param name="Sump">The narrowest opening on its way to sump; null without one.</param>
internal readonly record struct ClutchControls(Control? Supply, Control? Sump);

/// <summary>A gear of the matched sets that an assembly is held against.</summary>
/// <param name="Gears">That gear of each.</param>
/// <param name="Basis">What foreign oil is told by.</param>
internal sealed record ReferenceBasis(ImmutableArray<ReferenceGear> Gears, CrossFeeds.Basis Basis);

/// <summary>What a rule sees of a whole assembly.</summary>
/// <param name="Solved">The assembly, solved.</param>
/// <param name="Gears">Its gears.</param>
/// <param name="Matched">Every matched set's gears, whether near or not; for a matched set, the others.</param>
internal sealed record AssemblyContext(
    SolvedAssembly Solved, ImmutableArray<GearContext> Gears, ImmutableArray<ImmutableArray<GearReport>> Matched)
{
    /// <summary>Its changes of gear; empty where they were not timed.</summary>
    public ImmutableArray<ChangeReport> Changes { get; init; } = [];
}

/// <summary>A rule that looks at one gear at a time.</summary>
internal abstract class GearRule
{
    /// <summary>The rule and its explanation.</summary>
    public abstract Rule Rule { get; }

    /// <summary>Looks at a gear.</summary>
    /// <param name="gear">The gear.</param>
    /// <param name="found">Takes what it finds.</param>
    public abstract void Find(GearContext gear, List<Finding> found);
}

/// <summary>A rule that looks at all gears of an assembly together.</summary>
internal abstract class AssemblyRule
{
    /// <summary>The rule and its explanation.</summary>
    public abstract Rule Rule { get; }

    /// <summary>Looks at an assembly.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="found">Takes what it finds.</param>
    public abstract void Find(AssemblyContext assembly, List<Finding> found);
}
