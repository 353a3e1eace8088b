using Circuits.Findings;
using Circuits.Judging.Rules;
using Circuits.Model;

namespace Circuits.Studies.Changes;

/// <summary>Looks up what a leak joins: passages, clutches for their chambers, the sump.</summary>
internal sealed class PassageTargets(Assembly assembly, List<Finding> faults)
{
    private readonly TargetNames names = new(assembly, faults);

    public AddLeak? Leak(ChangeRequest.Leak request)
    {
        var (a, b) = (Find(request.A, request.Place), Find(request.B, request.Place));
        if (a is not { } from || b is not { } to) return null;
        if (from.Name == to.Name)
        {
            faults.Add(ChangeRules.ImpossibleChange.At(request.Place, $"a leak joins two passages, and {request.A} and {request.B} are one: {from.Name}"));
            return null;
        }

        // A leak belongs to a part: that of the first passage that has one.
        var owner = from.Name.IsExhaust ? to : from;
        return new AddLeak(owner.Name.Part, from.Name, to.Name, request.Area, owner.Place);
    }

    private PassageUse? Find(string name, Place place)
    {
        if (name == "exhaust") return new PassageUse(PassageName.Exhaust, place);
        if (assembly.Unit.Clutches.FirstOrDefault(clutch => clutch.Name == name) is { } declared)
        {
            var clutch = declared.In(assembly);
            if (clutch.At is { } at && Passages().Any(passage => passage.Name == at.Name)) return at;
        }

        var found = names.Find("passage or clutch", name, place, revision => revision.Passages.Select(passage => (passage.Name, passage)));
        return found is null ? null : new PassageUse(new PassageName(found.Part, found.Name), found.Item.Place);
    }

    private IEnumerable<PassageUse> Passages() => assembly.Unit.Parts.Zip(assembly.Revisions)
        .SelectMany(pair => pair.Second.Passages.Select(passage => new PassageUse(new PassageName(pair.First.Name, passage.Name), passage.Place)));
}
