using Circuits.Model;
using Circuits.Networks;
using Circuits.Reading;
using Circuits.Solving;
using Circuits.Solving.Flow;
using CsCheck;
using Xunit;

namespace Circuits.Tests.Properties;

/// <summary>What holds of steady flow in any network, by the laws of nature rather than by example.</summary>
public sealed class FlowPropertyTests
{
    private const int Networks = 300;

    /// <summary>How near pressures must be, Pa and as a fraction: where a wide hole hangs on a narrow one, small flows make small differences.</summary>
    private const double Near = 1e-4;

    [Fact]
    public void What_flows_in_flows_out_and_no_energy_is_made() => Hold((spec, balance) =>
    {
        var (through, given, spent) = (balance.Flow.Sum(Math.Abs) / 2, 0.0, 0.0);
        var net = new double[spec.Places + 1];
        foreach (var (i, hole) in spec.Holes.Index())
        {
            net[hole.A] -= balance.Flow[i];
            net[hole.B] += balance.Flow[i];
            var lost = balance.Flow[i] * (balance.Pressure[hole.A] - balance.Pressure[hole.B]);
            if (lost < 0) return $"energy: hole {hole} gives {lost} W";
            spent += lost;
        }

        for (var place = 1; place <= spec.Places; place++)
        {
            if (balance.IsPinned(place)) given -= net[place] * balance.Pressure[place];
            else if (Math.Abs(net[place]) > 1e-8 * Math.Max(through, 1e-9)) return $"balance: {net[place]} m3/s at {place}";
        }

        var highest = spec.Feeds.Max(feed => 1e3 * feed.Kilopascals);
        for (var place = 1; place <= spec.Places; place++)
        {
            if (balance.Pressure[place] > highest + 1e-3) return $"pressure: {place} has {balance.Pressure[place]} Pa, more than any feed";
        }

        return Math.Abs(given - spent) > 1e-6 * Math.Max(spent, 1e-6) ? $"power: {given} W given, {spent} W spent" : null;
    });

    [Fact]
    public void More_pressure_at_a_feed_lowers_no_pressure() => Hold((spec, balance) =>
    {
        var more = spec with { Feeds = spec.Feeds.SetItem(0, (spec.Feeds[0].Place, spec.Feeds[0].Kilopascals + 100)) };
        var after = more.Solve();
        return more.Converged ? Find(spec, place => after.Pressure[place] < balance.Pressure[place] - Slack(balance.Pressure[place])) : "unsettled: with more pressure";
    });

    [Fact]
    public void A_bigger_hole_lowers_no_pressure_that_it_feeds_and_raises_none_that_feeds_it() => Hold((spec, balance) =>
    {
        for (var i = 0; i < spec.Holes.Length; i++)
        {
            var hole = spec.Holes[i];
            var bigger = spec with { Holes = spec.Holes.SetItem(i, hole with { Millimetres = 1.3 * hole.Millimetres }) };
            var after = bigger.Solve();
            if (!bigger.Converged) return "unsettled: with a bigger hole";
            var (from, to) = balance.Flow[i] >= 0 ? (hole.A, hole.B) : (hole.B, hole.A);
            if (after.Pressure[to] < balance.Pressure[to] - Slack(balance.Pressure[to])) return $"lower: {to} falls from {balance.Pressure[to]} to {after.Pressure[to]} as hole {i} grows";
            if (after.Pressure[from] > balance.Pressure[from] + Slack(balance.Pressure[from])) return $"higher: {from} rises from {balance.Pressure[from]} to {after.Pressure[from]} as hole {i} grows";
        }

        return null;
    });

    [Fact]
    public void Other_numbers_for_the_places_change_nothing() => Hold((spec, balance) =>
    {
        // Each place the other way round in number, holes in another order and with their ends exchanged.
        int Of(int place) => place == 0 ? 0 : spec.Places + 1 - place;
        var other = spec with
        {
            Holes = [.. spec.Holes.Reverse().Select(hole => new HoleOf(Of(hole.B), Of(hole.A), hole.Millimetres))],
            Feeds = [.. spec.Feeds.Select(feed => (Of(feed.Place), feed.Kilopascals))],
        };
        var after = other.Solve();
        return other.Converged ? Find(spec, place => Apart(balance.Pressure[place], after.Pressure[Of(place)])) : "unsettled: with other numbers";
    });

