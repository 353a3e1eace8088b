using Circuits.Judging;
using Circuits.Model;
using Xunit;

namespace Circuits.Tests.Demo;

/// <summary>The teaching unit does what <c>circuits/rill/README.md</c> reasons by hand.</summary>
public sealed class TeachingUnitTests
{
    /// <summary>By the static answer, which the page reasons by; what flow makes of it stands beside.</summary>
    private static readonly DemoUnit Rill = new("rill/rill.yaml", JudgeMode.Quick);

    private static readonly DemoUnit Flowing = new("rill/rill.yaml");

    [Theory]
    [InlineData("1", "1", "")]
    [InlineData("2", "2", "")]
    [InlineData("2", "1", "2 lost")]
    [InlineData("1", "2", "R lost")]
    public void Each_assembly_gets_the_verdicts_of_the_page(string body, string plate, string wrong)
    {
        foreach (var report in (AssemblyReport[])[Rill.Report(body, plate), Flowing.Report(body, plate)])
        {
            Assert.Equal(wrong, DemoUnit.Wrong(report));
            Assert.Equal("", DemoUnit.Remembering(report));
            Assert.All(report.Gears, gear => Assert.True(gear.Settled));
        }
    }

    [Theory]
    [InlineData("early")]
    [InlineData("late")]
    public void A_matched_set_has_nothing_to_find_but_the_assumed_ports_of_the_manual_valve(string set)
    {
        var report = Flowing.Matched(set);
        Assert.Equal([], report.Findings.Where(finding => finding.Rule != "assumed-size").Select(DemoUnit.Line));
        Assert.All(report.Assumptions, assumed => Assert.Contains("40 mm2", assumed.Words(), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("R", 550 / 0.7)] // line = 550 + 0.3 line
    [InlineData("N", 550)]
    [InlineData("1", 550)]
    [InlineData("2", 550)]
    public void Line_pressure_is_the_spring_plus_the_boost_of_reverse_oil(string gear, double line) =>
        Assert.Equal(line, DemoUnit.Gear(Rill.Report("1", "1"), gear).LineKilopascals, 0.5);

    [Theory]
    [InlineData("R", -77.0 / 33)]
    [InlineData("1", 77.0 / 29)]
    [InlineData("2", 1.0)]
    public void The_gear_train_gives_the_ratios_of_the_page(string gear, double ratio) =>
        Assert.Equal(ratio, Ratio(Rill.Report("1", "1"), gear)!.Value, 1e-9);

    [Fact]
    public void The_ball_closes_the_idle_branch()
    {
        Assert.Equal("closes plate@12", Ball("R"));
        Assert.Equal("closes plate@11", Ball("2"));

        static string Ball(string gear) =>
            DemoUnit.Gear(Rill.Report("1", "1"), gear).Positions.Single(each => each.Element == "body.two-way").Position.Words();
    }

    [Fact]
    public void The_old_plate_on_the_new_body_blanks_second_oil_at_6()
    {
        var report = Rill.Report("2", "1");
        var high = DemoUnit.Clutch(report, "2", "high");
        Assert.Equal(ClutchState.Released, high.State);
        Assert.Equal(0, high.Kilopascals, 1e-9);
        Assert.Equal(("plate@6-7", "no slot"), (high.StoppedAt?.Element, high.StoppedAt?.Reason.Words()));
        Assert.Equal("rill.yaml", Path.GetFileName(high.StoppedAt?.Place.File));
        Assert.Contains(report.Findings, finding => finding is { Rule: "blanked-feed", Gear: "2" });
        Assert.Equal(77.0 / 29, Ratio(report, "2")!.Value, 1e-9); // it stays in 1
    }

    [Fact]
    public void The_new_plate_on_the_old_body_drains_the_pocket_through_the_slot()
    {
        var report = Rill.Report("1", "2");
        var high = DemoUnit.Clutch(report, "R", "high");
        Assert.Equal(ClutchState.Released, high.State);
        Assert.Equal(Verdict.Lost, high.Verdict);

        // In series 1/A^2 adds up: manual valve 40, hole 2 and seat 11 feed; slot 48 and manual valve 40 drain.
        var feed = 1 / ((1 / Squared(40)) + (1 / Squared(Hole(3.5))) + (1 / Squared(Hole(5))));
        var drain = 1 / ((1 / Squared(48)) + (1 / Squared(40)));
        Assert.Equal(1 / (1 + (drain / feed)), high.Level, 0.002);
        Assert.Equal(ClutchState.Applied, DemoUnit.Clutch(report, "R", "reverse-brake").State);

        var slot = Rill.Unit.FindPart("plate")!.FindRevision("2")!.Openings.Single(opening => opening.At.Length == 2);
        Assert.Equal("plate@6-7", high.StoppedAt?.Element);
        Assert.Contains(report.Findings, finding => finding is { Rule: "open-drain", Gear: "R" }
            && finding.Words().Contains("plate@6-7", StringComparison.Ordinal));
        Assert.Contains(DemoUnit.Gear(report, "R").CrossFeeds, each => each.Through == "plate@6-7" && each.Place == slot.Place);
        var drive = DemoUnit.Gear(report, "R").Drive!;
        Assert.True(drive.Mobility > 1);
        Assert.Contains("no reverse", drive.Feel.Words(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_new_plate_on_the_old_body_only_joins_line_to_line_in_2() =>
        Assert.Equal(ClutchState.Applied, DemoUnit.Clutch(Rill.Report("1", "2"), "2", "high").State);

    private static double? Ratio(AssemblyReport report, string gear) => DemoUnit.Gear(report, gear).Drive?.Ratio;

    private static double Hole(double millimetres) => Math.PI / 4 * millimetres * millimetres;

    private static double Squared(double value) => value * value;
}
