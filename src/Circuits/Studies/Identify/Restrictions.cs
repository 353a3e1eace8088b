using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class ElementTraits
{
    public void Restrictions(int revision)
    {
        var restrictions = part.Revisions[revision].Restrictions;
        foreach (var hole in restrictions) DeriveHole(part, TraitKind.Restriction, hole.A, hole.B, hole.Shape, revision, table);
        foreach (var alike in restrictions.GroupBy(hole => Between(part.Name, TraitKind.Restriction, hole.A, hole.B)))
            table.Count(HoleCount(part.Name, alike.Key), revision, alike.Count(), listed: alike.Count() > 1);
    }

    private static Trait HoleCount(string part, (string One, string Two) between) => new(
        part, new TraitKey(TraitKind.HoleCount, $"{between.One}~{between.Two}", false), $"drilled holes between {between.One} and {between.Two}", Means.Count)
    {
        One = $"drilled hole between {between.One} and {between.Two}",
    };
}

internal sealed partial class Unseen
{
    public void Restrictions(Revision revision)
    {
        foreach (var hole in revision.Restrictions) Add($"hole {hole.A.Name}~{hole.B.Name}", Of(hole.Shape));
    }
}
