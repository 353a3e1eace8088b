using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

internal sealed partial class ElementFaults
{
    public void Accumulators(Assembly assembly)
    {
        foreach (var (number, part, revision) in Fitted(assembly))
        {
            foreach (var accumulator in revision.Accumulators.Where(accumulator => accumulator.Spring is not null))
                Add(WithoutSpring(new LoseAccumulatorSpring(part.Name, accumulator)), number);
        }
    }
}
