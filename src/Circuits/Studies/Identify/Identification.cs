using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>How far a part is known.</summary>
public enum PartStatus
{
    /// <summary>The file knows one revision only, and nothing speaks against it.</summary>
    Single,

    /// <summary>One revision remains.</summary>
    Settled,

    /// <summary>Several remain, and nothing tells them apart for sure.</summary>
    Alike,

    /// <summary>Several remain, and there is more to look at.</summary>
    Open,

    /// <summary>No known revision fits all observations.</summary>
    Unknown,
}

/// <summary>A revision that observations speak against.</summary>
/// <param name="Revision">Its place in its part.</param>
/// <param name="By">The observations, in the order in which they were told.</param>
public sealed record ExcludedRevision(int Revision, ImmutableArray<Observation> By);

/// <summary>Revisions that cannot be told apart for sure.</summary>
/// <param name="Revisions">Their places in their part.</param>
/// <param name="TooClose">Traits that differ by less than a gauge tells for sure.</param>
/// <param name="Unseen">Elements that differ in what nobody can see, pin or measure.</param>
public sealed record LookAlikes(ImmutableArray<int> Revisions, ImmutableArray<TraitRow> TooClose, ImmutableArray<string> Unseen);

/// <summary>What is known of the part on the bench.</summary>
/// <param name="Traits">The part and its traits.</param>
/// <param name="Status">How far it is known.</param>
/// <param name="Remaining">The revisions that fit all observations, by their place in the part.</param>
/// <param name="Excluded">The others, and what speaks against them.</param>
/// <param name="Steps">What to look at next, in order; empty when there is nothing left to tell apart.</param>
/// <param name="Alike">Revisions among those that remain which no question tells apart.</param>
public sealed record PartIdentity(
    PartTraits Traits, PartStatus Status, ImmutableArray<int> Remaining, ImmutableArray<ExcludedRevision> Excluded,
    ImmutableArray<Step> Steps, ImmutableArray<LookAlikes> Alike)
{
    /// <summary>The part.</summary>
    public Part Part => Traits.Part;

    /// <summary>When no revision fits: those that the fewest observations speak against.</summary>
    public ImmutableArray<ExcludedRevision> Nearest => Remaining.IsEmpty
        ? [.. Excluded.Where(revision => revision.By.Length == Excluded.Min(other => other.By.Length))]
        : [];

    /// <summary>The traits that differ between the revisions that remain: what a sheet lists.</summary>
    /// <param name="tolerance">How far a measurement may be off, in millimetres.</param>
    public ImmutableArray<TraitRow> Differing(double tolerance) => Differing(Remaining, tolerance);

    /// <summary>What else tells a settled part from its other revisions, easiest first: a second look.</summary>
    /// <param name="told">What was told already.</param>
    /// <param name="tolerance">How far a measurement may be off, in millimetres.</param>
    public ImmutableArray<TraitRow> Untold(ImmutableArray<Observation> told, double tolerance)
    {
        var keys = told.Where(observation => observation.Part == Part.Name).Select(observation => observation.Row.Trait.Key).ToHashSet();
        return [.. Differing([.. Enumerable.Range(0, Part.Revisions.Length)], tolerance).Where(row => !keys.Contains(row.Trait.Key)).OrderBy(row => row.Trait.Means)];
    }

    private ImmutableArray<TraitRow> Differing(ImmutableArray<int> revisions, double tolerance) =>
        [.. Traits.Rows.Where(row => row.IsListed && Splitter.Tells(Splitter.Outcomes(row, revisions, tolerance)))];
}

/// <summary>A matched set that the parts on the bench cannot be.</summary>
/// <param name="Set">The set.</param>
/// <param name="Parts">The parts whose revision it asks for is excluded.</param>
public sealed record ExcludedSet(string Set, ImmutableArray<string> Parts);

/// <summary>What is known of the parts on the bench, and what to look at next.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Tolerance">How far a measurement may be off, in millimetres.</param>
/// <param name="Observations">What was told.</param>
/// <param name="Parts">The parts asked for, in the order of the file.</param>
/// <param name="PossibleSets">Matched sets that the parts may be.</param>
/// <param name="ExcludedSets">Matched sets that they cannot be.</param>
/// <param name="Fits">What <c>--fit</c> says for the parts as they are known; empty while a part is open or unknown.</param>
public sealed record Identification(
    Unit Unit, double Tolerance, ImmutableArray<Observation> Observations, ImmutableArray<PartIdentity> Parts,
    ImmutableArray<string> PossibleSets, ImmutableArray<ExcludedSet> ExcludedSets, ImmutableArray<string> Fits)
{
    /// <summary>
    /// How far a pin gauge is taken to be off unless told otherwise, in millimetres: pins in steps of 0.1 mm, of which one goes in
    /// and the next does not (common practice, no source).
    /// </summary>
    public const double DefaultTolerance = 0.05;

    /// <summary>The greatest tolerance that makes sense for the holes of a control unit, in millimetres.</summary>
    public const double GreatestTolerance = 1;

    /// <summary>Spells phrases as they have to be typed.</summary>
    public ObservationReader Reader => field ??= new ObservationReader([.. Parts.Select(part => part.Traits)]);
}
