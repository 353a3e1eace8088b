using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

/// <summary>Something that can be wrong with an assembly.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Element">What it is about, as reports name it: <c>plate@22</c>, <c>body.select</c>; of one kind no two faults share it.</param>
/// <param name="Name">Its plain name: <c>ball balls.range left out</c>.</param>
/// <param name="Place">The line of the file that describes what is at fault.</param>
/// <param name="Weight">How likely it is against the others; any scale.</param>
/// <param name="Changes">What brings it about.</param>
public sealed record Fault(FaultKind Kind, string Element, Phrase Name, Place Place, double Weight, ImmutableArray<Change> Changes)
{
    /// <summary>Its code, which files and options use: <c>ball-left-out balls.range</c>.</summary>
    public string Code => $"{FaultKinds.Of(Kind).Word} {Element}";

    /// <summary>The assembly with the fault.</summary>
    /// <param name="assembly">The assembly without.</param>
    public Assembly In(Assembly assembly) => ChangedAssembly.Of(assembly, Changes);

    /// <summary>Whether an assembly can have both: whether they are about different things.</summary>
    /// <param name="other">Another fault.</param>
    public bool GoesWith(Fault other)
    {
        foreach (var change in Changes)
        {
            foreach (var claim in change.Claims)
            {
                if (other.Changes.Any(its => its.Claims.Contains(claim))) return false;
            }
        }

        // A fault of a part is none of the revision that takes its place.
        return !Replaces(this, other) && !Replaces(other, this);
    }

    private static bool Replaces(Fault revision, Fault other) =>
        revision.Kind == FaultKind.WrongRevision && other.Changes.Any(change => change.Part == revision.Changes[0].Part);
}
