using Circuits.Judging;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;
using Circuits.Studies.Changes;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>Screens and their bypasses against closed forms. Flow is area times the root of the pressure difference.</summary>
public sealed class ScreenTests
{
    /// <summary>600 kPa before a screen of 12 mm2, and a way out behind it of 12 mm2.</summary>
    private static CircuitCase Through(string screen) => CircuitCase.Body("dirty clean", $$"""
        screens: {filter: {from: dirty, to: clean, area: 12 mm2{{screen}} } }
        restrictions: [{between: [clean, exhaust], area: 12 mm2}]
        """, "signals: {body.dirty: 600 kPa}");

    [Theory]
    [InlineData("", 300)] // two equal holes in series
    [InlineData(", clogged: 50 %", 120)] // 6 mm2, then 12: 600 x 6^2 / (6^2 + 12^2)
    [InlineData(", clogged: 1", 0)]
    [InlineData(", clogged: 0", 300)]
    [InlineData(", bypass: {opens-at: 350 kPa, hole: 6 mm}", 300)] // 300 kPa do not open it
    [InlineData(", bypass: {opens-at: 80 kPa, hole: 6 mm}", 520)] // it holds what is behind it 80 kPa below what is before it
    [InlineData(", clogged: 1, bypass: {opens-at: 80 kPa, hole: 8 mm}", 520)]
    [InlineData(", bypass: {opens-at: 80 kPa, area: 5 mm2}", 600 * 289.0 / (289 + 144))] // too small for that: 17 mm2 side by side, then 12
    public void A_screen_is_a_hole_and_its_bypass_bounds_what_it_costs(string screen, double behind) =>
        CircuitCase.Near(behind, Through(screen).Pressure("clean"));

    [Theory]
    [InlineData("350 kPa", "bypass shut")]
    [InlineData("80 kPa", "bypass open")]
    public void Its_report_says_where_the_bypass_stands(string opensAt, string position) =>
        Assert.Equal(position, Through($", bypass: {{opens-at: {opensAt}, hole: 6 mm}}").Position("body.filter"));

    [Fact]
    public void Where_no_oil_flows_a_screen_costs_nothing()
    {
        var unit = CircuitCase.Body("dirty clean", "screens: {filter: {from: dirty, to: clean, area: 12 mm2, clogged: 0.9, bypass: {opens-at: 80 kPa, hole: 6 mm}}}", "signals: {body.dirty: 600 kPa}");
        CircuitCase.Near(600, unit.Pressure("clean"));
        Assert.Equal("bypass shut", unit.Position("body.filter"));
    }

    [Fact]
    public void Behind_a_mesh_that_is_shut_the_bypass_leaves_its_difference_even_where_no_oil_flows()
    {
        var unit = CircuitCase.Body("dirty clean", "screens: {filter: {from: dirty, to: clean, area: 12 mm2, clogged: 1, bypass: {opens-at: 80 kPa, hole: 6 mm}}}", "signals: {body.dirty: 600 kPa}");
        CircuitCase.Near(520, unit.Pressure("clean"));
    }

    [Fact]
    public void Oil_that_comes_from_behind_passes_the_mesh_alone()
    {
        var unit = CircuitCase.Body("dirty clean", """
            screens: {filter: {from: dirty, to: clean, area: 12 mm2, bypass: {opens-at: 80 kPa, hole: 6 mm}}}
            restrictions: [{between: [dirty, exhaust], area: 12 mm2}]
            """, "signals: {body.clean: 600 kPa}");
        CircuitCase.Near(300, unit.Pressure("dirty"));
        Assert.Equal("bypass shut", unit.Position("body.filter"));
    }

    [Fact]
    public void Nothing_that_comes_from_behind_is_kept_up_by_a_bypass()
    {
        // Before the screen is a dead end: it takes the pressure behind, whatever the bypass would hold.
        var unit = CircuitCase.Body("dirty clean", "screens: {filter: {from: dirty, to: clean, area: 12 mm2, bypass: {opens-at: 80 kPa, hole: 6 mm}}}", "signals: {body.clean: 600 kPa}");
        CircuitCase.Near(600, unit.Pressure("dirty"));
        Assert.DoesNotContain("never-settles", unit.Rules());
    }

    [Fact]
    public void A_bypass_holds_its_difference_where_both_sides_follow_from_others()
    {
        // 600 - before = behind - 0 through equal holes, and before = behind + 80.
        var unit = CircuitCase.Body("feed dirty clean", """
            screens: {filter: {from: dirty, to: clean, area: 2 mm2, bypass: {opens-at: 80 kPa, hole: 6 mm}}}
            restrictions: [{between: [feed, dirty], area: 12 mm2}, {between: [clean, exhaust], area: 12 mm2}]
            """, "signals: {body.feed: 600 kPa}");
        CircuitCase.Near(340, unit.Pressure("dirty"));
        CircuitCase.Near(260, unit.Pressure("clean"));
        Assert.DoesNotContain("never-settles", unit.Rules());
    }

