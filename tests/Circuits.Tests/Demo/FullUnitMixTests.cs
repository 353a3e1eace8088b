using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Xunit;

namespace Circuits.Tests.Demo;

/// <summary>Every planted mix of the full unit gets the verdicts and the places that <c>circuits/firth/README.md</c> reasons by hand.</summary>
[Collection(nameof(FullUnit))]
public sealed class FullUnitMixTests
{
    private const string Blanked = "R lost, 1 lost, 2 lost, 3 lost, 4 lost, 5 lost, 6 lost, limp lost, limp-R lost";
    private const string EvenLost = "R lost, 2 lost, 4 lost, 6 lost, limp lost, limp-R lost";
    private const string Drained = "R weak, 1 weak, 2 weak, 3 weak, 4 weak, 5 weak, 6 weak, limp weak, limp-R weak";
    private const string Slot = "1 unwanted, 5 unwanted";
    private const string Turned = "1 lost, 3 lost, 4 lost, 5 lost, limp lost";

    [Theory]
    [InlineData("late", "lower=1", Blanked)] // A1
    [InlineData("last", "channel-gasket=1", EvenLost)] // A2
    [InlineData("last", "channel=1", EvenLost)] // A3
    [InlineData("late", "main-plate=4", EvenLost)] // A4
    [InlineData("early", "main-plate=2", Slot)] // B1
    [InlineData("late", "upper=1", Slot)] // B2
    [InlineData("early", "upper=2", "5 lost, 6 lost")] // B3
    [InlineData("early", "balls=2", Drained)] // C1
    [InlineData("middle", "balls=2", Drained)] // C2
    [InlineData("late", "main-plate=2", Drained)] // C2
    [InlineData("late", "balls=1", "1 lost")] // E1
    [InlineData("middle", "main-plate=3", "1 lost")] // E1
    [InlineData("last", "balls=1", "3 lost, 4 lost, 5 lost, limp lost")] // E2
    [InlineData("early", "pack=2", Turned)] // F1
    [InlineData("middle", "pack=2", Turned)] // F1
    [InlineData("late", "pack=2", Turned)] // F1
    [InlineData("last", "pack=1", Turned)] // F2
    [InlineData("early", "lower=3", Turned)] // F3
    public void Each_planted_mix_gets_the_verdicts_of_the_page(string set, string changes, string wrong)
    {
        var still = FullUnit.StaticReport(set, changes);
        Assert.Equal(wrong, DemoUnit.Wrong(still));
        Assert.Equal("", DemoUnit.Remembering(still));

        // The pump cannot feed an open pocket, nor at idle the cooler beside the open drain of the even solenoid.
        var report = FullUnit.Report(set, changes);
        Assert.Equal(wrong == Drained ? Drained.Replace("weak", "lost", StringComparison.Ordinal) : wrong == Slot ? "R starved, 1 unwanted, 5 unwanted, limp-R starved" : wrong, DemoUnit.Wrong(report));
        Assert.Equal("", DemoUnit.Remembering(report));
        Assert.NotEmpty(FullUnit.Errors(report));
    }

    [Theory]
    [InlineData("last", "lower-plate=1")] // D1
    [InlineData("early", "lower-plate=2")] // D2
    [InlineData("last", "main-plate=3")] // D2
    [InlineData("early", "channel=2")]
    [InlineData("early", "channel-gasket=2")]
    [InlineData("early", "lower=2")]
    [InlineData("early", "balls=3")]
    [InlineData("late", "balls=3")]
    [InlineData("last", "balls=3")]
    [InlineData("early", "lower=3 pack=2")]
    [InlineData("late", "lower=3 pack=2")]
    public void A_harmless_mix_finds_nothing_of_error_level(string set, string changes)
    {
        var report = FullUnit.Report(set, changes);
        Assert.Equal("", DemoUnit.Wrong(report));
        Assert.Equal("", FullUnit.Errors(report));
        Assert.Null(report.Assembly.Matched);
    }

