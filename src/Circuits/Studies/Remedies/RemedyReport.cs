using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Remedies;

/// <summary>What would make an assembly right.</summary>
/// <param name="Before">The report on the assembly as it is.</param>
/// <param name="IsRight">Whether it is right as it is; then nothing was looked for.</param>
/// <param name="Parts">Other parts that make it right: the fewest, every choice of them.</param>
/// <param name="PartSearch">How far was looked for other parts.</param>
/// <param name="Bench">Work on the parts that are there that makes it right, the least invasive first.</param>
/// <param name="BenchSearch">How far was looked for such work.</param>
public sealed record RemedyReport(
    AssemblyReport Before, bool IsRight, ImmutableArray<Remedy> Parts, PartSearchExtent PartSearch, ImmutableArray<Remedy> Bench,
    BenchSearchExtent BenchSearch);

/// <summary>Changes that make an assembly right.</summary>
/// <param name="Changes">The changes.</param>
/// <param name="After">The report on the assembly with them.</param>
public sealed record Remedy(ImmutableArray<Change> Changes, AssemblyReport After)
{
    /// <summary>Whether the bench can take all of it back with the same parts.</summary>
    public bool CanBeUndone => Changes.All(change => change.CanBeUndone);

    /// <summary>For a hole whose size was searched: every size tried that does and leaves as little to be desired, smallest first; else empty.</summary>
    public ImmutableArray<Shape.Hole> Sizes { get; init; } = [];

    /// <summary>The matched sets that have it so at every place that is changed; empty when none has.</summary>
    public ImmutableArray<string> AsIn { get; init; } = [];

    /// <summary>What the driver feels with them, each once; nothing where all is as it should be.</summary>
    public IEnumerable<Feel> Feels => After.Gears.Select(gear => gear.Drive?.Feel).OfType<Feel>().Where(feel => feel.Kind != FeelKind.AsItShould).Distinct();

    /// <summary>What is still found though every gear is right, and in no matched set: warnings.</summary>
    public ImmutableArray<Finding> Leaves { get; init; } = [];
}

/// <summary>How far was looked for other parts.</summary>
/// <param name="Tried">Assemblies that were solved.</param>
/// <param name="Fewest">How many parts must change; null when no choice was found.</param>
/// <param name="Complete">Whether every choice of up to <paramref name="Depth"/> parts was tried.</param>
/// <param name="Depth">How many parts at once were tried.</param>
public sealed record PartSearchExtent(int Tried, int? Fewest, bool Complete, int Depth);

/// <summary>How far was looked for work on the parts that are there.</summary>
/// <param name="Plugs">Plugs that were tried alone.</param>
/// <param name="Holes">Holes that were tried alone, each location and size counted.</param>
/// <param name="Balls">Balls left out, put in or exchanged that were tried alone.</param>
/// <param name="Pairs">Pairs that were tried.</param>
/// <param name="PossiblePairs">Pairs that there are; 0 when pairs were not called for.</param>
public sealed record BenchSearchExtent(int Plugs, int Holes, int Balls, int Pairs, int PossiblePairs)
{
    /// <summary>Nothing was looked for.</summary>
    public static BenchSearchExtent None { get; } = new(0, 0, 0, 0, 0);
}
