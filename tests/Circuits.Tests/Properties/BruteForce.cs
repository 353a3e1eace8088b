namespace Circuits.Tests.Properties;

/// <summary>Tells whether a state agrees with itself, by the definitions, and finds every one that does.</summary>
internal static class BruteForce
{
    /// <summary>
    /// What is wrong with a state whose pressures are in <paramref name="pressures"/>; empty when it agrees with itself.
    /// </summary>
    /// <param name="network">The network.</param>
    /// <param name="state">Where everything stands.</param>
    /// <param name="pressures">The pressures.</param>
    /// <param name="slack">How far, in kPa, a condition may be missed; negative asks for that much margin.</param>
    /// <param name="fromRest">Whether shut-in oil has no pressure; else it may have any, and nothing is tried.</param>
    public static IEnumerable<string> Faults(
        BruteNetwork network, BruteState state, BrutePressures pressures, double slack, bool fromRest = true)
    {
        var p = pressures.Pressure;
        for (var i = 0; i < network.Spools.Length; i++)
        {
            var spool = network.Spools[i];
            var force = spool.Moving.Sum(signal => signal.Factor * p[signal.Cell]) - spool.Holding.Sum(signal => signal.Factor * p[signal.Cell]) - spool.Springs;
            if (state.Moved[i] ? force <= -slack / 10 : force > Math.Max(0, slack / 10)) yield return $"spool {spool.Name}: net force {force}";
        }

        for (var i = 0; i < network.Balls.Length; i++)
        {
            var (ball, seat) = (network.Balls[i], state.Balls[i]);
            var pocket = p[ball.Pocket];
            if (ball.Beyond.IsEmpty ? seat != -1 : seat < -1 || seat >= ball.Beyond.Length) yield return $"ball {ball.Name}: no seat {seat}";
            else if (ball.Beyond.Length == 1 && (seat == 0 ? Above(p[ball.Beyond[0]], pocket, slack) : Above(pocket, p[ball.Beyond[0]], slack)))
                yield return $"ball {ball.Name}: pocket {pocket}, beyond {p[ball.Beyond[0]]}";
            else if (ball.Beyond.Length == 2 && (seat < 0 || Above(p[ball.Beyond[seat]], p[ball.Beyond[1 - seat]], slack)))
                yield return $"ball {ball.Name}: closes {p[ball.Beyond[Math.Max(0, seat)]]} against {p[ball.Beyond[seat == 0 ? 1 : 0]]}";
            else if (ball.Beyond.Length == 1 && IsLevel(pocket, p[ball.Beyond[0]], slack) && (seat == 0 || slack < 0 || (fromRest && ClosesWhenTried(network, state, i))))
                yield return $"ball {ball.Name}: level at {pocket}, {(seat == 0 ? "and closed" : "and would have closed")}";
        }

        for (var i = 0; i < network.Regulators.Length; i++)
        {
            if (FaultOf(network, state, pressures, i, slack) is { } fault)
                yield return $"regulator {network.Regulators[i].Name} in mode {state.Modes[i]}: {fault}";
        }
    }

    /// <summary>Every state that agrees with itself, with a margin on all that is decided by comparing pressures.</summary>
    public static IEnumerable<(BruteState State, BrutePressures Pressures)> All(BruteNetwork network, double slack)
    {
        foreach (var state in States(network))
        {
            var pressures = new BrutePressures(network, state);
            if (!pressures.Relax() || Faults(network, state, pressures, slack).Any()) continue;
            yield return (state, pressures);
        }
    }

    private static IEnumerable<BruteState> States(BruteNetwork network)
    {
        var choices = new List<int[]>();
        choices.AddRange(network.Spools.Select(_ => new[] { 0, 1 }));
        choices.AddRange(network.Balls.Select(ball => ball.Beyond.Length switch { 0 => new[] { -1 }, 1 => [-1, 0], _ => [0, 1] }));
        choices.AddRange(network.Regulators.Select(regulator => regulator.Kind == BruteKind.Line ? new[] { 0 } : [0, 1, 2]));
        var (spools, balls) = (network.Spools.Length, network.Balls.Length);
        var counter = new int[choices.Count];
        while (true)
        {
            var picked = counter.Select((at, index) => choices[index][at]).ToArray();
            yield return new BruteState([.. picked[..spools].Select(value => value == 1)], picked[spools..(spools + balls)], picked[(spools + balls)..]);
            var digit = 0;
            while (digit < counter.Length && ++counter[digit] == choices[digit].Length) counter[digit++] = 0;
            if (digit == counter.Length) yield break;
        }
    }

