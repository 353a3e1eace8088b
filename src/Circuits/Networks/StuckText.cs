using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Networks;

/// <summary>What to say of how things have stuck.</summary>
public static class StuckText
{
    /// <summary>A spool: <c>stuck at rest</c>, <c>stuck midway</c>.</summary>
    /// <param name="stuck">Where it has stuck.</param>
    public static Phrase Of(StuckAt stuck) => stuck switch
    {
        StuckAt.Rest => Phrase.Of($"stuck at rest"),
        StuckAt.Moved => Phrase.Of($"stuck moved"),
        StuckAt.Midway => Phrase.Of($"stuck midway, every port a little open"),
        _ => Phrase.Of($"stuck midway, every port shut"),
    };

    /// <summary>A regulator: <c>stuck open</c>.</summary>
    /// <param name="stuck">How it has stuck.</param>
    public static Phrase Of(RegulatorStuck stuck) => stuck switch
    {
        RegulatorStuck.Open => Phrase.Of($"stuck open"),
        RegulatorStuck.Shut => Phrase.Of($"stuck shut"),
        _ => Phrase.Of($"stuck with its outlet drained"),
    };

    /// <summary>A screen's bypass: <c>stuck open</c>.</summary>
    /// <param name="stuck">How it has stuck.</param>
    public static Phrase Of(BypassStuck stuck) => stuck switch
    {
        BypassStuck.Open => Phrase.Of($"stuck open"),
        BypassStuck.Shut => Phrase.Of($"stuck shut"),
    };

    /// <summary>A solenoid: <c>stuck low</c>, <c>dead</c>.</summary>
    /// <param name="fault">What is wrong with it.</param>
    public static Phrase Of(SolenoidFault fault) => fault switch
    {
        SolenoidFault.StuckLow => Phrase.Of($"stuck low"),
        SolenoidFault.StuckHigh => Phrase.Of($"stuck high"),
        SolenoidFault.Dead => Phrase.Of($"dead"),
        _ => Phrase.Of($"of the other polarity"),
    };
}
