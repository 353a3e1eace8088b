using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Studies.Faults;

/// <summary>Everything that can be wrong with an assembly, derived from the assembly itself.</summary>
public static class FaultLibrary
{
    /// <summary>Every fault, kind by kind and in the order of the file; no two share a code. Those whose weight is 0 are left out.</summary>
    /// <param name="assembly">The assembly as it should be.</param>
    public static ImmutableArray<Fault> Of(Assembly assembly)
    {
        var settings = assembly.Unit.Faults;
        var named = settings.Named.ToDictionary(item => item.Code, item => item.Weight);
        var codes = new HashSet<string>();
        var faults = ImmutableArray.CreateBuilder<Fault>();
        foreach (var draft in All(assembly))
        {
            var fault = draft with { Weight = settings.WeightOf(draft.Kind) };
            if (named.TryGetValue(fault.Code, out var weight)) fault = fault with { Weight = weight };
            if (fault.Weight > 0 && codes.Add(fault.Code)) faults.Add(fault);
        }

        return faults.ToImmutable();
    }

    private static IEnumerable<Fault> All(Assembly assembly) =>
    [
        .. PartFaults.Of(assembly), .. BallFaults.Of(assembly), .. HoleFaults.Of(assembly), .. LeakFaults.Between(assembly),
        .. ValveFaults.Of(assembly), .. SpringFaults.Of(assembly), .. SolenoidFaults.Of(assembly), .. LeakFaults.Seals(assembly),
        .. ExhaustFaults.Of(assembly), .. PartFaults.Sheets(assembly),
    ];

    /// <summary>Parts with the revisions that are fitted.</summary>
    internal static IEnumerable<(Part Part, Revision Revision)> Fitted(Assembly assembly) => assembly.Unit.Parts.Zip(assembly.Revisions);
}
