using Circuits.Model;

namespace Circuits.Networks;

/// <summary>How things have stuck, in words.</summary>
public static class StuckText
{
    /// <summary>A spool: <c>stuck at rest</c>, <c>stuck midway</c>.</summary>
    /// <param name="stuck">Where it has stuck.</param>
    public static string Of(StuckAt stuck) => stuck switch
    {
        StuckAt.Rest => "stuck at rest",
        StuckAt.Moved => "stuck moved",
        StuckAt.Midway => "stuck midway, every port a little open",
        _ => "stuck midway, every port shut",
    };

    /// <summary>A regulator: <c>stuck open</c>.</summary>
    /// <param name="stuck">How it has stuck.</param>
    public static string Of(RegulatorStuck stuck) => stuck switch
    {
        RegulatorStuck.Open => "stuck open",
        RegulatorStuck.Shut => "stuck shut",
        _ => "stuck with its outlet drained",
    };

    /// <summary>A solenoid: <c>stuck low</c>, <c>dead</c>.</summary>
    /// <param name="fault">What is wrong with it.</param>
    public static string Of(SolenoidFault fault) => fault switch
    {
        SolenoidFault.StuckLow => "stuck low",
        SolenoidFault.StuckHigh => "stuck high",
        SolenoidFault.Dead => "dead",
        _ => "of the other polarity",
    };
}
