using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Networks;

/// <summary>What kind of pressure-holding element a regulator is.</summary>
public enum RegulatorKind
{
    /// <summary>Gives a lower pressure than its supply.</summary>
    Reducing,

    /// <summary>Opens a passage to relieve it.</summary>
    Relief,

    /// <summary>Holds the pump's passage; the pump always gives enough in the static answer.</summary>
    Line,

    /// <summary>A pressure solenoid.</summary>
    Solenoid,

    /// <summary>A screen's bypass: lets oil on once what lies behind the mesh is too low. It has no drain, and rests shut.</summary>
    Bypass,
}

/// <summary>A regulator, or a pressure solenoid.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="Kind">What it is.</param>
/// <param name="From">The node that feeds it; for relief and line, the node it holds.</param>
/// <param name="Out">The node that it holds.</param>
/// <param name="To">Where it drains; -1 for none.</param>
/// <param name="Spring">Set pressure of the spring alone, kPa.</param>
/// <param name="SetBy">Signals that add to it.</param>
/// <param name="SquareMillimetres">Its port's full area.</param>
/// <param name="Solenoid">For a pressure solenoid, the model's solenoid; else null.</param>
/// <param name="Place">Where it is written.</param>
/// <param name="Spills">For relief and line, every node that it spills to, in the order in which they open; empty otherwise.</param>
/// <param name="Spool">Its spool, where it was measured; else null.</param>
public sealed record RegulatorElement(
    string Name, RegulatorKind Kind, int From, int Out, int To, double Spring, ImmutableArray<Signal> SetBy,
    double SquareMillimetres, Solenoid? Solenoid, Place Place, ImmutableArray<int> Spills, RegulatorSpool? Spool)
{
    internal RegulatorElement Renumbered(NewNumbers numbers)
    {
        var (name, kind, from, @out, to, spring, setBy, area, solenoid, place, spills, spool) = this;
        return new RegulatorElement(
            name, kind, numbers[from], numbers[@out], numbers[to], spring, Signal.Renumbered(setBy, numbers), area, solenoid, place,
            [.. spills.Select(node => numbers[node])], spool);
    }
}

/// <summary>An element that has stuck and is now no more than what it leaves open.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="How">How it has stuck.</param>
/// <param name="Place">Where it is written.</param>
public sealed record StuckElement(string Name, RegulatorStuck How, Place Place);

public sealed partial class Network
{
    /// <summary>Regulators and pressure solenoids.</summary>
    public required ImmutableArray<RegulatorElement> Regulators { get; init; }

    /// <summary>Regulators that have stuck and regulate no more.</summary>
    public ImmutableArray<StuckElement> Stuck { get; init; } = [];
}

internal sealed partial class Draft
{
    public List<RegulatorElement> Regulators { get; } = [];

    public List<StuckElement> Stuck { get; } = [];
}

internal sealed partial class ElementDrafter
{
    private HashSet<int> lineHolds = [];

    public void Regulators(Owner owner)
    {
        foreach (var regulator in owner.Revision.Regulators) AddRegulator(owner, regulator);
    }

    private void AddRegulator(Owner owner, Regulator regulator)
    {
        var name = $"{owner.Part.Name}.{regulator.Name}";
        var setBy = regulator.SetBy
            .Select(signal => new Signal(Resolve(signal.From, name, "is set by"), signal.Ratio)).ToImmutableArray();
        var area = PortArea(regulator.PortArea, Defaults.RegulatorPortArea, name, regulator.Place);
        if (regulator.Spring is null && (setBy.IsEmpty || regulator is Regulator.Spilling))
            draft.Assume($"assumed {new Pressure(0)} for the spring of {name}: none given", regulator.Place);
        var spring = regulator.Spring?.Kilopascals ?? 0;
        if (regulator.Stuck is { } stuck) draft.Stuck.Add(new StuckElement(name, stuck, regulator.Place));
        switch (regulator)
        {
            case Regulator.Spilling { Stuck: { } how } spilling:
                AddStuck(owner, spilling, how, name, area);
                break;
            case Regulator.Reducing { Stuck: { } how } reducing:
                AddStuck(owner, reducing, how, name, area);
                break;
            case Regulator.Spilling spilling:
                var holds = Resolve(spilling.Holds, name, "holds");
                if (holds < 0) return;
                AddSpilling(owner, spilling, name, holds, setBy, area, spring);
                break;
            case Regulator.Reducing reducing:
                AddReducing(
                    owner, LinkKind.RegulatorPort, name,
                    (Resolve(reducing.From, name, "takes from"), Resolve(reducing.Out, name, "feeds"), Resolve(reducing.To, name, "drains to")),
                    new RegulatorElement(name, RegulatorKind.Reducing, 0, 0, 0, spring, setBy, area, null, regulator.Place, [], regulator.Spool));
                break;
        }
    }

