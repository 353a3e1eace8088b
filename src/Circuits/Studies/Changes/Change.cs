using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Studies.Changes;

/// <summary>
/// One change to one part of an assembly: work on the bench, another part, or a fault. It rewrites the part's revision, so
/// that everything that is computed of an assembly is computed of the changed one in the same way.
/// </summary>
/// <param name="Part">The part that is changed.</param>
/// <param name="Element">What is changed, as reports name it: <c>plate@22</c>, <c>body.select</c>.</param>
/// <param name="Place">Where the file describes it.</param>
public abstract record Change(string Part, string Element, Place Place)
{
    /// <summary>The change as an order: <c>plug plate@22</c>.</summary>
    public abstract Phrase Text { get; }

    /// <summary>Whether the bench can take it back with the same parts. A hole drilled into metal stays.</summary>
    public virtual bool CanBeUndone => true;

    /// <summary>The item that it is about: <c>ball balls.range</c>.</summary>
    internal abstract string Item { get; }

    /// <summary>What that item is for.</summary>
    /// <param name="assembly">The assembly before the change.</param>
    internal abstract string FunctionIn(Assembly assembly);

    /// <summary>What it lays claim to. Two changes that claim one thing contradict each other.</summary>
    internal abstract ImmutableArray<string> Claims { get; }

    /// <summary>When it is carried out: parts first, then what is taken out, then the rest.</summary>
    internal virtual int Rank => 2;

    /// <summary>The part's revision after the change; the same one when it changes nothing.</summary>
    /// <param name="revision">The revision before.</param>
    internal abstract Revision Rewrite(Revision revision);

    /// <summary>The unit after the change, for what belongs to no part: the order of sheets in a joint.</summary>
    /// <param name="unit">The unit before.</param>
    internal virtual Unit Rewrite(Unit unit) => unit;
}

/// <summary>Carries changes out.</summary>
public static class ChangedAssembly
{
    /// <summary>
    /// The assembly after the changes. When all of them fit other revisions, that is an assembly like any other, and may be
    /// a matched set; after any other work it never is.
    /// </summary>
    /// <param name="from">The assembly before.</param>
    /// <param name="changes">Changes that do not contradict one another, in any order.</param>
    public static Assembly Of(Assembly from, IEnumerable<Change> changes)
    {
        changes = [.. changes];
        var unit = from.Unit;
        var revisions = from.Revisions.ToBuilder();
        var work = new List<Phrase>();
        foreach (var change in changes.OrderBy(change => change.Rank))
        {
            var index = unit.Parts.IndexOf(unit.FindPart(change.Part)!);
            revisions[index] = change.Rewrite(revisions[index]);
            if (change is not FitRevision) work.Add(change.Text);
        }

        var rewritten = changes.Aggregate(unit, (current, change) => change.Rewrite(current));

        // Work that was done before on a part that is now another one went with it; the words stay, which errs on the safe side.
        if (work.Count > 0)
        {
            var changed = from.Changed(revisions.ToImmutable(), [.. work]);
            return ReferenceEquals(rewritten, unit) ? changed : changed.In(rewritten);
        }

        return from.Changes.IsEmpty ? Assembly.Of(unit, revisions.ToImmutable()) : from.Changed(revisions.ToImmutable(), [Phrase.Of($"other parts")]);
    }
}