    [Fact]
    public void Two_holes_in_place_of_an_equal_one_change_nothing() => Hold((thick, _) =>
    {
        // Sharp holes add up like this where viscosity does not count.
        var spec = thick with { Viscosity = 1e-7 };
        var balance = spec.Solve();
        for (var i = 0; i < spec.Holes.Length; i++)
        {
            var hole = spec.Holes[i];
            var share = hole.Millimetres * Math.Sqrt(0.3);
            var beside = spec with { Holes = spec.Holes.SetItem(i, hole with { Millimetres = share }).Add(hole with { Millimetres = hole.Millimetres * Math.Sqrt(0.7) }) };
            if (Differs(beside, "side by side") is { } fault) return fault;

            // In a row: the areas' inverse squares add up; one of 1.2 times the area, and what is left.
            var (first, second) = (hole.Millimetres * Math.Sqrt(1.2), hole.Millimetres * Math.Pow(1 - (1 / 1.44), -0.25));
            var row = spec with { Places = spec.Places + 1, Holes = spec.Holes.SetItem(i, new HoleOf(hole.A, spec.Places + 1, first)).Add(new HoleOf(spec.Places + 1, hole.B, second)) };
            if (Differs(row, "in a row") is { } other) return other;
        }

        return null;

        string? Differs(HoleNetwork changed, string how)
        {
            var after = changed.Solve();
            return spec.Converged && changed.Converged ? Find(spec, place => Apart(balance.Pressure[place], after.Pressure[place])) is { } fault ? $"{how}: {fault}" : null : $"unsettled: {how}";
        }
    });

    /// <summary>The same of whole units with valves, balls and regulators: what is called steady is, and no oil stands higher than what could bring it there.</summary>
    [Fact]
    public void Units_make_no_oil_no_energy_and_no_pressure()
    {
        var (all, unsettled) = (0, 0);
        Property.ForAll(new UnitGen(revisions: false), 300, spec => FaultOf(spec, ref all, ref unsettled), Shrink.Of, spec => SpecText.Of(spec));
        Assert.True(unsettled <= 0.02 * all, $"{unsettled} of {all} gears find no steady state");
    }

    private static string? FaultOf(UnitSpec spec, ref int all, ref int unsettled)
    {
        if (CircuitReader.ReadText(SpecText.Of(spec), "drawn.yaml").Unit is not { } unit) return "not read: a smaller unit";
        var network = NetworkBuilder.Build(Assembly.DefaultOf(unit));
        var steady = new SteadyAssembly(network);
        var conditions = new FlowConditions(840, 9e-6, new PumpCurve(20e-3 / 60, 2.2e6));
        foreach (var gear in SolvedAssembly.Of(Plan.Of(network)).Gears)
        {
            all++;
            var state = steady.Solve(gear.Solution, conditions);
            if (!state.Converged)
            {
                unsettled++;
                continue;
            }

            var net = new double[steady.Flow.Cells];
            foreach (var (element, rate) in state.Elements)
            {
                net[element.A] -= rate;
                net[element.B] += rate;
                if (rate * (state.Pressures[element.A] - state.Pressures[element.B]) < 0) return $"energy: {element.Kind} of {gear.Gear.Name} gives some";
            }

            if (steady.Flow.Pump > 0) net[steady.Flow.Pump] += state.Pumped;
            var highest = gear.Solution.Inputs.Fixed.Select(signal => 1e3 * signal.Kilopascals).Append(Math.Max(0, steady.Flow.Pump < 0 ? 0 : state.Pressures[steady.Flow.Pump]))
                .Concat(network.Nodes.Select(node => 1e3 * gear.Solution.PressureAt(node.Index))).Max();
            for (var cell = 1; cell < net.Length; cell++)
            {
                if (!steady.Balance.IsPinned(cell) && Math.Abs(net[cell]) > 1.1e-9 * Math.Max(state.Pumped, 1e-9)) return $"balance: {steady.Flow.Names[cell]} in {gear.Gear.Name}";
                // Oil shut in behind a ball may stand higher by what the ball needs to turn over.
                if (state.Pressures[cell] > highest + (1e3 * FlowDefaults.BallBand)) return $"pressure: {steady.Flow.Names[cell]} has {state.Pressures[cell]} Pa in {gear.Gear.Name}, more than anything that feeds it";
                if (state.Pressures[cell] < -1e3 * FlowDefaults.BallBand) return $"vacuum: {steady.Flow.Names[cell]} has {state.Pressures[cell]} Pa in {gear.Gear.Name}";
            }
        }

        return null;
    }

    private static double Slack(double pressure) => Near * (1 + Math.Abs(pressure));

    private static bool Apart(double a, double b) => Math.Abs(a - b) > Slack(a);

    private static string? Find(HoleNetwork spec, Func<int, bool> isWrong)
    {
        var wrong = Enumerable.Range(1, spec.Places).Where(isWrong).ToList();
        return wrong.Count == 0 ? null : $"places: {string.Join(' ', wrong)}";
    }

    private static void Hold(Func<HoleNetwork, FlowBalance, string?> check) => Property.ForAll(
        new HoleGen(), Networks,
        spec =>
        {
            var balance = spec.Solve();
            return spec.Converged ? check(spec, balance) : "unsettled: no steady state";
        },
        spec => spec.Smaller(), spec => $"{spec}");
}
