using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class ElementTraits
{
    public void Screens(int revision)
    {
        foreach (var screen in part.Revisions[revision].Screens)
        {
            table.Yes(Named(part.Name, TraitKind.Screen, "screen", screen.Name), revision);
            if (screen.Bypass is not { } bypass) continue;
            table.Yes(BypassOf(screen.Name, sized: false), revision);
            table.Size(BypassOf(screen.Name, sized: true), revision, BenchText.SizeOf(bypass.Hole));
        }
    }

    private Trait BypassOf(string screen, bool sized) => WithSize(part.Name, TraitKind.Bypass, screen, $"bypass beside screen {screen}", sized, Means.Look, Means.PinGauge) with
    {
        Implied = sized ? [new TraitKey(TraitKind.Bypass, screen, false), new TraitKey(TraitKind.Screen, screen, false)] : [new TraitKey(TraitKind.Screen, screen, false)],
    };
}

internal sealed partial class Unseen
{
    public void Screens(Revision revision)
    {
        foreach (var screen in revision.Screens)
        {
            Add($"screen {screen.Name}", Join(
            [
                screen.From.Name.ToString(), screen.To.Name.ToString(), Of(screen.Mesh), Of(screen.Clogged), Of(screen.Bypass?.OpensAt.Kilopascals),
                screen.Bypass is { } bypass ? Of(bypass.Hole) : "",
            ]));
        }
    }
}
