using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Changes;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Hazards;

/// <summary>Something wrong whose consequences are asked for.</summary>
/// <param name="Name">Its plain name.</param>
/// <param name="Code">Its code, or the change as it was asked for.</param>
/// <param name="Item">The item that fails.</param>
/// <param name="Function">What the item is for.</param>
/// <param name="Place">Where the file describes it.</param>
/// <param name="Weight">How likely it is against others, or null.</param>
/// <param name="Changes">What brings it about.</param>
public sealed record HazardMode(Phrase Name, string Code, string Item, string Function, Place Place, double? Weight, ImmutableArray<Change> Changes)
{
    /// <summary>A fault of the library.</summary>
    /// <param name="assembly">The assembly without it.</param>
    /// <param name="fault">The fault.</param>
    public static HazardMode Of(Assembly assembly, Fault fault) => new(
        fault.Name, fault.Code, fault.Changes[0].Item, fault.Changes[0].FunctionIn(assembly), fault.Place, fault.Weight, fault.Changes);

    /// <summary>A change, or several at once, that someone asks for.</summary>
    /// <param name="assembly">The assembly without them.</param>
    /// <param name="code">What was asked for, as it was written.</param>
    /// <param name="changes">The changes; at least one.</param>
    public static HazardMode Of(Assembly assembly, string code, ImmutableArray<Change> changes) => new(
        Phrase.Join(", and ", changes.Select(change => change.Text)), code, changes[0].Item, changes[0].FunctionIn(assembly), changes[0].Place, null, changes);
}
