using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Solving;
using Xunit;

namespace Circuits.Tests.Demo;

/// <summary>The four-speed does what <c>circuits/weir/README.md</c> reasons by hand.</summary>
public sealed class FourSpeedTests
{
    /// <summary>By the static answer, which the page reasons by; what flow makes of it stands beside.</summary>
    private static readonly DemoUnit Weir = new("weir/weir.yaml", JudgeMode.Quick);

    private static readonly DemoUnit Flowing = new("weir/weir.yaml");

    /// <summary>The page's table of bodies against plates: what is wrong in each gear, and where history matters.</summary>
    private static readonly Dictionary<string, (string Wrong, string Remembers)> BodyAndPlate = new()
    {
        ["1 1"] = ("", "3-held"),
        ["2 2"] = ("", "3-held"),
        ["3 3"] = ("", "3-held"),
        ["2 3"] = ("", "3-held"),
        ["1 2"] = ("3 never-settles, 4 lost, 3-held never-settles", ""),
        ["1 3"] = ("3 never-settles, 4 lost, 3-held never-settles", ""),
        ["2 1"] = ("3 lost, 4 lost, 3-held lost", "3-held"),
        ["3 1"] = ("3 lost, 4 lost, 3-held lost", "4, 3-held"),
        ["3 2"] = ("4 lost", "4, 3-held"),
    };

    /// <summary>All 36 assemblies: body, plate, channel plate, balls.</summary>
    public static TheoryData<string, string, string, string> Assemblies { get; } =
    [
        .. from body in Three from plate in Three from channel in Two from balls in Two
           select new TheoryDataRow<string, string, string, string>(body, plate, channel, balls),
    ];

    private static IEnumerable<string> Two => ["1", "2"];

    private static IEnumerable<string> Three => ["1", "2", "3"];

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void Each_assembly_gets_the_verdicts_of_the_page(string body, string plate, string channel, string balls)
    {
        var report = Weir.Report(body, plate, channel, balls);
        var (wrong, remembers) = BodyAndPlate[$"{body} {plate}"];
        var isOpen = balls == "1" && plate != "1";
        Assert.Equal(isOpen ? Beside("R unwanted", wrong, "L weak") : wrong, DemoUnit.Wrong(report));
        Assert.Equal(remembers, DemoUnit.Remembering(report));

        // The pump cannot feed an open pocket.
        report = Flowing.Report(body, plate, channel, balls);
        Assert.Equal(isOpen ? Beside("R lost", wrong, "L lost, L2 lost") : wrong, DemoUnit.Wrong(report));
        Assert.Equal(remembers, DemoUnit.Remembering(report));

        static string Beside(string before, string wrong, string after) => string.Join(", ", new[] { before, wrong, after }.Where(text => text != ""));
    }

    [Theory]
    [InlineData("early")]
    [InlineData("middle")]
    [InlineData("late")]
    public void A_matched_set_has_nothing_to_find_but_the_held_third(string set)
    {
        var report = Flowing.Matched(set);
        Assert.Empty(report.Assumptions);
        Assert.All(report.Findings, finding => Assert.Equal(("depends-on-history", "3-held"), (finding.Rule, finding.Gear)));
        Assert.NotEmpty(report.Findings);
    }

    [Theory]
    [InlineData("R", 520 / 0.65)] // line = 430 + 0.9 x 100 + 0.35 line
    [InlineData("N", 520)]
    [InlineData("1", 520)]
    [InlineData("L2", 520)]
    public void Line_pressure_is_spring_plus_throttle_plus_reverse(string gear, double line) =>
        Assert.Equal(line, DemoUnit.Gear(Weir.Report("1", "1", "1", "1"), gear).LineKilopascals, 0.5);

    [Theory]
    [InlineData("R", -80.0 / 31)]
    [InlineData("1", 54.0 / 17)]
    [InlineData("2", 82.0 / 51)]
    [InlineData("3", 1.0)]
    [InlineData("4", 80.0 / 111)]
    [InlineData("3-held", 1.0)]
    [InlineData("L", 54.0 / 17)]
    [InlineData("L2", 82.0 / 51)]
    public void The_gear_train_gives_the_ratios_of_the_page(string gear, double ratio) =>
        Assert.Equal(ratio, Ratio(Weir.Report("1", "1", "1", "1"), gear)!.Value, 1e-9);

