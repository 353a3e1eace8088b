using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Studies.Changes;

/// <summary>The manual valve's ports that drain a passage are partly stopped up.</summary>
/// <param name="Part">The part that has the manual valve.</param>
/// <param name="Passage">The passage that is drained.</param>
/// <param name="Area">What is left open; a port that is smaller stays as it is.</param>
/// <param name="Place">Where the file describes the first such port.</param>
public sealed record RestrictLever(string Part, PassageName Passage, Area Area, Place Place) : Change(Part, $"{Part}.lever:{(Passage.Part == Part ? Passage.Passage : Passage.ToString())}", Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"exhaust of {Passage} at the manual valve stopped up to {Area}");

    internal override string Item => $"manual valve's exhaust of {Passage}";

    internal override string FunctionIn(Assembly assembly) => "lets released oil out";

    internal override ImmutableArray<string> Claims => [$"exhaust {Element}"];

    internal override Revision Rewrite(Revision revision) => revision with
    {
        Lever = [.. revision.Lever.Select(position => position with { Ports = [.. position.Ports.Select(Restricted)] })],
    };

    private Port Restricted(Port port) =>
        port.Passages.Any(use => use.Name.IsExhaust) && port.Passages.Any(use => use.Name == Passage)
        && (port.Area?.SquareMillimetres ?? Defaults.SpoolPortArea) > Area.SquareMillimetres
            ? port with { Area = Area }
            : port;
}

/// <summary>
/// Where a regulator or a solenoid drains is partly stopped up. A passage of its own comes between its drain and sump, with a hole of what is left.
/// </summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Name">The regulator or solenoid.</param>
/// <param name="Area">What is left open.</param>
/// <param name="Place">Where the file describes it.</param>
public sealed record RestrictDrain(string Part, string Name, Area Area, Place Place) : Change(Part, $"{Part}.{Name}", Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"exhaust of {Element} stopped up to {Area}");

    internal override string Item => $"exhaust of {Element}";

    internal override string FunctionIn(Assembly assembly) => "lets released oil out";

    internal override ImmutableArray<string> Claims => [$"exhaust {Element}"];

    internal override Revision Rewrite(Revision revision)
    {
        var name = $"{Name}-drain";
        while (revision.Passages.Any(passage => passage.Name == name)) name += "-";
        var drain = new PassageUse(new PassageName(Part, name), Place);
        return revision with
        {
            Passages = revision.Passages.Add(new Passage(name, name, [], Place)),
            Restrictions = revision.Restrictions.Add(new Restriction(drain, new PassageUse(PassageName.Exhaust, Place), new Shape.Cutout(Area), Place)),
            Regulators = [.. revision.Regulators.Select(regulator => regulator is Regulator.Reducing reducing && reducing.Name == Name ? reducing with { To = drain } : regulator)],
            Solenoids = [.. revision.Solenoids.Select(solenoid => solenoid.Name == Name ? solenoid with { To = drain } : solenoid)],
        };
    }
}
