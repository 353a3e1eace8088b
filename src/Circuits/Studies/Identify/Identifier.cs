using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>Tells which revision each part on the bench is, as far as that can be told.</summary>
public static class Identifier
{
    /// <summary>Narrows the revisions of parts down by observations, and says what to look at next.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="parts">The parts in question.</param>
    /// <param name="observations">What was found out; the order does not matter.</param>
    /// <param name="tolerance">How far a measurement may be off, in millimetres, from 0 to <see cref="Identification.GreatestTolerance"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is out of its range.</exception>
    public static Identification Run(
        Unit unit, ImmutableArray<PartTraits> parts, ImmutableArray<Observation> observations, double tolerance)
    {
        if (tolerance is not (>= 0 and <= Identification.GreatestTolerance))
            throw new ArgumentOutOfRangeException(nameof(tolerance));
        ImmutableArray<PartIdentity> identities =
            [.. parts.Select(part => Identify(part, [.. observations.Where(observation => observation.Part == part.Part.Name)], tolerance))];
        var excluded = unit.Matched.Select(set => new ExcludedSet(set.Name, Against(set, identities))).Where(set => !set.Parts.IsEmpty).ToImmutableArray();
        return new Identification(
            unit, tolerance, observations, identities,
            [.. unit.Matched.Select(set => set.Name).Except(excluded.Select(set => set.Set))], excluded, FitChoice.Of(unit, identities));
    }

    /// <summary>Two observations that no part can give, or null.</summary>
    /// <param name="observations">The observations.</param>
    /// <param name="tolerance">How far a measurement may be off, in millimetres.</param>
    public static (Observation First, Observation Second)? Contradiction(ImmutableArray<Observation> observations, double tolerance)
    {
        for (var i = 0; i < observations.Length; i++)
        {
            for (var j = i + 1; j < observations.Length; j++)
            {
                if (observations[i].Contradicts(observations[j], tolerance)) return (observations[i], observations[j]);
            }
        }

        return null;
    }

    private static PartIdentity Identify(PartTraits traits, ImmutableArray<Observation> observations, double tolerance)
    {
        var all = Enumerable.Range(0, traits.Part.Revisions.Length)
            .Select(revision => new ExcludedRevision(revision, [.. observations.Where(observation => !observation.Admits(revision, tolerance))])).ToList();
        ImmutableArray<int> remaining = [.. all.Where(revision => revision.By.IsEmpty).Select(revision => revision.Revision)];
        var steps = remaining.Length > 1 ? Splitter.Order(traits.Rows, remaining, tolerance) : [];
        var groups = steps.IsEmpty ? [remaining] : steps.SelectMany(step => step.Outcomes).Where(outcome => outcome.Next is null).Select(outcome => outcome.Revisions);
        var status = remaining.Length switch
        {
            0 => PartStatus.Unknown,
            1 => traits.Part.Revisions.Length == 1 ? PartStatus.Single : PartStatus.Settled,
            _ => steps.IsEmpty ? PartStatus.Alike : PartStatus.Open,
        };
        return new PartIdentity(
            traits, status, remaining, [.. all.Where(revision => !revision.By.IsEmpty)], steps,
            [.. groups.Where(group => group.Length > 1).DistinctBy(group => string.Join(' ', group)).Select(group => Alike(traits, group))]);
    }

    private static LookAlikes Alike(PartTraits traits, ImmutableArray<int> revisions)
    {
        var tooClose = traits.Rows.Where(row => row.Trait.Key.Sized && revisions
            .SelectMany(one => revisions, (one, other) => (row.Answers[one], row.Answers[other]))
            .Any(pair => pair is (Answer.Sizes a, Answer.Sizes b) && !a.Admits(b, 0)));
        return new LookAlikes(revisions, [.. tooClose], Unseen.Between(traits.Part, [.. revisions.Select(revision => traits.Part.Revisions[revision])]));
    }

    private static ImmutableArray<string> Against(MatchedSet set, ImmutableArray<PartIdentity> parts) =>
    [
        .. from part in parts
           let revision = part.Part.FindRevision(set.Revisions.First(pair => pair.Key == part.Part.Name).Value)!
           where !part.Remaining.Contains(part.Part.Revisions.IndexOf(revision))
           select part.Part.Name,
    ];
}
