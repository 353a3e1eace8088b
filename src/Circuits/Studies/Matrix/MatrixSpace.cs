using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Studies.Matrix;

/// <summary>
/// The assemblies that revisions can make, numbered from 0 in a fixed order: the last part's revision changes fastest, and
/// revisions come in the order of the file.
/// </summary>
public sealed class MatrixSpace
{
    private readonly Dictionary<long, string> matched = [];

    private MatrixSpace(Unit unit, ImmutableArray<ImmutableArray<Revision>> choices, ImmutableArray<int> gears, long count, JudgeMode mode)
    {
        Unit = unit;
        Choices = choices;
        Gears = gears;
        Count = count;
        Mode = mode;
        foreach (var set in unit.Matched)
        {
            if (NumberOf(set) is { } number) matched.TryAdd(number, set.Name);
        }
    }

    /// <summary>The unit.</summary>
    public Unit Unit { get; }

    /// <summary>The revisions of each part that are tried, in the order of the unit's parts; at least one each.</summary>
    public ImmutableArray<ImmutableArray<Revision>> Choices { get; }

    /// <summary>The numbers of the gears that are looked at.</summary>
    public ImmutableArray<int> Gears { get; }

    /// <summary>How many assemblies there are.</summary>
    public long Count { get; }

    /// <summary>What verdicts rest on.</summary>
    public JudgeMode Mode { get; }

    /// <summary>The matched sets among them, by number.</summary>
    public IReadOnlyDictionary<long, string> Matched => matched;

    /// <summary>The assemblies of those revisions, or null when there are more than can be numbered (2^62).</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="choices">The revisions of each part, in the order of the unit's parts; at least one each.</param>
    /// <param name="gears">The numbers of the gears to look at.</param>
    /// <param name="mode">What verdicts rest on.</param>
    public static MatrixSpace? Of(Unit unit, ImmutableArray<ImmutableArray<Revision>> choices, ImmutableArray<int> gears, JudgeMode mode = JudgeMode.Full)
    {
        var count = Int128.One;
        foreach (var revisions in choices)
        {
            count *= revisions.Length;
            if (count > (Int128)1 << 62) return null;
        }

        return new MatrixSpace(unit, choices, gears, (long)count, mode);
    }

    /// <summary>Every assembly of a unit in every gear, or null when there are more than can be numbered.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="mode">What verdicts rest on.</param>
    public static MatrixSpace? Of(Unit unit, JudgeMode mode = JudgeMode.Full) =>
        Of(unit, [.. unit.Parts.Select(part => part.Revisions)], [.. Enumerable.Range(0, unit.Gears.Length)], mode);

    /// <summary>The matched set that an assembly is, or null.</summary>
    /// <param name="number">The assembly's number.</param>
    public string? MatchedAt(long number) => matched.GetValueOrDefault(number);

    /// <summary>Which of its part's revisions that are tried an assembly has, part by part.</summary>
    /// <param name="number">The assembly's number.</param>
    /// <param name="digits">Takes the answer; one entry for each part.</param>
    public void Decode(long number, Span<int> digits)
    {
        for (var part = Choices.Length - 1; part >= 0; part--)
        {
            (number, var digit) = Math.DivRem(number, Choices[part].Length);
            digits[part] = (int)digit;
        }
    }

    /// <summary>An assembly by its number.</summary>
    /// <param name="number">0 or more, below <see cref="Count"/>.</param>
    public Assembly At(long number)
    {
        var digits = new int[Choices.Length];
        Decode(number, digits);
        return Assembly.Of(Unit, [.. Choices.Select((revisions, part) => revisions[digits[part]])]);
    }

    /// <summary>
    /// The numbers that one of several shards of the work takes, from the first up to but not including the second. Shards lie
    /// one after the other without overlap or gap, and their sizes differ by one at most.
    /// </summary>
    /// <param name="count">How many assemblies there are.</param>
    /// <param name="shard">The shard, counted from 1.</param>
    /// <param name="shards">How many shards there are.</param>
    public static (long From, long To) Shard(long count, int shard, int shards) =>
        ((long)((Int128)count * (shard - 1) / shards), (long)((Int128)count * shard / shards));

    private long? NumberOf(MatchedSet set)
    {
        var number = 0L;
        for (var part = 0; part < Choices.Length; part++)
        {
            var name = Unit.Parts[part].Name;
            var wanted = set.Revisions.First(pair => pair.Key == name).Value;
            var digit = -1;
            for (var i = 0; i < Choices[part].Length; i++)
            {
                if (Choices[part][i].Name == wanted) digit = i;
            }

            if (digit < 0) return null;
            number = (number * Choices[part].Length) + digit;
        }

        return number;
    }
}
