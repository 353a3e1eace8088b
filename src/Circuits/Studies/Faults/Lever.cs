using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

internal sealed partial class ElementFaults
{
    public void Lever(Assembly assembly)
    {
        foreach (var (number, part, revision) in Fitted(assembly))
        {
            var drained = revision.Lever.SelectMany(position => position.Ports).Where(Drains)
                .SelectMany(port => port.Passages.Where(use => !use.Name.IsExhaust).Select(use => (use.Name, port.Place))).DistinctBy(pair => pair.Name);
            foreach (var (passage, place) in drained)
                Add(Restricted(new RestrictLever(part.Name, passage, assembly.Unit.Faults.Exhaust, place), Phrase.Of($"exhaust of {passage} at the manual valve restricted")), number);
        }
    }
}
