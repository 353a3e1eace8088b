using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Rules;
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

    /// <summary>Weights that the file gives to faults that no revision can have.</summary>
    /// <param name="unit">The unit.</param>
    public static IEnumerable<Finding> Unknown(Unit unit)
    {
        if (unit.Faults.Named.IsEmpty) yield break;
        var start = Assembly.DefaultOf(unit);
        var assemblies = unit.Matched.Select(set => Assembly.Of(unit, set)).Append(start).Concat(unit.Parts.SelectMany((part, i) =>
            part.Revisions.Where(revision => revision != start.Revisions[i]).Select(revision => Assembly.Of(unit, start.Revisions.SetItem(i, revision)))));
        var codes = assemblies.SelectMany(All).Select(fault => fault.Code).ToHashSet();
        foreach (var named in unit.Faults.Named.Where(named => !codes.Contains(named.Code)))
        {
            yield return DiagnosisRules.UnknownFault.At(
                named.Place, $"faults: named: no assembly of this unit can have the fault '{named.Code}'", DidYouMean.Find(named.Code, codes) is { } close ? $"Did you mean {close}?" : null);
        }
    }

    private static IEnumerable<Fault> All(Assembly assembly) => [.. PartFaults.Of(assembly), .. ElementFaults.Of(assembly), .. PartFaults.Sheets(assembly)];

    /// <summary>Parts with the revisions that are fitted.</summary>
    internal static IEnumerable<(Part Part, Revision Revision)> Fitted(Assembly assembly) => assembly.Unit.Parts.Zip(assembly.Revisions);
}
