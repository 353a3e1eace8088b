using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Studies.Matrix;

/// <summary>Numbers groups from 1 in the order in which their first assembly comes.</summary>
public sealed class GroupNumbers
{
    private readonly Dictionary<UInt128, int> numbers = [];

    /// <summary>How many groups there are so far.</summary>
    public int Count => numbers.Count;

    /// <summary>The number of the group that behaves so.</summary>
    /// <param name="fingerprint">The behaviour's fingerprint.</param>
    public int Of(UInt128 fingerprint)
    {
        if (numbers.TryGetValue(fingerprint, out var number)) return number;
        return numbers[fingerprint] = numbers.Count + 1;
    }
}

/// <summary>Assemblies that do the same in every gear and are metered alike.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Behaviour">What they do.</param>
public sealed record MatrixGroup(int Number, AssemblyBehaviour Behaviour)
{
    /// <summary>How many assemblies it has.</summary>
    public int Count { get; internal set; }

    /// <summary>The matched sets among them.</summary>
    public List<string> Matched { get; } = [];

    /// <summary>The first of its worst gears, by its place among the gears looked at; -1 when none is wrong.</summary>
    public int WorstGear
    {
        get
        {
            if (Behaviour.Verdict == Verdict.AsCharted) return -1;
            for (var i = 0; i < Behaviour.Gears.Length; i++)
            {
                if (Behaviour.Gears[i].Verdict == Behaviour.Verdict) return i;
            }

            return -1;
        }
    }
}

/// <summary>Every group of a matrix, and which assemblies are in it.</summary>
/// <param name="space">The assemblies; no more than <see cref="MostAssemblies"/>.</param>
public sealed class MatrixSummary(MatrixSpace space)
{
    /// <summary>Most assemblies that are gathered; more must be streamed row by row.</summary>
    public const long MostAssemblies = 1L << 24;


    private readonly GroupNumbers numbers = new();
    private readonly List<MatrixGroup> groups = [];
    private readonly HashSet<UInt128> networks = [];
    private readonly List<int> groupOf = [];

    /// <summary>The assemblies.</summary>
    public MatrixSpace Space => space;

    /// <summary>How many networks there are that the solver can tell apart.</summary>
    public int Networks => networks.Count;

    /// <summary>How many assemblies are as charted in every gear.</summary>
    public int Right => groups.Where(group => group.Behaviour.Verdict == Verdict.AsCharted).Sum(group => group.Count);

    /// <summary>How many of those have a change of gear that is not good.</summary>
    public int Rough => groups.Where(group => group.Behaviour.Changes is { IsEmpty: false }).Sum(group => group.Count);

    /// <summary>The groups, by number.</summary>
    public IReadOnlyList<MatrixGroup> Groups => groups;

    /// <summary>Takes the next assembly; they come in order, from the first.</summary>
    /// <param name="entry">The assembly.</param>
    /// <returns>The number of its group.</returns>
    public int Add(MatrixEntry entry)
    {
        networks.Add(entry.Network);
        var number = numbers.Of(entry.Behaviour.Fingerprint);
        if (number > groups.Count) groups.Add(new MatrixGroup(number, entry.Behaviour));
        var group = groups[number - 1];
        group.Count++;
        if (space.MatchedAt(entry.Number) is { } set) group.Matched.Add(set);
        groupOf.Add(number);
        return number;
    }

    /// <summary>
    /// The groups, best first: by the worst verdict, then by how many gears have each verdict, the worst change of gear, how many gears feel wrong, how many
    /// cross-feeds there are; of those that are alike, one with a matched set, then the lower number.
    /// </summary>
    public IReadOnlyList<MatrixGroup> BestFirst() =>
    [
        .. groups.OrderBy(group => group.Behaviour.Verdict)
            .ThenBy(group => Gears(group, Verdict.NeverSettles)).ThenBy(group => Gears(group, Verdict.DidNotConverge)).ThenBy(group => Gears(group, Verdict.Lost))
            .ThenBy(group => Gears(group, Verdict.Unwanted)).ThenBy(group => Gears(group, Verdict.Starved)).ThenBy(group => Gears(group, Verdict.OverPressure))
            .ThenBy(group => Gears(group, Verdict.Weak)).ThenBy(group => Gears(group, Verdict.NotDecided))
            .ThenBy(group => group.Behaviour.WorstChange ?? default)
            .ThenBy(group => group.Behaviour.Changes?.Length ?? 0)
            .ThenBy(group => group.Behaviour.Gears.Count(gear => gear.Feel is { Kind: not FeelKind.AsItShould }))
            .ThenBy(group => group.Behaviour.Gears.Sum(gear => gear.CrossFeeds))
            .ThenBy(group => group.Behaviour.Gears.Count(gear => gear.DependsOnHistory))
            .ThenBy(group => group.Matched.Count == 0).ThenBy(group => group.Number),
    ];

    /// <summary>Which revisions lead to a group: boxes that do not overlap and together are the group, the largest first.</summary>
    /// <param name="group">The group.</param>
    public IReadOnlyList<Box> BoxesOf(MatrixGroup group)
    {
        var members = new List<long>(group.Count);
        for (var i = 0; i < groupOf.Count; i++)
        {
            if (groupOf[i] == group.Number) members.Add(i);
        }

        return Box.Cover(members, [.. space.Choices.Select(revisions => revisions.Length)]);
    }

    private static int Gears(MatrixGroup group, Verdict verdict) => group.Behaviour.Gears.Count(gear => gear.Verdict == verdict);
}
