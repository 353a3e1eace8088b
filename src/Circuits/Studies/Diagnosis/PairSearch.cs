using System.Collections.Immutable;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Diagnosis;

/// <summary>
/// Finds pairs of faults that explain together what neither explains alone. Few pairs are all solved. Of many, those are solved that could do
/// it, judged by what each fault does alone: where one of them does nothing in a gear, the pair is taken to do there what the other does. Two
/// faults may also do something only together; of the pairs that touch a common passage the likeliest are solved as well.
/// </summary>
internal sealed class PairSearch
{
    private readonly ImmutableArray<Fault> faults;
    private readonly ImmutableArray<Candidate> singles;
    private readonly ImmutableArray<GearEffect> sound;
    private readonly ImmutableArray<Evidence> evidence;
    private readonly bool[][] changes;

    /// <param name="singles">Every single fault, in the order of the library.</param>
    /// <param name="sound">What the sound assembly does.</param>
    /// <param name="evidence">The evidence.</param>
    public PairSearch(ImmutableArray<Candidate> singles, ImmutableArray<GearEffect> sound, ImmutableArray<Evidence> evidence)
    {
        this.singles = singles;
        this.sound = sound;
        this.evidence = evidence;
        faults = [.. singles.Select(single => single.Faults[0])];
        changes = [.. singles.Select(single => single.Effects.Zip(sound, (effect, healthy) => !effect.IsLike(healthy)).ToArray())];
    }

    /// <summary>The pairs to be solved, likeliest first.</summary>
    /// <param name="most">How many at most.</param>
    /// <param name="mostWhole">Up to how many pairs are all taken.</param>
    /// <param name="mostMeeting">How many at most are taken only because they touch a common passage.</param>
    /// <param name="footprints">What each fault touches; asked for only where pairs are left out.</param>
    /// <returns>The pairs, and whether no pair that could explain everything was left out.</returns>
    public (ImmutableArray<(int A, int B)> Pairs, bool Complete) Find(int most, int mostWhole, int mostMeeting, Func<Footprints> footprints)
    {
        // A fault that explains everything alone needs no second one.
        var open = Enumerable.Range(0, singles.Length).Where(i => !singles[i].ExplainsAll).ToList();
        var whole = (long)open.Count * (open.Count - 1) / 2 <= mostWhole;
        var prints = whole || mostMeeting <= 0 ? null : footprints();
        var found = new List<(int A, int B, double Weight)>();
        var meeting = new List<(int A, int B, double Weight)>();
        for (var i = 0; i < open.Count; i++)
        {
            for (var j = i + 1; j < open.Count; j++)
            {
                var (a, b) = (open[i], open[j]);
                var could = whole || Could(a, b);
                if ((!could && prints?.Meet(a, b) != true) || !faults[a].GoesWith(faults[b])) continue;
                (could ? found : meeting).Add((a, b, faults[a].Weight * faults[b].Weight));
            }
        }

        return ([.. Likeliest(found, most).Concat(Likeliest(meeting, mostMeeting))], whole && found.Count <= most);
    }

    private static IEnumerable<(int A, int B)> Likeliest(List<(int A, int B, double Weight)> pairs, int most) =>
        pairs.OrderByDescending(pair => pair.Weight).ThenBy(pair => pair.A).ThenBy(pair => pair.B).Take(most).Select(pair => (pair.A, pair.B));

    private bool Could(int a, int b)
    {
        for (var i = 0; i < evidence.Length; i++)
        {
            var item = evidence[i];
            if (singles[a].Degrees[i] > 0 && singles[b].Degrees[i] > 0) continue;
            if (DiagnosisStudy.NeedsFlow(item))
            {
                // What both do to flow is not composed of what each does; one that fits alone is asked for.
                if (singles[a].Degrees[i] == 0 && singles[b].Degrees[i] == 0) return false;
                continue;
            }

            if (item is AirEvidence air)
            {
                if (!air.CouldFit(faults[a], faults[b])) return false;
                continue;
            }

            if (item.Gears.IsEmpty)
            {
                // About parts: what either contradicts, both do, unless another part is what was found.
                if (item.Degree([faults[a], faults[b]], []) == 0) return false;
                continue;
            }

            if (item.Gears.All(gear => !changes[a][gear] || !changes[b][gear]) && item.Degree([faults[a], faults[b]], Composed(a, b)) == 0) return false;
        }

        return true;
    }

    /// <summary>What a pair does where one of them does nothing.</summary>
    private GearEffect[] Composed(int a, int b)
    {
        var effects = new GearEffect[sound.Length];
        for (var gear = 0; gear < effects.Length; gear++) effects[gear] = changes[a][gear] ? singles[a].Effects[gear] : singles[b].Effects[gear];
        return effects;
    }
}
