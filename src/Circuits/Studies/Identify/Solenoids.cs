using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class ElementTraits
{
    public void Solenoids(int revision)
    {
        foreach (var solenoid in part.Revisions[revision].Solenoids) DeriveSolenoid(part.Name, solenoid, revision, table);
    }

    private static void DeriveSolenoid(string part, Solenoid solenoid, int revision, TraitTable table)
    {
        table.Yes(Named(part, TraitKind.Solenoid, "solenoid", solenoid.Name), revision);
        TraitKey there = new(TraitKind.Solenoid, solenoid.Name, false);
        // Dead, the outlet of one that rests high is open to its feed, that of one that rests low to its drain.
        var dead = new Trait(part, new TraitKey(TraitKind.DeadHigh, solenoid.Name, false), $"solenoid {solenoid.Name} passes air to its outlet when dead", Means.Air) { Implied = [there] };
        if (solenoid.AtRest == RestState.High) table.Yes(dead, revision);
        var holds = new Trait(part, new TraitKey(TraitKind.HoldsPressure, solenoid.Name, false), $"solenoid {solenoid.Name} holds a pressure between off and full", Means.Tester) { Implied = [there] };
        if (solenoid.Kind == SolenoidKind.Pressure) table.Yes(holds, revision);
    }
}

internal sealed partial class Unseen
{
    public void Solenoids(Revision revision)
    {
        foreach (var solenoid in revision.Solenoids) Add($"solenoid {solenoid.Name}", Of(solenoid));
    }

    private static string Of(Solenoid solenoid) => Join(
    [
        $"{solenoid.Feed.Name}>{solenoid.Out.Name}>{solenoid.To.Name}", Of(solenoid.PortArea?.SquareMillimetres),
        Join(solenoid.Table.Select(point => $"{Of(point.Current.Amperes)} {Of(point.Pressure.Kilopascals)}")),
    ]);
}