    /// <summary>Spring plus throttle force over 130 mm2 of governor area; on the way down less the valve's own oil.</summary>
    [Theory]
    [InlineData("1", "2", (12 + 4) / 0.130, (12 + 4 - (520 * 0.008)) / 0.130, "one-two")]
    [InlineData("2", "3", (26 + 6) / 0.130, (26 + 6 - (520 * 0.010)) / 0.130, "two-three")]
    [InlineData("3", "4", (42 + 9) / 0.130, (42 + 9 - (520 * 0.012)) / 0.130, "three-four")]
    public void A_shift_valve_moves_over_and_back_at_the_pressures_of_the_page(
        string lower, string upper, double over, double back, string valve)
    {
        Assert.Equal("rest", At(lower, over - 1));
        Assert.Equal("moved", At(lower, over + 1));
        Assert.Equal("moved", At(upper, back + 1));
        Assert.Equal("rest", At(upper, back - 1));

        string At(string after, double governor)
        {
            var start = Weir.Unit.FindGear(after)!;
            var signals = start.Signals.Select(signal =>
                signal.At.Name.Passage == "governor" ? signal with { Pressure = new Pressure(governor) } : signal);
            var probe = start with { Name = "probe", After = new NameUse(after, start.Place), Signals = [.. signals] };
            var unit = Weir.Unit with { Gears = [.. Weir.Unit.Gears, probe], Expectations = [] };
            var report = new UnitJudge(unit).Report(Assembly.DefaultOf(unit));
            return DemoUnit.Gear(report, "probe").Positions.Single(each => each.Element == $"body.{valve}").Position.Words();
        }
    }

    [Theory]
    [InlineData("2")]
    [InlineData("3")]
    public void On_body_1_the_slot_floods_the_throttle_side_of_the_shift_valves(string plate)
    {
        var report = Weir.Report("1", plate, "1", "2");
        Assert.Contains(DemoUnit.Gear(report, "4").CrossFeeds, each =>
            each is { Into: "body.shift-throttle", From: "body.third", Through: "plate@22-23", Part: "plate" } && each.Revision == plate);
        Assert.Equal("body.three-four", DemoUnit.Clutch(report, "4", "second-band").StoppedAt?.Element);
        Assert.Equal(1.0, Ratio(report, "4")!.Value, 1e-9);
        var third = DemoUnit.Gear(report, "3");
        Assert.False(third.Settled);
        Assert.Contains(third.Cycle, step => step.Contains("two-three", StringComparison.Ordinal));
        Assert.Contains(third.CrossFeeds, each => each is { Into: "body.shift-throttle", Through: "plate@22-23" });
    }

