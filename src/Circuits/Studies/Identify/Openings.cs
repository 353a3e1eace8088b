using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class Unseen
{
    public void Openings(Revision revision)
    {
        foreach (var opening in revision.Openings.Where(opening => opening.Shape is Shape.Cutout))
            Add($"opening {part}@{string.Join('-', opening.At.Select(at => at.Name))}", Of(opening.Shape));
    }
}
