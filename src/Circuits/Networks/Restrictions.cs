using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Networks;

internal sealed partial class ElementDrafter
{
    public void Restrictions(Owner owner)
    {
        foreach (var item in owner.Revision.Restrictions)
            AddHole(owner, LinkKind.Restriction, item.A, item.B, item.Shape, Defaults.OpeningArea, item.Place);
    }

    private void AddHole(Owner owner, LinkKind kind, PassageUse a, PassageUse b, Shape shape, double standard, Place place)
    {
        var element = $"{owner.Part.Name}:{Short(owner, a)}~{Short(owner, b)}";
        var (nodeA, nodeB) = (Resolve(a, element, "joins"), Resolve(b, element, "joins"));
        if (shape.Area is null)
            draft.Assume($"assumed {new Area(standard)} for {element}: no size given", place);
        var area = shape is Shape.Gap gap ? GapHole.Area(gap) : shape.Area?.SquareMillimetres ?? standard;
        if (shape is Shape.Gap)
        {
            draft.Assume(
                $"assumed that the gap {element} loses as much as a hole of {new Area(area)}, as it does at {new Pressure(GapHole.At)} in hot oil, where flow is not computed",
                place);
        }

        var counts = shape is Shape.Gap or Shape.Slot or Shape.Hole { Depth: not null } ? shape : null;
        AddEdge(owner, kind, nodeA, nodeB, area, Gate.Open, element, draft.Words(shape), place, counts);
    }

    private static string Short(Owner owner, PassageUse use) =>
        use.Name.Part == owner.Part.Name ? use.Name.Passage : use.Name.ToString();
}

internal sealed partial class FixedWays
{
    public void Restrictions(Revision revision)
    {
        foreach (var restriction in revision.Restrictions) Join(restriction.A, restriction.B);
    }
}