    /// <summary>
    /// Feeding below the set pressure; holding at it, with no more flow than the port passes, and with supply unless oil is
    /// pushed in from elsewhere; joined to its drain above it.
    /// </summary>
    private static string? FaultOf(BruteNetwork network, BruteState state, BrutePressures pressures, int index, double slack)
    {
        var regulator = network.Regulators[index];
        if (regulator.Kind == BruteKind.Line) return null;
        var (set, mode, p) = (pressures.SetOf(index), state.Modes[index], pressures.Pressure);
        var pressure = p[regulator.Out];
        if (regulator.Kind == BruteKind.Reducing && set <= 1e-3) return mode == 2 ? null : "set to nothing, and not drained";
        if (mode == 0) return pressure > set + slack ? $"{pressure} above {set}" : null;
        if (mode == 2) return pressure < set - slack ? $"{pressure} below {set}" : null;
        if (double.IsInfinity(set)) return "holds its whole feed";
        if (!pressures.Holds(index)) return Math.Abs(pressure - set) > slack ? $"{pressure} is held by another, not at {set}" : null;
        var flow = pressures.FlowOf(index);
        var supply = regulator.From < 0 ? double.NegativeInfinity : p[regulator.From];
        var little = 1e-6 * regulator.Area * Math.Sqrt(Math.Max(1, p.Max()));
        if (regulator.Kind == BruteKind.Relief) supply = set;
        if (flow > little && flow > (Through(regulator.Area, supply - set, slack) * (1 + 1e-6)) + little) return $"gives {flow}, supply {supply}, set {set}";
        if (flow >= -little && supply < set - slack) return $"supply {supply} below {set}";
        if (flow >= -little && regulator.Kind == BruteKind.Reducing && pressures.FeedsItself(regulator.From)) return "feeds itself";
        if (flow < -little && regulator.To > 0 && pressures.Trapped().Contains(regulator.To)) return "lets oil out into a dead end";
        var drain = regulator.To < 0 ? set : p[regulator.To];
        return -flow > (Through(regulator.Area, set - drain, slack) * (1 + 1e-6)) + little ? $"takes {-flow}, set {set}, drain {drain}" : null;
    }

    private static bool IsLevel(double a, double b, double slack) => a > Math.Abs(slack) && Math.Abs(a - b) <= (slack < 0 ? 2e-3 : 5e-4);

    /// <summary>
    /// Which way level oil came past an open check ball is told by closing it: oil that would leave the pocket would have
    /// pressed it down. Every agreement of the regulators must say so.
    /// </summary>
    private static bool ClosesWhenTried(BruteNetwork network, BruteState state, int ball)
    {
        var closes = false;
        foreach (var modes in States(network with { Spools = [], Balls = [] }).Select(other => other.Modes))
        {
            var tried = state with { Balls = [.. state.Balls.Select((seat, index) => index == ball ? 0 : seat)], Modes = modes };
            var pressures = new BrutePressures(network, tried);
            if (!pressures.Relax() || Enumerable.Range(0, modes.Length).Any(i => FaultOf(network, tried, pressures, i, 0.01) is not null)) continue;
            var (pocket, beyond) = (pressures.Pressure[network.Balls[ball].Pocket], pressures.Pressure[network.Balls[ball].Beyond[0]]);
            if (pocket <= beyond + 0.01) return false;
            closes = true;
        }

        return closes;
    }

    /// <summary>Whether one pressure is above another; level ones never are.</summary>
    private static bool Above(double a, double b, double slack) => Math.Abs(a - b) > 1e-6 && a - b > slack;

    private static double Through(double area, double difference, double slack) => area * Math.Sqrt(Math.Max(0, difference + slack));
}
