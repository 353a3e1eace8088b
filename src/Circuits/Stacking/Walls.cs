using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Stacking;

/// <summary>Finds where a casting has a wall that another revision of it lacks.</summary>
public static class Walls
{
    private static readonly Phrase Wall = Phrase.Of($"wall");

    /// <summary>
    /// The walls of one revision: two of its passages that lie where another revision has a single passage.
    /// </summary>
    /// <param name="part">The casting.</param>
    /// <param name="revision">The revision that may have the wall.</param>
    public static IEnumerable<Blank> Of(Part part, Revision revision)
    {
        var owner = new Dictionary<(string Joint, string Location), Passage>();
        foreach (var passage in revision.Passages)
        {
            foreach (var use in passage.Locations)
                owner[(use.Joint, use.Location)] = passage;
        }

        var seen = new HashSet<(string, string)>();
        foreach (var other in part.Revisions)
        {
            if (ReferenceEquals(other, revision)) continue;
            foreach (var undivided in other.Passages)
            {
                var pieces = undivided.Locations.Select(use => owner.GetValueOrDefault((use.Joint, use.Location))).OfType<Passage>().Distinct().ToList();
                for (var i = 1; i < pieces.Count; i++)
                {
                    if (seen.Add((pieces[i - 1].Name, pieces[i].Name)))
                        yield return Between(part, revision, undivided, pieces[i - 1], pieces[i]);
                }
            }
        }
    }

    private static Blank Between(Part part, Revision revision, Passage undivided, Passage a, Passage b)
    {
        // The passage that the other revision does not know by that name is the one that the wall cut off.
        var cutOff = b.Name == undivided.Name ? a : b;
        return new Blank(
            new PassageName(part.Name, a.Name), new PassageName(part.Name, b.Name),
            $"{part.Name}:{a.Name}|{b.Name}", part.Name, revision.Name, Wall, cutOff.Place);
    }
}
