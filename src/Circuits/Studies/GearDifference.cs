using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Solving;

namespace Circuits.Studies;

/// <summary>One gear before and after changes.</summary>
/// <param name="Before">Before.</param>
/// <param name="After">After.</param>
public sealed record GearDifference(GearReport Before, GearReport After)
{
    /// <summary>The gear's name.</summary>
    public string Gear => After.Gear;

    /// <summary>Clutches of which anything differs.</summary>
    public ImmutableArray<ClutchDifference> Clutches { get; } =
        [.. Before.Clutches.Zip(After.Clutches, (one, other) => new ClutchDifference(one, other)).Where(clutch => clutch.Differs)];

    /// <summary>Foreign oil that comes with the changes.</summary>
    public ImmutableArray<CrossFeed> NewCrossFeeds { get; } = Others(Before, After);

    /// <summary>Foreign oil that goes with them.</summary>
    public ImmutableArray<CrossFeed> VanishedCrossFeeds { get; } = Others(After, Before);

    /// <summary>Valves, balls, regulators and solenoids that stand elsewhere, have come or have gone.</summary>
    public ImmutableArray<Difference> Positions { get; } = Differences(
        Before.Positions.Select(position => (Name(position), position.Position)), After.Positions.Select(position => (Name(position), position.Position)));

    /// <summary>Passages whose pressure differs by an amount that matters, or that have come or gone.</summary>
    public ImmutableArray<PressureDifference> Pressures { get; } = PressuresOf(Before, After);

    /// <summary>Whether line pressure differs by an amount that matters.</summary>
    public bool LineDiffers => SolvedAssembly.AreApart(Before.LineKilopascals, After.LineKilopascals);

    /// <summary>Whether the verdict differs.</summary>
    public bool VerdictDiffers => Before.Verdict != After.Verdict;

    /// <summary>Whether the gear depends on history before or after, and not both, or whether it does so otherwise.</summary>
    public bool HistoryDiffers => Before.DependsOnHistory != After.DependsOnHistory || !Before.Histories.SequenceEqual(After.Histories);

    /// <summary>Whether what goes on and off in turn differs, where the gear never settles.</summary>
    public bool CycleDiffers => !Before.Cycle.SequenceEqual(After.Cycle);

    /// <summary>Whether the gear train does something else.</summary>
    public bool DriveDiffers => Before.Drive != After.Drive;

    /// <summary>Whether anything differs.</summary>
    public bool Differs => VerdictDiffers || LineDiffers || HistoryDiffers || CycleDiffers || DriveDiffers || !Clutches.IsEmpty
        || !NewCrossFeeds.IsEmpty || !VanishedCrossFeeds.IsEmpty || !Positions.IsEmpty || !Pressures.IsEmpty;

    private static string Name(PositionReport position) => $"{position.Kind.ToString().ToLowerInvariant()} {position.Element}";

    private static ImmutableArray<CrossFeed> Others(GearReport one, GearReport other) =>
        [.. other.CrossFeeds.Where(feed => one.CrossFeeds.All(known => (known.Into, known.From, known.Through) != (feed.Into, feed.From, feed.Through)))];

    private static ImmutableArray<Difference> Differences(IEnumerable<(string Name, Stand Value)> before, IEnumerable<(string Name, Stand Value)> after)
    {
        var (was, now) = (before.ToDictionary(pair => pair.Name, pair => pair.Value), after.ToDictionary(pair => pair.Name, pair => pair.Value));
        return
        [
            .. was.Keys.Union(now.Keys)
                .Select(name => new Difference(name, was.GetValueOrDefault(name), now.GetValueOrDefault(name)))
                .Where(difference => difference.Before is null ? difference.After is not null : !difference.Before.IsLike(difference.After)),
        ];
    }

    private static ImmutableArray<PressureDifference> PressuresOf(GearReport before, GearReport after)
    {
        var was = before.Pressures.ToDictionary(passage => passage.Passage, passage => passage.Kilopascals);
        var now = after.Pressures.ToDictionary(passage => passage.Passage, passage => passage.Kilopascals);
        return
        [
            .. was.Keys.Union(now.Keys)
                .Select(name => new PressureDifference(name, Find(was, name), Find(now, name)))
                .Where(pair => pair.Before is null || pair.After is null || SolvedAssembly.AreApart(pair.Before.Value, pair.After.Value)),
        ];

        static double? Find(Dictionary<string, double> pressures, string name) => pressures.TryGetValue(name, out var value) ? value : null;
    }
}

/// <summary>Something that stands otherwise.</summary>
/// <param name="Name">What it is: <c>valve body.select</c>.</param>
/// <param name="Before">How it stood, or null when it was not there.</param>
/// <param name="After">How it stands, or null when it is gone.</param>
public sealed record Difference(string Name, Stand? Before, Stand? After)
{
    /// <summary>Whether it holds, before and after, and so only follows the pressures.</summary>
    public bool HoldsOnly => Before is Stand.Holds && After is Stand.Holds;
}

/// <summary>A passage with another pressure.</summary>
/// <param name="Passage">The passage.</param>
/// <param name="Before">Its pressure before, kPa; null when it was not there.</param>
/// <param name="After">Its pressure after, kPa; null when it is gone.</param>
public sealed record PressureDifference(string Passage, double? Before, double? After);

/// <summary>One clutch in one gear before and after changes.</summary>
/// <param name="Before">Before.</param>
/// <param name="After">After.</param>
public sealed record ClutchDifference(ClutchReport Before, ClutchReport After)
{
    /// <summary>Openings whose areas differ by less than this fraction are one opening.</summary>
    private const double SameArea = 0.01;

    /// <summary>The clutch's name.</summary>
    public string Clutch => After.Clutch;

    /// <summary>Whether it is on or off otherwise, or fits the chart otherwise.</summary>
    public bool StateDiffers => Before.State != After.State || Before.Verdict != After.Verdict;

    /// <summary>Whether its pressure differs by an amount that matters.</summary>
    public bool PressureDiffers => SolvedAssembly.AreApart(Before.Kilopascals, After.Kilopascals);

    /// <summary>Whether its oil stops elsewhere, or for another reason.</summary>
    public bool StopDiffers => (Before.StoppedAt, After.StoppedAt) switch
    {
        // The pressures that are left the pressures above tell.
        ({ } was, { } now) => was.Element != now.Element || !was.Reason.Equals(now.Reason, PhraseAside.Computed),
        var (was, now) => was != now,
    };

    /// <summary>Whether its oil comes another way.</summary>
    public bool SupplyWayDiffers => !Before.SupplyWay.SequenceEqual(After.SupplyWay);

    /// <summary>Whether its oil leaves another way.</summary>
    public bool SumpWayDiffers => !Before.SumpWay.SequenceEqual(After.SumpWay);

    /// <summary>Whether another opening controls how it comes on.</summary>
    public bool ApplyDiffers => Differ(Before.Apply, After.Apply);

    /// <summary>Whether another opening controls how it lets go.</summary>
    public bool ReleaseDiffers => Differ(Before.Release, After.Release);

    /// <summary>Whether anything differs.</summary>
    public bool Differs => StateDiffers || PressureDiffers || StopDiffers || SupplyWayDiffers || SumpWayDiffers || ApplyDiffers || ReleaseDiffers;

    private static bool Differ(Control? one, Control? other)
    {
        if (one is null || other is null) return one != other;
        return one.Element != other.Element || one.IsPort != other.IsPort
            || Math.Abs(one.SquareMillimetres - other.SquareMillimetres) > SameArea * Math.Max(one.SquareMillimetres, other.SquareMillimetres);
    }
}
