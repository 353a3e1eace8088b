using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class ElementTraits
{
    public void Clutches(int revision)
    {
        foreach (var clutch in unit.Clutches) CountFaces(part, clutch, revision, table);
    }

    private static void CountFaces(Part part, Clutch clutch, int revision, TraitTable table)
    {
        if (!part.Revisions.Any(any => any.Clutches.Any(change => change.Name == clutch.Name && change.Plates is not null))) return;
        var trait = new Trait(part.Name, new TraitKey(TraitKind.FaceCount, clutch.Name, false), $"friction faces of {clutch.Name}", Means.Count) { One = $"friction face of {clutch.Name}" };
        var plates = part.Revisions[revision].Clutches.FirstOrDefault(change => change.Name == clutch.Name)?.Plates ?? clutch.Plates;
        if (plates is { } count) table.Count(trait, revision, count);
        else table.Maybe(trait, revision);
    }
}

internal sealed partial class Unseen
{
    public void Clutches(Revision revision)
    {
        foreach (var clutch in revision.Clutches) Add($"clutch {clutch.Name}", Of(clutch));
    }

    private static string Of(Clutch clutch) => Join(
    [
        clutch.At?.Name.ToString() ?? "", clutch.ReleaseAt?.Name.ToString() ?? "", Of(clutch.Area?.SquareMillimetres), Of(clutch.ReleaseArea?.SquareMillimetres),
        Of(clutch.ReturnSpring?.Newtons), Of(clutch.Rate?.NewtonsPerMillimetre), Of(clutch.Stroke?.Millimetres), Of(clutch.Fill?.Millilitres),
        Of(clutch.PackRate?.NewtonsPerMillimetre), Of(clutch.Friction), Of(clutch.Radius?.Millimetres),
        clutch.Drum is { } drum ? Join([drum.Turns.Name, Of(drum.Oil.Millimetres), Of(drum.Inner.Millimetres), Of(drum.Outer.Millimetres)]) : "",
    ]);
}
