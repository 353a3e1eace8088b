using System.CommandLine;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Studies.Shifts;

namespace Circuits.Cli;

/// <summary>The options that say under what conditions shifts are timed.</summary>
internal sealed class ShiftOptions
{
    private readonly Option<string?> temperature = new("--temperature") { HelpName = "90degC", Description = "Oil temperature; the file's unless given." };

    private readonly Option<string?> speed = new("--speed")
    {
        HelpName = "idle | 1500rpm",
        Description = "Pump speed, by its name in the file or as a number of rpm; unless given, the lowest of the file for engagements and the highest for shifts.",
    };

    private readonly Option<string?> torque = new("--torque")
    {
        HelpName = "180Nm",
        Description = "Torque at the input; unless given, what the file gives for a shift.",
    };

    /// <summary>Every option, in the order of the help page.</summary>
    public IEnumerable<Option> All => [temperature, speed, torque];

    /// <summary>The conditions asked for.</summary>
    /// <exception cref="UserError">Something about them is wrong.</exception>
    public ShiftConditions Read(Session session, Unit unit, string file)
    {
        var usual = ShiftStudy.ConditionsOf(unit);
        if (session.Parsed.GetValue(temperature) is { } hot) usual = usual with { Celsius = OperatingWords.Celsius(hot) };
        if (session.Parsed.GetValue(torque) is { } load) usual = usual with { Torque = OperatingWords.NewtonMetres(load) };
        if (session.Parsed.GetValue(speed) is not { Length: > 0 } word) return usual;
        var pump = OperatingWords.Speed(unit, file, word).Value;
        return usual with { StandingSpeed = pump, DrivingSpeed = pump };
    }
}
