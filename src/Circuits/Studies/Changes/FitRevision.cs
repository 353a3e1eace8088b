using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Studies.Changes;

/// <summary>Another revision of a part is fitted.</summary>
/// <param name="Owner">The part.</param>
/// <param name="To">The revision.</param>
/// <param name="Was">The revision before.</param>
public sealed record FitRevision(Part Owner, Revision To, string Was) : Change(Owner.Name, Owner.Name, To.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => To.Name == Was ? Phrase.Of($"fit {Part} {To.Name} (as before)") : Phrase.Of($"fit {Part} {To.Name} instead of {Was}");

    internal override string Item => $"part {Part}";

    internal override string FunctionIn(Assembly assembly) => "belongs to the design level of its mates";

    internal override ImmutableArray<string> Claims => [$"part {Part}"];

    internal override int Rank => 0;

    internal override Revision Rewrite(Revision revision) => To;
}
