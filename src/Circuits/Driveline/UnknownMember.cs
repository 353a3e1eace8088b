using Circuits.Findings;

namespace Circuits.Driveline;

/// <summary>A name in the gear train that is no member of it.</summary>
public static class UnknownMember
{
    /// <summary>The rule.</summary>
    public static Rule Rule { get; } = new(
        "unknown-member", Severity.Error,
        "A name in the gear train is neither `case`, `input`, `output`, nor the sun, carrier or ring of one of its "
        + "planetaries.",
        "The gear train cannot be built, so nothing can be said about ratios, tie-ups or missing drive.",
        "planetaries: {front: {sun: 34, ring: 74}}\n"
        + "clutches: {low: [front.annulus, case]}    # the member is called `ring`",
        "Write `planetary.sun`, `planetary.carrier` or `planetary.ring`, with the planetary's name as it stands under "
        + "`planetaries`.");
}
