using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

internal sealed partial class ElementFaults
{
    public void Clutches(Assembly assembly)
    {
        foreach (var clutch in assembly.Unit.Clutches.Select(clutch => clutch.In(assembly)))
        {
            AddAll(Seals(assembly, clutch));

            // Told after those of all parts.
            if (clutch is { ReturnSpring: not null, At: { } at } && assembly.Unit.FindPart(at.Name.Part) is not null)
                Add(WithoutSpring(new LoseReturnSpring(at.Name.Part, clutch)), assembly.Revisions.Length);
        }
    }

    /// <summary>A clutch's apply side, and a servo's release side, leaking to sump.</summary>
    private static IEnumerable<Fault> Seals(Assembly assembly, Clutch clutch)
    {
        if (clutch.At is { } at && Has(assembly, at.Name)) yield return Seal(assembly, clutch, at, clutch.Name, Phrase.Of($"seal of clutch {clutch.Name} leaking"));
        if (clutch.ReleaseAt is { } release && Has(assembly, release.Name))
            yield return Seal(assembly, clutch, release, $"{clutch.Name}:release", Phrase.Of($"release side of clutch {clutch.Name} leaking"));
    }

    private static bool Has(Assembly assembly, PassageName name) =>
        FaultLibrary.Fitted(assembly).Any(pair => pair.Part.Name == name.Part && pair.Revision.Passages.Any(passage => passage.Name == name.Passage));

    private static Fault Seal(Assembly assembly, Clutch clutch, PassageUse chamber, string element, Phrase name) => new(
        FaultKind.SealLeaking, element, name, clutch.Place, 0,
        [new AddLeak(chamber.Name.Part, chamber.Name, PassageName.Exhaust, assembly.Unit.Faults.SealLeak, clutch.Place)]);
}
