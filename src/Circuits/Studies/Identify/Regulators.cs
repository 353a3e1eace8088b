using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class ElementTraits
{
    public void Regulators(int revision)
    {
        foreach (var regulator in part.Revisions[revision].Regulators) table.Yes(Named(part.Name, TraitKind.Regulator, "regulator", regulator.Name), revision);
    }
}

internal sealed partial class Unseen
{
    public void Regulators(Revision revision)
    {
        foreach (var regulator in revision.Regulators) Add($"regulator {regulator.Name}", Of(regulator));
    }

    private static string Of(Regulator regulator) => Join(
    [
        regulator switch
        {
            Regulator.Spilling spilling => $"{spilling.Holds.Name}>{Join(spilling.SpillsTo.Select(to => to.Name.ToString()))}",
            Regulator.Reducing reducing => $"{reducing.From.Name}>{reducing.Out.Name}>{reducing.To.Name}",
            _ => "",
        },
        Of(regulator.Spring?.Kilopascals), Of(regulator.PortArea?.SquareMillimetres),
        Join(regulator.SetBy.Select(signal => $"{signal.From.Name} {Of(signal.Ratio)}")),
        regulator.Spool is { } spool
            ? Join([Of(spool.Land.SquareMillimetres), Of(spool.Rate.NewtonsPerMillimetre), Of(spool.Travel.Millimetres), Of(spool.Overlap.Millimetres)])
            : "",
    ]);
}
