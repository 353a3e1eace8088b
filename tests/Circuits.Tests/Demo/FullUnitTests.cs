using Circuits.Driveline;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies;
using Xunit;

namespace Circuits.Tests.Demo;

/// <summary>The full unit is as big as it claims, and its matched sets do what <c>circuits/firth/README.md</c> says.</summary>
[Collection(nameof(FullUnit))]
public sealed class FullUnitTests
{
    /// <summary>The sets.</summary>
    public static TheoryData<string> Sets { get; } = ["early", "middle", "late", "last"];

    [Fact]
    public void It_is_a_full_unit()
    {
        var unit = FullUnit.Unit;
        Assert.Equal(DataOrigin.Invented, unit.Data);
        Assert.True(unit.Gears.Count(gear => gear.Ratio > 0 && gear.Energize.Length + gear.Commands.Length > 0) >= 6);
        Assert.True(unit.Clutches.Length >= 5);
        Assert.True(unit.Joints.Length >= 3);
        Assert.Contains(unit.Joints, joint => joint.Sheets.Length >= 2);
        Assert.True(unit.Joints.Sum(joint => joint.Locations.Length) >= 110);
        Assert.True(unit.Parts.Aggregate(1, (product, part) => product * part.Revisions.Length) >= 200);
        Assert.True(unit.Matched.Length >= 3);
        Assert.Equal(5, unit.Shifts.Length);
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void Every_matched_set_has_the_parts_of_a_full_unit(string set)
    {
        var revisions = Assembly.Of(FullUnit.Unit, FullUnit.Unit.Matched.Single(each => each.Name == set)).Revisions;
        Assert.True(revisions.Sum(revision => revision.Passages.Length) >= 90);
        Assert.True(revisions.Sum(revision => revision.Valves.Length + revision.Regulators.Length) >= 12);
        var balls = revisions.SelectMany(revision => revision.Balls).ToList();
        Assert.True(balls.Count >= 7);
        Assert.Contains(balls, ball => ball.Seats.Length == 2);
        Assert.Contains(balls, ball => ball.Seats.Length == 1);
        var solenoids = revisions.SelectMany(revision => revision.Solenoids).ToList();
        Assert.True(solenoids.Count >= 5);
        Assert.Equal(2, solenoids.Select(solenoid => solenoid.Kind).Distinct().Count());
        Assert.Equal(2, solenoids.Select(solenoid => solenoid.AtRest).Distinct().Count());
    }

    [Fact]
    public void Castings_plates_gasket_balls_and_pack_come_in_two_to_four_revisions()
    {
        var several = FullUnit.Unit.Parts.Where(part => part.Revisions.Length > 1).ToList();
        Assert.All(several, part => Assert.InRange(part.Revisions.Length, 2, 4));
        Assert.All(several, part => Assert.All(part.Revisions, revision => Assert.NotEmpty(revision.Marks)));
        Assert.Equal(
            ["channel", "upper", "lower", "main-plate", "lower-plate", "pack", "channel-gasket", "balls"], several.Select(part => part.Name));
    }

    [Fact]
    public void No_two_locations_of_a_joint_are_closer_than_six_millimetres()
    {
        foreach (var joint in FullUnit.Unit.Joints)
        {
            foreach (var (a, b) in joint.Locations.SelectMany((a, i) => joint.Locations.Skip(i + 1).Select(b => (a, b))))
            {
                var apart = Math.Sqrt(Math.Pow(a.X!.Value - b.X!.Value, 2) + Math.Pow(a.Y!.Value - b.Y!.Value, 2));
                Assert.True(apart >= 6, $"{joint.Name}: {a.Id} and {b.Id} are {apart:0.0} mm apart");
            }
        }
    }

    /// <summary>A slot must reach from its first location to its last.</summary>
    [Fact]
    public void Every_slot_is_long_enough_for_its_locations()
    {
        var middle = FullUnit.Unit.Joints.Single(joint => joint.Name == "middle").Locations.ToDictionary(location => location.Id);
        var slots = FullUnit.Unit.FindPart("main-plate")!.Revisions[^1].Openings.Where(opening => opening.At.Length > 1).ToList();
        Assert.Equal(5, slots.Count);
        foreach (var slot in slots)
        {
            var (first, last) = (middle[slot.At[0].Name], middle[slot.At[^1].Name]);
            var apart = Math.Sqrt(Math.Pow(first.X!.Value - last.X!.Value, 2) + Math.Pow(first.Y!.Value - last.Y!.Value, 2));
            var shape = Assert.IsType<Shape.Slot>(slot.Shape);
            Assert.True(shape.Length.Millimetres - shape.Width.Millimetres >= apart, $"the slot at {slot.At[0].Name}");
        }
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void A_matched_set_is_as_charted_with_nothing_found_and_nothing_assumed(string set)
    {
        var report = FullUnit.Report(set);
        Assert.Equal(set, report.Assembly.Matched);
        Assert.Equal("", DemoUnit.Wrong(report));
        Assert.Empty(report.Findings.Select(DemoUnit.Line));
        Assert.Empty(report.Assumptions);
    }

    /// <summary>450 kPa and 1.6 times the signal that the current gives; in reverse a fifth of line more.</summary>
    [Theory]
    [InlineData("P", 450 + (1.6 * 100))]
    [InlineData("R", (450 + (1.6 * 500)) / 0.8)]
    [InlineData("N", 450 + (1.6 * 100))]
    [InlineData("1", 450 + (1.6 * 400))]
    [InlineData("2", 450 + (1.6 * 400))]
    [InlineData("3", 450 + (1.6 * 300))]
    [InlineData("4", 450 + (1.6 * 300))]
    [InlineData("5", 450 + (1.6 * 250))]
    [InlineData("6", 450 + (1.6 * 200))]
    [InlineData("limp", 450 + (1.6 * 700))]
    [InlineData("limp-R", (450 + (1.6 * 700)) / 0.8)]
    public void Line_pressure_is_spring_plus_signal_plus_reverse(string gear, double line)
    {
        foreach (var set in FullUnit.Unit.Matched)
        {
            var report = DemoUnit.Gear(FullUnit.StaticReport(set.Name), gear);
            Assert.Equal(line, report.LineKilopascals, 0.5);
            Assert.All(
                report.Clutches.Where(clutch => clutch.Charted),
                clutch => Assert.Equal(clutch.Clutch == "lock-up" ? 1.4 * 500 : line, clutch.Kilopascals, 0.5));
        }
    }

    [Theory]
    [InlineData("1", 8748.0 / 2573)]
    [InlineData("2", 72.0 / 31)]
    [InlineData("3", 132.0 / 83)]
    [InlineData("4", 1552.0 / 1209)]
    [InlineData("5", 1.0)]
    [InlineData("6", 24.0 / 31)]
    [InlineData("R", -4656.0 / 1519)]
    [InlineData("limp", 1552.0 / 1209)]
    [InlineData("limp-R", -4656.0 / 1519)]
    public void The_gear_train_gives_the_ratios_of_the_page(string gear, double ratio) =>
        Assert.Equal(ratio, DemoUnit.Gear(FullUnit.Report("early"), gear).Drive!.Ratio!.Value, 1e-9);

    [Fact]
    public void Forward_ratios_fall_and_each_upshift_changes_one_clutch_for_one_other()
    {
        var forward = new[] { "1", "2", "3", "4", "5", "6" }.Select(name => FullUnit.Unit.FindGear(name)!).ToList();
        foreach (var (low, high) in forward.Zip(forward.Skip(1)))
        {
            Assert.True(low.Ratio > high.Ratio * 1.15);
            var (before, after) = (Names(low), Names(high));
            Assert.Single(before.Except(after));
            Assert.Single(after.Except(before));
        }

        static List<string> Names(GearState gear) => [.. gear.Apply.Select(use => use.Name).Where(name => name != "lock-up")];
    }

    [Fact]
    public void Every_clutch_can_carry_its_share_of_250_newton_metres()
    {
        Assert.True(GearTrain.TryBuild(FullUnit.Unit.GearSet!, out var train, out _));
        foreach (var gear in FullUnit.Report("early").Gears)
        {
            var applied = gear.Clutches.Where(clutch => clutch.Charted && clutch.Clutch != "lock-up").ToList();
            foreach (var (name, share) in train.TorqueShares([.. applied.Select(clutch => clutch.Clutch)]))
            {
                if (applied.Find(clutch => clutch.Clutch == name) is not { } pressed) continue;
                var clutch = FullUnit.Unit.Clutches.Single(each => each.Name == name);
                var force = (pressed.Kilopascals * clutch.Area!.Value.SquareMillimetres / 1000) - clutch.ReturnSpring!.Value.Newtons;
                var capacity = clutch.Plates!.Value * clutch.Friction!.Value * force * clutch.Radius!.Value.Millimetres / 1000;
                Assert.True(capacity > 1.2 * 250 * Math.Abs(share), $"{name} in {gear.Gear}: {capacity:0} Nm");
            }
        }
    }

    [Fact]
    public void With_every_solenoid_dead_the_lever_gives_gear_4_and_reverse()
    {
        foreach (var name in new[] { "limp", "limp-R" })
        {
            var gear = FullUnit.Unit.FindGear(name)!;
            Assert.Empty(gear.Energize);
            Assert.Empty(gear.Commands);
        }

        var report = FullUnit.Report("last");
        Assert.Equal(DemoUnit.Gear(report, "4").Drive!.Ratio, DemoUnit.Gear(report, "limp").Drive!.Ratio);
        Assert.Equal(DemoUnit.Gear(report, "R").Drive!.Ratio, DemoUnit.Gear(report, "limp-R").Drive!.Ratio);
    }

    [Fact]
    public void Converter_and_lube_have_oil_in_every_gear_and_stay_below_their_limits()
    {
        foreach (var gear in FullUnit.Report("late").Gears)
        {
            Assert.InRange(At("upper.converter-feed"), 300, 521);
            Assert.InRange(At("gearcase.cooler-in"), 100, At("gearcase.converter-out"));
            Assert.InRange(At("gearcase.lube-rear"), 80, 261);
            Assert.InRange(At("lower.back-fill"), 0, 1);

            double At(string passage) => gear.Pressures.Single(each => each.Passage == passage).Kilopascals;
        }
    }

    [Fact]
    public void Check_balls_meter_one_way_and_let_the_other_way_go()
    {
        var report = FullUnit.Report("early");
        Assert.Equal(("main-plate@112", Rounded(2.2)), Way(DemoUnit.Clutch(report, "2", "even").Apply!));
        Assert.Equal(("main-plate@114", Rounded(2.6)), Way(DemoUnit.Clutch(report, "1", "start").Apply!));
        Assert.Equal(("main-plate@117", Rounded(2.4)), Way(DemoUnit.Clutch(report, "1", "low").Apply!));
        Assert.Equal(("main-plate@115", Rounded(2.2)), Way(DemoUnit.Clutch(report, "3", "direct").Apply!));
        Assert.Equal(("main-plate@115", Rounded(2.2)), Way(DemoUnit.Clutch(report, "2", "direct").Release!));
        Assert.Equal(("main-plate@120", Rounded(2.0)), Way(DemoUnit.Clutch(report, "4", "high").Release!));
        Assert.True(DemoUnit.Clutch(report, "5", "high").Apply!.SquareMillimetres > FullUnit.Hole(6));
        Assert.Equal(("lower-plate@228", Rounded(2.4)), Way(DemoUnit.Clutch(FullUnit.Report("last"), "6", "direct").Release!));

        static double Rounded(double diameter) => Math.Round(FullUnit.Hole(diameter), 9);

        static (string, double) Way(Control control) => (control.Element, Math.Round(control.SquareMillimetres, 9));
    }

    [Fact]
    public void Every_expectation_of_the_file_holds()
    {
        var check = UnitCheck.Run(FullUnit.Judge);
        Assert.Equal([], check.Findings.Where(finding => finding.Severity == Severity.Error).Select(DemoUnit.Line));
        Assert.True(check.ExpectationsTotal >= 80);
        Assert.Equal(check.ExpectationsTotal, check.ExpectationsHeld);
    }
}