    [Theory]
    [InlineData("late", "lower=1", "1", "start", "main-plate@131", "3:")]
    [InlineData("late", "lower=1", "5", "direct", "main-plate@131", "3:")]
    [InlineData("late", "lower=1", "R", "even", "main-plate@132", "3:")]
    [InlineData("late", "lower=1", "limp-R", "start", "main-plate@132", "3:")]
    [InlineData("last", "channel-gasket=1", "2", "even", "channel-gasket@118", "open-except: [118]")]
    [InlineData("last", "channel-gasket=1", "R", "even", "channel-gasket@118", "open-except: [118]")]
    [InlineData("last", "channel-gasket=1", "limp", "even", "channel-gasket@118", "open-except: [118]")]
    [InlineData("last", "channel=1", "6", "even", "channel@118", "even:          {deck: [15, 16], middle: [111, 112, 121], volume: 6 mL}")]
    [InlineData("last", "channel=1", "R", "even", "channel@118", "even:          {deck: [15, 16], middle: [111, 112, 121], volume: 6 mL}")]
    [InlineData("late", "main-plate=4", "2", "even", "main-plate@112", "4:")]
    [InlineData("early", "upper=2", "5", "lock-up", "main-plate@155-156", "1:")]
    [InlineData("early", "upper=2", "6", "lock-up", "main-plate@155-156", "1:")]
    public void A_blanked_feed_is_named_with_its_line(string set, string changes, string gear, string clutch, string element, string text)
    {
        var report = FullUnit.Report(set, changes);
        var stop = DemoUnit.Clutch(report, gear, clutch).StoppedAt!;
        Assert.Equal((element, text), (stop.Element, FullUnit.Text(stop.Place)));
        Assert.Contains(report.Findings, finding =>
            finding.Rule == "blanked-feed" && finding.Gear == gear && finding.Words().Contains(element, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("early", "main-plate=2", "2")]
    [InlineData("late", "upper=1", "3")]
    public void The_slot_floods_the_even_signal_of_upper_body_1(string set, string changes, string plate)
    {
        var report = FullUnit.StaticReport(set, changes);
        foreach (var gear in report.Gears)
        {
            var feed = Assert.Single(gear.CrossFeeds, each => each.Into == "upper.even-signal");
            Assert.Equal(("upper.line", "main-plate@155-156", "main-plate", plate), (feed.From, feed.Through, feed.Part, feed.Revision));
            Assert.Equal("- {at: [155, 156], slot: 4 x 14 mm}", FullUnit.Text(feed.Place));
        }

        Assert.Equal("1 5", FullUnit.GearsWith(report, "tie-up"));
        foreach (var name in new[] { "1", "5" })
        {
            Assert.Equal(0, DemoUnit.Gear(report, name).Drive!.Mobility);
            Assert.Equal(ClutchState.Applied, DemoUnit.Clutch(report, name, "even").State);
        }

        // Slot 56 mm2 against the solenoid's drain of 3 mm2.
        var first = DemoUnit.Gear(report, "1");
        var signal = first.Pressures.Single(each => each.Passage == "lower.even-signal").Kilopascals;
        Assert.Equal(first.LineKilopascals / (1 + Math.Pow(3.0 / 56, 2)), signal, 1.0);
        Assert.Equal("moved", DemoUnit.Gear(report, "3").Positions.Single(each => each.Element == "lower.interlock").Position.Words());
        Assert.Equal("rest", first.Positions.Single(each => each.Element == "lower.interlock").Position.Words());
    }

    /// <summary>One flow through manual valve, two seats and manual valve; the drops are as 1/A^2.</summary>
    [Theory]
    [InlineData("1", "start", 8.0, 9.0, "upper.reverse", "main-plate@132")]
    [InlineData("R", "even", 9.0, 8.0, "upper.drive", "main-plate@131")]
    public void Without_ball_or_gate_the_range_pocket_drains_by_the_idle_branch(
        string gear, string clutch, double into, double outOf, string branch, string seat)
    {
        double[] drops = [Drop(60), Drop(FullUnit.Hole(into)), Drop(FullUnit.Hole(outOf)), Drop(110)];
        var total = drops.Sum();
        var (fed, pocket, idle) = (1 - (drops[0] / total), 1 - ((drops[0] + drops[1]) / total), drops[3] / total);
        var line = gear == "R" ? 1250 / (1 - (0.2 * fed)) : 1090 / (1 - (0.2 * idle));
        var report = FullUnit.StaticReport("early", "balls=2");
        var state = DemoUnit.Gear(report, gear);
        Assert.Equal(line, state.LineKilopascals, 2.0);
        Assert.Equal(pocket * line, DemoUnit.Clutch(report, gear, clutch).Kilopascals, 2.0);
        var feed = Assert.Single(state.CrossFeeds, each => each.Into == branch);
        Assert.Equal(("channel.range", seat), (feed.From, feed.Through));
        Assert.Contains(
            seat == "main-plate@131" ? "{at: 131, hole: 8 mm}" : "{at: 132, hole: 9 mm}", FullUnit.Text(feed.Place), StringComparison.Ordinal);
        Assert.Contains("slip", state.Drive!.Feel.Words(), StringComparison.Ordinal);
        Assert.Equal("R 1 2 3 4 5 6 limp limp-R", FullUnit.GearsWith(report, "open-drain"));

        static double Drop(double area) => 1 / (area * area);
    }

    [Theory]
    [InlineData("1", "start", 0.48)]
    [InlineData("R", "even", 0.53)]
    public void The_range_gate_helps_a_drained_pocket_but_not_enough(string gear, string clutch, double share)
    {
        var should = DemoUnit.Clutch(FullUnit.StaticReport("middle"), gear, clutch).Kilopascals;
        Assert.Equal(share, DemoUnit.Clutch(FullUnit.StaticReport("middle", "balls=2"), gear, clutch).Kilopascals / should, 0.01);
    }

    [Fact]
    public void Direct_is_metered_nowhere_with_plate_4_over_lower_plate_1()
    {
        // Off by 5.6 instead of 12 ms in 3-2, which no change of gear is worse for: told, and no error.
        var report = FullUnit.Report("last", "lower-plate=1");
        Assert.Equal("", FullUnit.Errors(report));
        var finding = Assert.Single(report.Findings, each => each.Rule == "unmetered");
        Assert.StartsWith("direct ", finding.Words(), StringComparison.Ordinal);
        Assert.Equal("- {at: 115, hole: 6 mm}", FullUnit.Text(finding.Place));
        Assert.Equal(FullUnit.Hole(6), DemoUnit.Clutch(report, "3", "direct").Apply!.SquareMillimetres, 1e-6);
        Assert.Equal(FullUnit.Hole(6), DemoUnit.Clutch(report, "6", "direct").Release!.SquareMillimetres, 1e-6);
        Assert.Contains("unmetered", FullUnit.Errors(FullUnit.Report("late", "main-plate=4")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("late", "1", "start", "direct", 132.0 / 83)]
    [InlineData("last", "3", "direct", "start", 8748.0 / 2573)]
    [InlineData("last", "4", "direct", "start", -4656.0 / 1519)]
    [InlineData("last", "5", "direct", "start", 1.0)]
    [InlineData("last", "limp", "direct", "start", -4656.0 / 1519)]
    public void The_small_ball_falls_through_and_the_start_signal_is_lost(
        string set, string gear, string lost, string instead, double ratio)
    {
        var report = FullUnit.Report(set, "balls=1");
        var finding = Assert.Single(report.Findings, each => each.Rule == "ball-falls-through");
        Assert.Contains("main-plate@142", finding.Words(), StringComparison.Ordinal);
        Assert.Equal("- {at: 142, hole: 7.5 mm}", FullUnit.Text(finding.Place));
        AssertSwapped(report, gear, lost, instead, ratio);

        // The solenoid's 4 mm2 and seat 141 in a row against seat 142 and the manual valve's port.
        var pilot = DemoUnit.Gear(report, gear).Pressures.Single(each => each.Passage == "lower.start-pilot").Kilopascals;
        Assert.InRange(pilot, 2, 12);
    }

    [Theory]
    [InlineData("early", "pack=2")]
    [InlineData("last", "pack=1")]
    [InlineData("early", "lower=3")]
    public void The_other_polarity_swaps_start_and_direct(string set, string changes)
    {
        var report = FullUnit.Report(set, changes);
        AssertSwapped(report, "1", "start", "direct", 132.0 / 83);
        AssertSwapped(report, "3", "direct", "start", 8748.0 / 2573);
        AssertSwapped(report, "4", "direct", "start", -4656.0 / 1519);
        AssertSwapped(report, "5", "direct", "start", 1.0);
        AssertSwapped(report, "limp", "direct", "start", -4656.0 / 1519);
        Assert.Equal("1 3 4 limp", FullUnit.GearsWith(report, "wrong-ratio"));
        foreach (var (gear, clutch) in new[] { ("1", "start"), ("3", "direct"), ("4", "direct"), ("limp", "direct") })
        {
            var stop = DemoUnit.Clutch(report, gear, clutch).StoppedAt!;
            Assert.Equal("lower.start-select", stop.Element);
            if (changes == "lower=3") continue; // early has no port that lower body 3 should have opened
            Assert.StartsWith("valve ", stop.Reason.Words(), StringComparison.Ordinal);
            Assert.Contains($"join: [swing, {clutch}]", FullUnit.Text(stop.Place), StringComparison.Ordinal);
        }
    }

    /// <summary>The page's six rules tell right from wrong for any assembly; one in thirteen is tried, of all shapes.</summary>
    [Fact]
    public void The_six_rules_of_the_page_tell_right_assemblies_from_wrong_ones()
    {
        var parts = FullUnit.Unit.Parts.Where(part => part.Revisions.Length > 1).ToList();
        var all = parts.Aggregate(1, (product, part) => product * part.Revisions.Length);
        Assert.Equal(1152, all);
        var (right, wrong) = (0, 0);
        for (var number = 0; number < all; number += 13)
        {
            var (rest, level) = (number, new Dictionary<string, int>());
            foreach (var part in parts)
            {
                level[part.Name] = int.Parse(part.Revisions[rest % part.Revisions.Length].Name, CultureInfo.InvariantCulture);
                rest /= part.Revisions.Length;
            }

            var report = FullUnit.Report("early", string.Join(' ', level.Select(pair => $"{pair.Key}={pair.Value}")));
            var isRight = report.Verdict == Verdict.AsCharted && FullUnit.Errors(report) == "";
            Assert.True(IsRight(level) == isRight, $"{string.Join(' ', level)}: {DemoUnit.Wrong(report)}; {FullUnit.Errors(report)}");
            if (isRight) right++;
            else wrong++;
        }

        Assert.True(right > 0 && wrong > 0);
    }

    private static bool IsRight(Dictionary<string, int> level)
    {
        var plate = level["main-plate"];
        return (plate < 3 || level["lower"] > 1)
            && (plate < 4 || (level["channel"] == 2 && level["channel-gasket"] == 2 && level["upper"] == 2))
            && plate > 1 == (level["upper"] == 2)
            && (level["balls"] != 2 || plate > 2)
            && (plate < 4 || level["lower-plate"] == 2)
            && (plate < 3 || level["balls"] > 1)
            && level["pack"] == 2 == (level["lower"] == 3);
    }

    private static void AssertSwapped(AssemblyReport report, string gear, string lost, string instead, double ratio)
    {
        Assert.Equal(Verdict.Lost, DemoUnit.Clutch(report, gear, lost).Verdict);
        Assert.Equal(Verdict.Unwanted, DemoUnit.Clutch(report, gear, instead).Verdict);
        Assert.Equal(ratio, DemoUnit.Gear(report, gear).Drive!.Ratio!.Value, 1e-9);
        Assert.Equal(1, DemoUnit.Gear(report, gear).Drive!.Mobility);
    }
}
