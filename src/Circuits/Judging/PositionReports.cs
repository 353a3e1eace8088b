using System.Collections.Immutable;
using System.Globalization;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>Says where everything that moves stands, beside where it stands in the matched set.</summary>
internal static class PositionReports
{
    public static ImmutableArray<PositionReport> Of(GearSolution now, GearSolution? reference)
    {
        var before = reference is null ? [] : Positions(reference).ToDictionary(position => position.Element, position => position.Position);
        return [.. Positions(now).Select(position => position with { Reference = before.GetValueOrDefault(position.Element) })];
    }

    private static IEnumerable<PositionReport> Positions(GearSolution state)
    {
        var network = state.Network;
        for (var i = 0; i < network.Spools.Length; i++)
        {
            var spool = network.Spools[i];
            yield return new PositionReport(
                PositionKind.Valve, spool.Name, spool.Source.Stuck is { } stuck ? StuckText.Of(stuck) : PositionText.Of(state.Moved[i]), null,
                spool.Source.Place);
        }

        for (var i = 0; i < network.Balls.Length; i++)
        {
            var ball = network.Balls[i];
            var position = state.Balls[i] < 0 ? "open" : $"closes {network.Links[ball.Seats[state.Balls[i]]].Element}";
            yield return new PositionReport(PositionKind.Ball, ball.Name, ball.Seats.IsEmpty ? "seals nothing" : position, null, ball.Source.Place);
        }

        for (var i = 0; i < network.Regulators.Length; i++)
        {
            var regulator = network.Regulators[i];
            var kind = regulator.Solenoid is null ? PositionKind.Regulator : PositionKind.Solenoid;
            yield return new PositionReport(kind, regulator.Name, RegulatorText(state, i), null, regulator.Place);
        }

        foreach (var stuck in network.Stuck)
        {
            if (!network.Regulators.Any(regulator => regulator.Name == stuck.Name))
                yield return new PositionReport(PositionKind.Regulator, stuck.Name, stuck.Position, null, stuck.Place);
        }

        for (var i = 0; i < network.Switches.Length; i++)
        {
            var element = network.Switches[i];
            yield return new PositionReport(
                PositionKind.Solenoid, element.Name, state.Inputs.Fed[i] ? "feeds" : "drains", null, element.Source.Place);
        }
    }

    private static string RegulatorText(GearSolution state, int regulator)
    {
        var element = state.Network.Regulators[regulator];
        var set = string.Create(CultureInfo.InvariantCulture, $"{state.Sets[regulator]:0} kPa");
        if (element.Kind == RegulatorKind.Line) return $"holds {set}";
        return state.Modes[regulator] switch
        {
            RegulatorModes.Holding => $"holds {set}",
            RegulatorModes.Relieving => "drains",
            _ => element.Kind == RegulatorKind.Relief ? "closed" : "open to its supply",
        };
    }
}