    private void AddSpilling(
        Owner owner, Regulator.Spilling spilling, string name, int holds, ImmutableArray<Signal> setBy, double area, double spring)
    {
        var outlets = spilling.SpillsTo.Select(outlet => Resolve(outlet, name, "spills to")).ToList().FindAll(node => node >= 0);
        var isLine = lineHolds.Contains(holds);
        var to = isLine
            ? outlets.FindIndex(node => node > 0) is >= 0 and var at ? outlets[at] : -1
            : outlets is [var first, ..] ? first : 0;
        var number = draft.Regulators.Count;
        draft.Regulators.Add(new RegulatorElement(
            name, isLine ? RegulatorKind.Line : RegulatorKind.Relief, holds, holds, to, spring, setBy, area, null, spilling.Place, [.. outlets], spilling.Spool));

        // A line regulator always spills: the pump gives more than is needed. A relief opens only above its set pressure.
        var gate = isLine ? Gate.Open : new Gate(GateKind.Regulator, number, RegulatorModes.Relieving);
        AddEdge(owner, LinkKind.RegulatorPort, holds, to, area, gate, name, SpillPort, spilling.Place);
    }

    /// <summary>
    /// Stuck shut it limits nothing. Stuck open a relief is a hole; the line regulator then spills all that the pump gives,
    /// and holds next to nothing.
    /// </summary>
    private void AddStuck(Owner owner, Regulator.Spilling spilling, RegulatorStuck stuck, string name, double area)
    {
        var holds = Resolve(spilling.Holds, name, "holds");
        if (holds < 0) return;
        if (stuck == RegulatorStuck.Open && lineHolds.Contains(holds))
        {
            draft.Assume($"assumed no line pressure: {name} has stuck open and spills all that the pump gives", spilling.Place);
            AddSpilling(owner, spilling, name, holds, [], area, 0);
            return;
        }

        var to = spilling.SpillsTo.Select(outlet => Resolve(outlet, name, "spills to")).FirstOrDefault(node => node >= 0, 0);
        if (stuck == RegulatorStuck.Open)
            AddEdge(owner, LinkKind.RegulatorPort, holds, to, area, Gate.Open, name, StuckText.Of(stuck), spilling.Place);
        else
            AddShut(owner, holds, to, name, StuckText.Of(stuck), spilling.Place);
    }

    private void AddStuck(Owner owner, Regulator.Reducing reducing, RegulatorStuck stuck, string name, double area)
    {
        var (from, @out, to) = (Resolve(reducing.From, name, "takes from"), Resolve(reducing.Out, name, "feeds"), Resolve(reducing.To, name, "drains to"));
        Add(from, @out, stuck == RegulatorStuck.Open);
        Add(@out, to, stuck == RegulatorStuck.Drained);

        void Add(int a, int b, bool open)
        {
            if (open) AddEdge(owner, LinkKind.RegulatorPort, a, b, area, Gate.Open, name, StuckText.Of(stuck), reducing.Place);
            else AddShut(owner, a, b, name, StuckText.Of(stuck), reducing.Place);
        }
    }

    private void AddReducing(
        Owner owner, LinkKind kind, string name, (int From, int Out, int To) nodes, RegulatorElement element)
    {
        if (nodes.Out < 0) return;
        var number = draft.Regulators.Count;
        draft.Regulators.Add(element with { From = nodes.From, Out = nodes.Out, To = nodes.To });
        AddEdge(
            owner, kind, nodes.From, nodes.Out, element.SquareMillimetres, new Gate(GateKind.Regulator, number, RegulatorModes.Feeding),
            name, FeedPort, element.Place);
        AddEdge(
            owner, kind, nodes.Out, nodes.To, element.SquareMillimetres, new Gate(GateKind.Regulator, number, RegulatorModes.Relieving),
            name, DrainPort, element.Place);
    }
}
