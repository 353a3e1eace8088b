using Circuits.Model;
using Circuits.Quantities;
using Circuits.Stacking;

namespace Circuits.Judging.Sizes;

internal sealed partial class MissingSizes
{
    public void Screens((Part Part, Revision Revision) fitted)
    {
        var revision = fitted.Revision;
        foreach (var screen in revision.Screens)
        {
            var name = $"{fitted.Part.Name}.{screen.Name}";
            if (screen.Mesh.Area is null) Add(fitted, $"mesh of screen {name}", Defaults.MeshArea, Dimension.Area, area => With(item => item with { Mesh = Cut(area) }));
            if (screen.Bypass is { Hole.Area: null })
                Add(fitted, $"bypass of screen {name}", Defaults.OpeningArea, Dimension.Area, area => With(item => item with { Bypass = item.Bypass! with { Hole = Cut(area) } }));

            Revision With(Func<Screen, Screen> rewrite) =>
                revision with { Screens = [.. revision.Screens.Select(item => item.Name == screen.Name ? rewrite(item) : item)] };
        }
    }

    private static Shape.Cutout Cut(double area) => new(new Area(area));
}
