using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Driveline;

/// <summary>The rules that a gear train is checked by.</summary>
public static class DrivelineRules
{
    /// <summary>All of them, by name.</summary>
    public static ImmutableArray<Rule> All { get; } =
    [
        CouplingWithoutEffect.Rule, GearsetCannotDrive.Rule, GearsetCannotTurn.Rule, GearsetTooBig.Rule, UnknownMember.Rule,
    ];
}
