using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Studies.Changes;

/// <summary>A valve sticks.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Valve">The valve.</param>
/// <param name="At">Where it sticks.</param>
public sealed record StickValve(string Part, Valve Valve, StuckAt At) : Change(Part, $"{Part}.{Valve.Name}", Valve.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"valve {Element} {StuckText.Of(At)}");

    internal override string Item => $"valve {Element}";

    internal override string FunctionIn(Assembly assembly) => Functions.Of(Valve);

    internal override ImmutableArray<string> Claims => [$"valve {Element}"];

    internal override Revision Rewrite(Revision revision) =>
        revision with { Valves = [.. revision.Valves.Select(valve => valve.Name == Valve.Name ? valve with { Stuck = At } : valve)] };
}

/// <summary>A regulator sticks.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Regulator">The regulator.</param>
/// <param name="How">How it sticks; <see cref="RegulatorStuck.Drained"/> is for reducing ones.</param>
public sealed record StickRegulator(string Part, Regulator Regulator, RegulatorStuck How) : Change(Part, $"{Part}.{Regulator.Name}", Regulator.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"regulator {Element} {StuckText.Of(How)}");

    internal override string Item => $"regulator {Element}";

    internal override string FunctionIn(Assembly assembly) => Functions.Of(Regulator);

    internal override ImmutableArray<string> Claims => [$"regulator {Element}"];

    internal override Revision Rewrite(Revision revision) => revision with
    {
        Regulators = [.. revision.Regulators.Select(regulator => regulator.Name == Regulator.Name ? regulator with { Stuck = How } : regulator)],
    };
}

/// <summary>A solenoid does not do what it is told.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Solenoid">The solenoid.</param>
/// <param name="Fault">What is wrong with it.</param>
public sealed record FailSolenoid(string Part, Solenoid Solenoid, SolenoidFault Fault) : Change(Part, $"{Part}.{Solenoid.Name}", Solenoid.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"solenoid {Element} {StuckText.Of(Fault)}");

    internal override string Item => $"solenoid {Element}";

    internal override string FunctionIn(Assembly assembly) => $"gives {Solenoid.Out.Name} oil of {Solenoid.Feed.Name} as it is told";

    internal override ImmutableArray<string> Claims => [$"solenoid {Element}"];

    internal override Revision Rewrite(Revision revision) => revision with
    {
        Solenoids = [.. revision.Solenoids.Select(solenoid => solenoid.Name == Solenoid.Name ? solenoid with { Fault = Fault } : solenoid)],
    };
}

/// <summary>Oil is lost from one passage to another: a seal, a crack, a worn bore.</summary>
/// <param name="Part">The part that it is laid to.</param>
/// <param name="A">One passage.</param>
/// <param name="B">The other, or the sump.</param>
/// <param name="Area">Its area.</param>
/// <param name="Place">Where the file describes the first passage.</param>
public sealed record AddLeak(string Part, PassageName A, PassageName B, Area Area, Place Place) : Change(Part, $"{A}~{B}", Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"leak of {Area} between {A} and {B}");

    /// <inheritdoc/>
    public override bool CanBeUndone => false;

    internal override string Item => B.IsExhaust ? $"seal of {A}" : $"wall between {A} and {B}";

    internal override string FunctionIn(Assembly assembly) => B.IsExhaust ? $"keeps the oil of {A} in" : $"keeps {A} and {B} apart";

    internal override ImmutableArray<string> Claims => [A < B ? $"leak {A}~{B}" : $"leak {B}~{A}"];

    internal override Revision Rewrite(Revision revision) => revision with
    {
        Leaks = revision.Leaks.Add(new Leak(new PassageUse(A, Place), new PassageUse(B, Place), new Shape.Cutout(Area), Place)),
    };
}

/// <summary>A valve's springs are missing or broken, those that hold it and those that help to move it alike.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Valve">The valve.</param>
public sealed record LoseSprings(string Part, Valve Valve) : Change(Part, $"{Part}.{Valve.Name}", Valve.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"valve {Element} without its spring");

    internal override string Item => $"spring of valve {Element}";

    internal override string FunctionIn(Assembly assembly) => $"holds {Element} at rest";

    internal override ImmutableArray<string> Claims => [$"valve {Element}"];

    internal override Revision Rewrite(Revision revision) => revision with
    {
        Valves = [.. revision.Valves.Select(valve => valve.Name == Valve.Name
            ? valve with
            {
                MovedBy = valve.MovedBy.RemoveAll(force => force is SpoolForce.Spring),
                HeldBy = valve.HeldBy.RemoveAll(force => force is SpoolForce.Spring),
            }
            : valve)],
    };
}

/// <summary>A regulator's spring is missing: what acts on it sets it alone.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Regulator">The regulator.</param>
public sealed record LoseRegulatorSpring(string Part, Regulator Regulator) : Change(Part, $"{Part}.{Regulator.Name}", Regulator.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"regulator {Element} without its spring");

    internal override string Item => $"spring of regulator {Element}";

    internal override string FunctionIn(Assembly assembly) => $"sets what {Element} holds";

    internal override ImmutableArray<string> Claims => [$"regulator {Element}"];

    internal override Revision Rewrite(Revision revision) => revision with
    {
        Regulators = [.. revision.Regulators.Select(regulator =>
            regulator.Name == Regulator.Name ? regulator with { Spring = new Pressure(0) } : regulator)],
    };
}

/// <summary>A valve's ports to sump are partly stopped up, by dirt or a badly cut seal.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Valve">The valve.</param>
/// <param name="Area">What is left open of each such port; a port that is smaller stays as it is.</param>
public sealed record RestrictExhaust(string Part, Valve Valve, Area Area) : Change(Part, $"{Part}.{Valve.Name}", Valve.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"exhaust of valve {Element} stopped up to {Area}");

    internal override string Item => $"valve {Element}";

    internal override string FunctionIn(Assembly assembly) => $"lets out what {Element} releases";

    internal override ImmutableArray<string> Claims => [$"valve {Element}"];

    internal override Revision Rewrite(Revision revision) => revision with
    {
        Valves = [.. revision.Valves.Select(valve => valve.Name == Valve.Name
            ? valve with { Rest = Restrict(valve.Rest), Moved = Restrict(valve.Moved) }
            : valve)],
    };

    private ImmutableArray<Port> Restrict(ImmutableArray<Port> ports) =>
    [
        .. ports.Select(port =>
            port.Passages.Any(passage => passage.Name.IsExhaust) && (port.Area?.SquareMillimetres ?? Defaults.SpoolPortArea) > Area.SquareMillimetres
                ? port with { Area = Area }
                : port),
    ];
}
