using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Networks;

public sealed partial class Network
{
    /// <summary>Names of the manual valve's positions.</summary>
    public required ImmutableArray<string> LeverPositions { get; init; }
}

internal sealed partial class Draft
{
    public List<string> LeverPositions { get; } = [];
}

internal sealed partial class ElementDrafter
{
    public void Lever(Owner owner)
    {
        var name = $"{owner.Part.Name}.lever";
        foreach (var position in owner.Revision.Lever)
        {
            if (!draft.LeverPositions.Contains(position.Name)) draft.LeverPositions.Add(position.Name);
            var number = draft.LeverPositions.IndexOf(position.Name);
            AddPorts(
                owner, LinkKind.LeverPort, position.Ports, new Gate(GateKind.Lever, 0, number), name,
                draft.SkipsMetal ? Phrase.Empty : Phrase.Of($"in {position.Name}"));
        }
    }
}