    [Theory]
    [InlineData(400, "bypass open")]
    [InlineData(560, "bypass shut")]
    public void Where_both_sides_are_held_from_outside_the_bypass_opens_by_its_difference(double behind, string position)
    {
        var unit = CircuitCase.Body(
            "dirty clean", "screens: {filter: {from: dirty, to: clean, area: 12 mm2, bypass: {opens-at: 80 kPa, hole: 6 mm}}}",
            $"signals: {{body.dirty: 600 kPa, body.clean: {behind} kPa}}");
        Assert.Equal(position, unit.Position("body.filter"));
        Assert.DoesNotContain("never-settles", unit.Rules());
    }

    [Fact]
    public void The_pump_finds_its_regulator_through_a_screen()
    {
        var unit = CircuitCase.Body("line clean", """
            screens: {filter: {from: line, to: clean, area: 60 mm2}}
            regulators: {main: {holds: clean, spills-to: exhaust, spring: 420 kPa}}
            """, "", "pump: {into: body.line}");
        Assert.DoesNotContain("unregulated-line", unit.Rules());
        CircuitCase.Near(420, unit.Pressure("clean"));
    }

    [Theory]
    [InlineData("clog filter=50%", 520)]
    [InlineData("stick filter=shut", 300)]
    [InlineData("stick filter=open", 600 * 40.274333882308138 * 40.274333882308138 / ((40.274333882308138 * 40.274333882308138) + 144))] // 12 mm2 and 6 mm side by side
    public void What_can_be_done_to_a_screen(string word, double behind)
    {
        var unit = Through(", bypass: {opens-at: 80 kPa, hole: 6 mm}");
        var at = word.IndexOf(' ', StringComparison.Ordinal);
        var asked = Circuits.Reading.ChangeWords.Read([(word[..at], "--" + word[..at], word[(at + 1)..])]);
        Assert.Empty(asked.Findings);
        var changed = ChangeResolver.Resolve(unit.Assembly(), asked.Set!.Changes);
        Assert.Empty(changed.Faults);
        CircuitCase.Near(behind, unit.Judge.Report(changed.Assembly!).Gears[0].Pressures.Single(pressure => pressure.Passage == "body.clean").Kilopascals);
    }

    /// <summary>What is a hole may as well be a screen of its area: over a whole unit nothing changes.</summary>
    [Theory]
    [InlineData("weir/weir.yaml")]
    [InlineData("firth/firth.yaml")]
    public void A_screen_without_a_bypass_is_a_restriction(string file)
    {
        var tried = 0;
        foreach (var set in new DemoUnit(file).Unit.Matched)
        {
            var assembly = Assembly.Of(new DemoUnit(file).Unit, set);
            var screened = assembly.With([.. assembly.Revisions.Select(Screened)]);
            foreach (var (one, other) in SolvedAssembly.Of(assembly).Gears.Zip(SolvedAssembly.Of(screened).Gears))
            {
                foreach (var node in one.Solution.Network.Nodes.Where(node => node.Kind == NodeKind.Passage))
                    CircuitCase.Near(one.Solution.PressureAt(node.Index), other.Solution.PressureAt(node.Index));
            }
        }

        Assert.True(tried > 0);

        Revision Screened(Revision revision)
        {
            var holes = revision.Restrictions.Where(hole => hole.Shape.Area is not null && !hole.A.Name.IsExhaust && !hole.B.Name.IsExhaust).ToList();
            tried += holes.Count;
            return revision with
            {
                Restrictions = [.. revision.Restrictions.Except(holes)],
                Screens = [.. holes.Select((hole, i) => new Screen($"screen-{i}", hole.A, hole.B, new Shape.Cutout(hole.Shape.Area!.Value), hole.Place))],
            };
        }
    }

    [Fact]
    public void A_screen_that_is_left_out_holds_nothing_back()
    {
        var unit = Through(", clogged: 0.9");
        var screen = unit.Unit.Parts[0].Revisions[0].Screens[0];
        var report = unit.Judge.Report(ChangedAssembly.Of(unit.Assembly(), [new TearScreen("body", screen)]));
        CircuitCase.Near(600, report.Gears[0].Pressures.Single(pressure => pressure.Passage == "body.clean").Kilopascals);
    }

    [Fact]
    public void A_screen_says_that_it_has_no_bypass_or_no_mesh()
    {
        var plain = Through("");
        Assert.Equal("no bypass", plain.Position("body.filter"));
        var unit = Through(", bypass: {opens-at: 80 kPa, hole: 6 mm}");
        var torn = unit.Judge.Report(ChangedAssembly.Of(unit.Assembly(), [new TearScreen("body", unit.Unit.Parts[0].Revisions[0].Screens[0])]));
        Assert.Equal(new Stand.Simple(StandKind.WithoutMesh), torn.Gears[0].Positions.Single(position => position.Element == "body.filter").Position);
    }
}
