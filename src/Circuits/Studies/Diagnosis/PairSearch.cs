using System.Collections.Immutable;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Diagnosis;

/// <summary>
/// Finds pairs of faults that explain together what neither explains alone. Few pairs are all solved. Of many, those are solved that could do
/// it, judged by what each fault does alone: where one of them does nothing in a gear, the pair is taken to do there what the other does.
/// Two faults that only together do something are then missed.
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
    /// <returns>The pairs, and whether no pair that could explain everything was left out.</returns>
    public (ImmutableArray<(int A, int B)> Pairs, bool Complete) Find(int most, int mostWhole)
    {
        // A fault that explains everything alone needs no second one.
        var open = Enumerable.Range(0, singles.Length).Where(i => !singles[i].ExplainsAll).ToList();
        var whole = (long)open.Count * (open.Count - 1) / 2 <= mostWhole;
        var found = new List<(int A, int B, double Weight)>();
        for (var i = 0; i < open.Count; i++)
        {
            for (var j = i + 1; j < open.Count; j++)
            {
                var (a, b) = (open[i], open[j]);
                if ((whole || Could(a, b)) && faults[a].GoesWith(faults[b])) found.Add((a, b, faults[a].Weight * faults[b].Weight));
            }
        }

        var sorted = found.OrderByDescending(pair => pair.Weight).ThenBy(pair => pair.A).ThenBy(pair => pair.B).ToList();
        return ([.. sorted.Take(most).Select(pair => (pair.A, pair.B))], whole && sorted.Count <= most);
    }

    private bool Could(int a, int b)
    {
        for (var i = 0; i < evidence.Length; i++)
        {
            var item = evidence[i];
            if (singles[a].Degrees[i] > 0 && singles[b].Degrees[i] > 0) continue;
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