    [Theory]
    [InlineData("R")]
    [InlineData("N")]
    [InlineData("1")]
    [InlineData("2")]
    [InlineData("L")]
    [InlineData("L2")]
    public void On_body_1_the_slot_drains_the_throttle_off_the_shift_valves_while_third_is_empty(string gear)
    {
        var report = Weir.Report("1", "2", "1", "2");
        var throttle = DemoUnit.Gear(report, gear).Pressures.Single(each => each.Passage == "body.shift-throttle");
        Assert.Equal(OilState.Between, throttle.State);
        Assert.InRange(throttle.Kilopascals, 0, 2);
        Assert.Empty(DemoUnit.Gear(report, gear).CrossFeeds);
        Assert.Contains(report.Findings, finding => finding.Rule == "open-drain" && finding.Gear == gear
            && finding.Words().Contains("plate@22-23", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("2", "1", "1", "body@27", 82.0 / 51)] // next to early
    [InlineData("3", "1", "1", "body@27", 54.0 / 17)]
    [InlineData("2", "1", "2", "plate@22-23", 82.0 / 51)] // next to middle
    [InlineData("3", "2", "2", "plate@22-23", 54.0 / 17)] // next to late
    public void With_plate_1_third_oil_ends_at_22(string body, string channel, string balls, string place, double fourth)
    {
        var report = Weir.Report(body, "1", channel, balls);
        foreach (var gear in new[] { "3", "4", "3-held" })
        {
            var high = DemoUnit.Clutch(report, gear, "high");
            Assert.Equal(0, high.Kilopascals, 1e-9);
            Assert.Equal(place, high.StoppedAt?.Element);
            Assert.Contains(report.Findings, finding => finding.Rule == "blanked-feed" && finding.Gear == gear);
        }

        Assert.Equal(54.0 / 17, Ratio(report, "3")!.Value, 1e-9);
        Assert.Equal(fourth, Ratio(report, "4")!.Value, 1e-9);
    }

    [Fact]
    public void On_plate_2_the_release_oil_of_body_3_is_shut_in_at_26()
    {
        var report = Weir.Report("3", "2", "1", "2");
        var band = DemoUnit.Clutch(report, "4", "second-band");
        Assert.Equal(0, band.Kilopascals, 1e-9);
        Assert.Equal("plate@26", band.StoppedAt?.Element);
        Assert.Contains(DemoUnit.Gear(report, "4").Pressures, each =>
            each.Passage == "housing.second-release" && each.State == OilState.Trapped && Math.Abs(each.Kilopascals - 520) < 1);
        Assert.Contains(report.Findings, finding => finding is { Rule: "trapped", Gear: "4" });
        Assert.Contains("plate@26", Text(Weir.Judge.Trace(Weir.Pick("3", "2", "1", "2"), "4", "second-band").Apply), StringComparison.Ordinal);
        Assert.Equal(1.0, Ratio(report, "4")!.Value, 1e-9);
    }

    [Fact]
    public void The_small_ball_falls_through_the_big_seats()
    {
        var report = Weir.Report("2", "2", "1", "1");
        foreach (var seat in new[] { "plate@31", "plate@32" })
        {
            Assert.Contains(report.Findings, finding =>
                finding.Rule == "ball-falls-through" && finding.Words().Contains(seat, StringComparison.Ordinal));
        }

        // From line through the manual valve (60) to reverse; on through 31, 32 and the manual valve (60) to sump. The pocket lies half way.
        var seatArea = Math.PI / 4 * 7.5 * 7.5;
        var drain = 1 / ((2 / (seatArea * seatArea)) + (1 / 3600.0));
        var reverse = 1 / (1 + (drain / 3600));
        var line = 520 / (1 - (0.35 * reverse));
        var gear = DemoUnit.Gear(report, "R");
        Assert.Equal(line, gear.LineKilopascals, 2.0);
        Assert.Equal(0.5 * line, DemoUnit.Clutch(report, "R", "low-band").Kilopascals, 2.0);
        Assert.Equal(reverse * line, DemoUnit.Clutch(report, "R", "reverse").Kilopascals, 2.0);
        Assert.Equal((1 - reverse) * line, DemoUnit.Clutch(report, "R", "coast").Kilopascals, 2.0);
        Assert.Contains(gear.CrossFeeds, each => each is { Into: "body.low", Through: "plate@32" });
        Assert.Equal("plate@32", DemoUnit.Clutch(report, "R", "low-band").StoppedAt?.Element);
        Assert.Contains("slip", gear.Drive!.Feel.Words(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1", "1", "1", "2")]
    [InlineData("1", "1", "2", "1")]
    [InlineData("2", "2", "2", "2")]
    [InlineData("2", "3", "2", "2")]
    public void A_harmless_mix_finds_nothing_of_error_level(string body, string plate, string channel, string balls) =>
        Assert.Equal([], Errors(Weir.Report(body, plate, channel, balls)));

    [Theory]
    [InlineData("2")]
    [InlineData("3")]
    public void Plate_3_on_channel_plate_1_meters_the_second_band_nowhere(string body)
    {
        var report = Weir.Report(body, "3", "1", "2");
        Assert.Contains(report.Findings, finding =>
            finding is { Rule: "unmetered", Gear: "2" } && finding.Words().Contains("second-band", StringComparison.Ordinal));
        var apply = DemoUnit.Clutch(report, "2", "second-band").Apply!;
        Assert.Equal("plate@14", apply.Element);
        Assert.Equal(Math.PI / 4 * 6 * 6, apply.SquareMillimetres, 0.01);
    }

    [Fact]
    public void Nothing_else_is_unmetered() =>
        Assert.Equal(
            ["1 3 1 1", "1 3 1 2", "2 3 1 1", "2 3 1 2", "3 3 1 1", "3 3 1 2"],
            from row in Assemblies
            let choice = row.Data
            where Weir.Report(choice.Item1, choice.Item2, choice.Item3, choice.Item4).Findings.Any(each => each.Rule == "unmetered")
            select string.Join(' ', choice.Item1, choice.Item2, choice.Item3, choice.Item4));

    private static ImmutableArray<string> Errors(AssemblyReport report) =>
        [.. report.Findings.Where(finding => finding.Severity == Findings.Severity.Error).Select(DemoUnit.Line)];

    private static string Text(TraceFact fact) => string.Join('\n', fact.Because.Select(Text).Prepend(fact.Fact.Words()));

    private static double? Ratio(AssemblyReport report, string gear) => DemoUnit.Gear(report, gear).Drive?.Ratio;
}
