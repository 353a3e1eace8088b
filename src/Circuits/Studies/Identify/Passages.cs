using Circuits.Model;

namespace Circuits.Studies.Identify;

internal sealed partial class Unseen
{
    public void Passages(Revision revision)
    {
        foreach (var passage in revision.Passages.Where(passage => passage.Locations.IsEmpty))
            Add($"passage {passage.Name}, which opens nowhere", "");
    }
}
