using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

/// <summary>Parts of another revision, and sheets in another order.</summary>
internal static class PartFaults
{
    public static IEnumerable<Fault> Of(Assembly assembly)
    {
        foreach (var (part, fitted) in FaultLibrary.Fitted(assembly))
        {
            foreach (var other in part.Revisions.Where(revision => revision.Name != fitted.Name))
            {
                yield return new Fault(
                    FaultKind.WrongRevision, $"{part.Name}={other.Name}", Phrase.Of($"{part.Name} {other.Name} in place of {part.Name} {fitted.Name}"), other.Place, 0,
                    [new FitRevision(part, other, fitted.Name)]);
            }
        }
    }

    public static IEnumerable<Fault> Sheets(Assembly assembly)
    {
        foreach (var joint in assembly.Unit.Joints)
        {
            for (var i = 0; i < joint.Sheets.Length; i++)
            {
                for (var j = i + 1; j < joint.Sheets.Length; j++)
                {
                    var swap = new SwapSheets(joint, joint.Sheets[i].Name, joint.Sheets[j].Name);
                    yield return new Fault(
                        FaultKind.SheetsSwapped, swap.Element, Phrase.Of($"{swap.First} and {swap.Second} in each other's place in joint {joint.Name}"), joint.Place, 0, [swap]);
                }
            }
        }
    }
}
