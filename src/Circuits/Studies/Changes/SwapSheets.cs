using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Studies.Changes;

/// <summary>Two sheets of a joint lie in each other's place.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="First">One sheet.</param>
/// <param name="Second">The other.</param>
public sealed record SwapSheets(Joint Joint, string First, string Second)
    : Change(First, $"{Joint.Name}:{First}+{Second}", Joint.Place)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"lay {First} and {Second} in each other's place in joint {Joint.Name}");

    internal override string Item => $"sheets {First} and {Second}";

    internal override string FunctionIn(Assembly assembly) => "each seals and meters in its own place";

    internal override ImmutableArray<string> Claims => [$"sheets of joint {Joint.Name}"];

    internal override Revision Rewrite(Revision revision) => revision;

    internal override Unit Rewrite(Unit unit) => unit with
    {
        Joints = [.. unit.Joints.Select(joint => joint.Name == Joint.Name ? joint with { Sheets = [.. joint.Sheets.Select(Other)] } : joint)],
    };

    private NameUse Other(NameUse sheet) =>
        sheet.Name == First ? sheet with { Name = Second } : sheet.Name == Second ? sheet with { Name = First } : sheet;
}
