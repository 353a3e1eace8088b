using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Networks;

/// <summary>A screen or filter.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="From">The node before it.</param>
/// <param name="To">The node behind it.</param>
/// <param name="Bypass">The number of its bypass among the regulators; -1 where it has none that moves.</param>
/// <param name="Source">The model's screen.</param>
public sealed record ScreenElement(string Name, int From, int To, int Bypass, Screen Source)
{
    internal ScreenElement Renumbered(NewNumbers numbers)
    {
        var (name, from, to, bypass, source) = this;
        return new ScreenElement(name, numbers[from], numbers[to], bypass, source);
    }
}

public sealed partial class Network
{
    /// <summary>Screens and filters.</summary>
    public required ImmutableArray<ScreenElement> Screens { get; init; }
}

internal sealed partial class Draft
{
    public List<ScreenElement> Screens { get; } = [];
}

internal sealed partial class ElementDrafter
{
    private static readonly Phrase WithoutMesh = Phrase.Of($"without its mesh");
    private static readonly Phrase Clogged = Phrase.Of($"clogged");
    private static readonly Phrase Past = Phrase.Of($"bypass");

    public void Screens(Owner owner)
    {
        foreach (var screen in owner.Revision.Screens) AddScreen(owner, screen);
    }

    private void AddScreen(Owner owner, Screen screen)
    {
        var name = $"{owner.Part.Name}.{screen.Name}";
        var (from, to) = (Resolve(screen.From, name, "takes from"), Resolve(screen.To, name, "feeds"));
        if (from < 0 || to < 0 || from == to) return;
        AddMesh(owner, screen, name, from, to);

        // Where nothing holds oil back there is nothing to lead it past.
        var bypass = screen is { Bypass: { } beside, IsOut: false } ? AddBypass(owner, beside, $"{name}:bypass", from, to) : -1;
        draft.Screens.Add(new ScreenElement(name, from, to, bypass, screen));
    }

    /// <summary>What is left of the mesh is a hole of what is left of its area.</summary>
    private void AddMesh(Owner owner, Screen screen, string name, int from, int to)
    {
        if (screen.IsOut)
        {
            AddEdge(owner, LinkKind.Screen, from, to, double.PositiveInfinity, Gate.Open, name, WithoutMesh, screen.Place);
            return;
        }

        if (screen.Mesh.Area is null) draft.Assume($"assumed {new Area(Defaults.MeshArea)} for the mesh of {name}: no size given", screen.Place);
        var area = (1 - screen.Clogged) * (screen.Mesh.Area?.SquareMillimetres ?? Defaults.MeshArea);
        var clogged = screen.Clogged > 0 ? Phrase.Of($", {new Share(screen.Clogged)} clogged") : null;
        if (area > 0) AddEdge(owner, LinkKind.Screen, from, to, area, Gate.Open, name, draft.SkipsMetal ? Phrase.Empty : Phrase.Of($"mesh, {draft.Words(screen.Mesh)}{clogged}"), screen.Place);
        else AddShut(owner, from, to, name, Clogged, screen.Place);
    }

    /// <summary>It holds the oil behind the mesh at what is before it, less the difference at which it opens.</summary>
    private int AddBypass(Owner owner, Bypass bypass, string name, int from, int to)
    {
        var area = PortArea(bypass.Hole.Area, Defaults.OpeningArea, name, bypass.Place);
        if (bypass.Stuck is { } stuck)
        {
            if (stuck == BypassStuck.Open) AddEdge(owner, LinkKind.Bypass, from, to, area, Gate.Open, name, StuckText.Of(stuck), bypass.Place);
            else AddShut(owner, from, to, name, StuckText.Of(stuck), bypass.Place);
            draft.Stuck.Add(new StuckElement(name, stuck == BypassStuck.Open ? RegulatorStuck.Open : RegulatorStuck.Shut, bypass.Place));
            return -1;
        }

        var number = draft.Regulators.Count;
        draft.Regulators.Add(new RegulatorElement(
            name, RegulatorKind.Bypass, from, to, -1, -bypass.OpensAt.Kilopascals, [new Signal(from, 1)], area, null, bypass.Place, [], null));
        AddEdge(owner, LinkKind.Bypass, from, to, area, new Gate(GateKind.Regulator, number, RegulatorModes.Feeding), name, Past, bypass.Place);
        return number;
    }
}

internal sealed partial class FixedWays
{
    public void Screens(Revision revision)
    {
        foreach (var screen in revision.Screens)
        {
            if (screen.LetsThrough) Join(screen.From, screen.To);
        }
    }
}
