using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Faults;

/// <summary>Several faults at once.</summary>
internal static class FaultSets
{
    /// <summary>An assembly with faults; the same one where there are none.</summary>
    /// <param name="assembly">The assembly without them.</param>
    /// <param name="faults">Faults of that assembly.</param>
    public static Assembly With(this Assembly assembly, ImmutableArray<Fault> faults) =>
        faults.IsEmpty ? assembly : ChangedAssembly.Of(assembly, faults.SelectMany(fault => fault.Changes));

    /// <summary>A key that the same faults in the same order share.</summary>
    /// <param name="faults">The faults.</param>
    public static string KeyOf(ImmutableArray<Fault> faults) => string.Join('\n', faults.Select(fault => fault.Code));
}
