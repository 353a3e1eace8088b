using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Changes;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Hazards;

/// <summary>Something wrong whose consequences are asked for.</summary>
/// <param name="Name">It in plain words.</param>
/// <param name="Code">Its code, or the change as it was asked for.</param>
/// <param name="Item">The item that fails.</param>
/// <param name="Function">What the item is for.</param>
/// <param name="Place">Where the file describes it.</param>
/// <param name="Weight">How likely it is against others, or null.</param>
/// <param name="Changes">What brings it about.</param>
public sealed record HazardMode(string Name, string Code, string Item, string Function, Place Place, double? Weight, ImmutableArray<Change> Changes)
{
    /// <summary>A fault of the library.</summary>
    /// <param name="assembly">The assembly without it.</param>
    /// <param name="fault">The fault.</param>
    public static HazardMode Of(Assembly assembly, Fault fault) => new(
        fault.Name, fault.Code, ItemFunction.ItemOf(fault.Changes[0]), ItemFunction.Of(assembly, fault.Changes[0]), fault.Place, fault.Weight, fault.Changes);

    /// <summary>A change, or several at once, that someone asks for.</summary>
    /// <param name="assembly">The assembly without them.</param>
    /// <param name="code">What was asked for, as it was written.</param>
    /// <param name="changes">The changes; at least one.</param>
    public static HazardMode Of(Assembly assembly, string code, ImmutableArray<Change> changes) => new(
        string.Join(", and ", changes.Select(change => change.Text)), code, ItemFunction.ItemOf(changes[0]), ItemFunction.Of(assembly, changes[0]), changes[0].Place, null, changes);
}
