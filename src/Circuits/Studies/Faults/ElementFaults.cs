using System.Globalization;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

/// <summary>What can be wrong with each kind of element; what that is stands in the kind's file.</summary>
internal sealed partial class ElementFaults : IElementKinds<Assembly>
{
    private readonly List<(Fault Fault, int Part, bool Last)> found = [];

    /// <summary>
    /// The faults, kind by kind: of holes, those in sheets first, those in walls, those under balls; of all that sticks, drains or has lost a spring,
    /// part by part.
    /// </summary>
    /// <param name="assembly">The assembly as it should be.</param>
    public static IEnumerable<Fault> Of(Assembly assembly)
    {
        var faults = new ElementFaults();
        faults.Each(assembly);
        return faults.found.OrderBy(each => GroupOf(each.Fault.Kind)).ThenBy(each => each.Part).ThenBy(each => each.Last).Select(each => each.Fault);
    }

    public void Leaks(Assembly assembly) { } // a leak that the file has is none the worse for a fault

    /// <summary>Kinds that are told of one element after the other count as one.</summary>
    private static FaultKind GroupOf(FaultKind kind) => kind switch
    {
        >= FaultKind.ValveStuckAtRest and <= FaultKind.RegulatorStuckDrained => FaultKind.ValveStuckAtRest,
        >= FaultKind.SolenoidStuckLow and <= FaultKind.SolenoidReversed => FaultKind.SolenoidStuckLow,
        _ => kind,
    };

    private void Add(Fault fault, int part = 0, bool last = false) => found.Add((fault, part, last));

    private void AddAll(IEnumerable<Fault> faults)
    {
        foreach (var fault in faults) Add(fault);
    }

    /// <summary>The fitted revisions, by the number of their part.</summary>
    private static IEnumerable<(int Number, Part Part, Revision Revision)> Fitted(Assembly assembly) =>
        assembly.Revisions.Select((revision, i) => (i, assembly.Unit.Parts[i], revision));

    private static Fault WithoutSpring(Change change) => new(FaultKind.SpringMissing, change.Element, change.Text, change.Place, 0, [change]);

    private static Fault Restricted(Change change, Phrase name) => new(FaultKind.ExhaustRestricted, change.Element, name, change.Place, 0, [change]);

    private static bool Drains(Port port) => port.Passages.Any(use => use.Name.IsExhaust);

    private static Fault Worn(string element, Phrase what, Shape.Hole hole, Change change) => new(
        FaultKind.HoleWorn, element, Phrase.Of($"{what} worn to {hole.Diameter}"), change.Place, 0, [change]);

    private static Shape.Hole Wider(Assembly assembly, Shape.Hole hole)
    {
        var millimetres = hole.Diameter.Millimetres * assembly.Unit.Faults.Wear;
        return new Shape.Hole(new Length(millimetres), string.Create(CultureInfo.InvariantCulture, $"{millimetres:0.##} mm"));
    }
}
