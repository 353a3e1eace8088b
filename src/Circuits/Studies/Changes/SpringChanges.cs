using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Studies.Changes;

/// <summary>An accumulator's spring is missing.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Accumulator">The accumulator.</param>
public sealed record LoseAccumulatorSpring(string Part, Accumulator Accumulator) : Change(Part, $"{Part}.{Accumulator.Name}", Accumulator.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"accumulator {Element} without its spring");

    internal override string Item => $"spring of accumulator {Element}";

    internal override string FunctionIn(Assembly assembly) => "pushes the piston back";

    internal override ImmutableArray<string> Claims => [$"accumulator {Element}"];

    internal override Revision Rewrite(Revision revision) => revision with
    {
        Accumulators = [.. revision.Accumulators.Select(accumulator => accumulator.Name == Accumulator.Name
            ? accumulator with { Spring = new Force(0), Rate = new SpringRate(0) }
            : accumulator)],
    };
}

/// <summary>A clutch's return spring is missing or broken.</summary>
/// <param name="Part">The part that has the clutch's chamber.</param>
/// <param name="Clutch">The clutch.</param>
public sealed record LoseReturnSpring(string Part, Clutch Clutch) : Change(Part, Clutch.Name, Clutch.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"clutch {Clutch.Name} without its return spring");

    internal override string Item => $"return spring of clutch {Element}";

    internal override string FunctionIn(Assembly assembly) => "pushes the piston back";

    internal override ImmutableArray<string> Claims => [$"clutch {Clutch.Name}"];

    internal override Revision Rewrite(Revision revision) => revision with
    {
        Clutches = revision.Clutches.Add(new Clutch(Clutch.Name, Clutch.Place) { ReturnSpring = new Force(0), Rate = new SpringRate(0) }),
    };
}
