using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

internal sealed partial class ElementFaults
{
    public void Restrictions(Assembly assembly)
    {
        foreach (var (_, part, revision) in Fitted(assembly))
        {
            foreach (var restriction in revision.Restrictions)
            {
                var what = Phrase.Of($"the hole between {restriction.A.Name} and {restriction.B.Name}");
                var plug = new SetRestriction(part.Name, restriction, null);
                Add(new Fault(FaultKind.HolePlugged, plug.Element, Phrase.Of($"{what} plugged"), restriction.Place, 0, [plug]));
                if (restriction.Shape is not Shape.Hole hole) continue;
                var wear = new SetRestriction(part.Name, restriction, Wider(assembly, hole));
                Add(Worn(wear.Element, what, wear.Hole!, wear));
            }
        }
    }
}
