using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking.Rules;

namespace Circuits.Networks;

/// <summary>Adds what part revisions contribute, the pump and the clutches to the draft; how each kind is laid stands in that kind's file.</summary>
internal sealed partial class ElementDrafter(Draft draft) : IElementKinds<Owner>
{
    private static readonly Phrase AtRest = Phrase.Of($"at rest");
    private static readonly Phrase Moved = Phrase.Of($"moved");
    private static readonly Phrase FeedPort = Phrase.Of($"feed port");
    private static readonly Phrase DrainPort = Phrase.Of($"drain port");
    private static readonly Phrase SpillPort = Phrase.Of($"spill port");
    private static readonly Phrase Drained = Phrase.Of($"drained");
    private static readonly Phrase Fed = Phrase.Of($"fed");
    private static readonly Phrase Chamber = Phrase.Of($"chamber");

    public int Pump { get; private set; } = -1;

    public void Add()
    {
        if (draft.Assembly.Unit.Pump is { } pump)
            Pump = Resolve(pump.Into, "the pump", "feeds");
        lineHolds = LineRegulators.FindHolds(draft, Pump);
        foreach (var (part, revision) in draft.Parts) this.Each(new Owner(part, revision));
        foreach (var clutch in draft.Assembly.Unit.Clutches) AddClutch(clutch);
        LineRegulators.Check(draft, Pump, draft.Regulators);
    }

    public void Passages(Owner owner) { } // laid before all joints, which join them

    public void Openings(Owner owner) { } // laid joint by joint, as the sheets lie

    public void Balls(Owner owner) { } // laid once the sheets are, since some of those leave them nothing to close

    public void Clutches(Owner owner) { } // a revision changes those of the unit, which are laid last

    private int Resolve(PassageUse use, string element, string does)
    {
        if (use.Name.IsExhaust) return 0;
        if (draft.Passages.TryGetValue(use.Name, out var node)) return node;
        draft.Findings.Add(MissingName.Rule.At(use.Place, $"{element} {does} {use.Name}, which this assembly lacks"));
        return -1;
    }

    private void AddEdge(Owner owner, LinkKind kind, int a, int b, double area, Gate gate, string element, Phrase detail, Place place, Shape? shape = null)
    {
        if (a < 0 || b < 0 || a == b) return;
        draft.Edges.Add(new Edge
        {
            Kind = kind,
            A = a,
            B = b,
            Area = area,
            Gate = gate,
            Element = element,
            Part = owner.Part.Name,
            Revision = owner.Revision.Name,
            Detail = detail,
            Place = place,
            Shape = shape,
        });
    }

    /// <summary>A way that ought to open and never does.</summary>
    private void AddShut(Owner owner, int a, int b, string element, Phrase why, Place place) =>
        AddEdge(owner, LinkKind.Metal, a, b, 0, Gate.Shut, element, why, place);

    private double PortArea(Area? given, double standard, string name, Place place)
    {
        if (given is null)
            draft.Assume($"assumed {new Area(standard)} for the port of {name}: no area given", place);
        return given?.SquareMillimetres ?? standard;
    }
}

/// <summary>A part with the revision that is fitted.</summary>
internal sealed record Owner(Part Part, Revision Revision)
{
    public Dictionary<string, Place> Places { get; } = [];

    /// <summary>All ports of one element share one assumption, at the element's own line.</summary>
    public Place PlaceOf(string element, Place fallback)
    {
        if (Places.TryGetValue(element, out var place)) return place;
        return Places[element] = fallback;
    }
}
