using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading;
using Circuits.Studies.Changes;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Studies;

/// <summary>Changes that are asked for, looked up in a small unit, and what they come to.</summary>
public class ChangeTests
{
    // Two joints that share a location number; a gasket over one of them; a ball with two seats; a valve; three solenoids.
    private static readonly CircuitCase Case = CircuitCase.Of("""
        joints:
          top: {between: [body, case-half], sheets: [gasket, plate]}
          side: {between: [body, cover], sheets: [side-plate]}
        pump: {into: body.line}
        parts:
          body:
            kind: casting
            revisions:
              1:
                passages:
                  line: {top: [1]}
                  pocket: {top: [2, 3, 4]}
                  feed: {}
                  out: {}
                  signal: {}
                  control: {}
                  spare: {side: [1]}
                balls: {two-way: {in: pocket, seats: [2, 3], diameter: 7 mm}}
                regulators:
                  main: {holds: line, spills-to: exhaust, spring: 600 kPa, port: 30 mm2}
                  half: {from: line, out: control, spring: 300 kPa, port: 20 mm2}
                valves:
                  select:
                    rest: [{join: [feed, exhaust], area: 40 mm2}]
                    moved: [{join: [line, feed], area: 40 mm2}]
                    moved-by: [{pressure: signal, area: 100 mm2}]
                    held-by: [{spring: 20 N}]
                solenoids:
                  one: {feed: line, out: signal, kind: switching, at-rest: low, port: 3 mm2}
                  two: {feed: line, out: out, kind: pressure, at-rest: low, port: 3 mm2, table: [[0 A, 0 kPa], [1 A, 500 kPa]]}
              2: {based-on: 1, balls: {two-way: null}}
          gasket: {kind: sheet, open-except: []}
          plate:
            kind: sheet
            openings: [{at: 1, hole: 4 mm}, {at: 2, hole: 5 mm}, {at: 3, hole: 5 mm}, {at: 4, hole: 2 mm}, {at: [5, 6], slot: 3 x 9 mm}, {at: 7, hole: 1 mm}, {at: 7, hole: 1 mm}]
          side-plate: {kind: sheet, openings: [{at: 1, hole: 3 mm}]}
          case-half: {kind: casting, passages: {clutch: {top: 4}, left: {top: 2}, right: {top: 3}, main: {top: 1}, slotted: {top: [5, 7]}, other: {top: 6}}}
          cover: {kind: casting, passages: {spare: {side: [1, 9]}}}
        matched: {only: {body: 1}}
        clutches: {drive: {at: case-half.clutch}}
        gears:
          off: {apply: []}
          1: {energize: [one], commands: {two: 200 kPa}, apply: []}
        """);

    private static ResolvedChanges Ask(params string[] words) => ChangeResolver.Resolve(Case.Assembly(), Requests(words));

    internal static System.Collections.Immutable.ImmutableArray<ChangeRequest> Requests(params string[] words)
    {
        var read = ChangeWords.Read(words.Select(word => word.Split(' ', 2)).Select(word => (word[0], $"--{word[0]}", word[1])));
        Assert.Empty(read.Findings);
        return read.Set!.Changes;
    }

    private static Assembly Changed(params string[] words)
    {
        var resolved = Ask(words);
        Assert.Empty(resolved.Faults.Select(fault => fault.Words()));
        return resolved.Assembly!;
    }

    private static string Text(string word) => Assert.Single(Ask(word).Changes).Text.Words();

    private static double Pressure(Assembly assembly, string passage, string gear = "1") =>
        Case.Judge.Report(assembly).Gears.Single(each => each.Gear == gear).Pressures.Single(each => each.Passage == passage).Kilopascals;

    private static string Position(Assembly assembly, string element, string gear = "1") =>
        Case.Judge.Report(assembly).Gears.Single(each => each.Gear == gear).Positions.Single(each => each.Element == element).Position.Words();

    [Theory]
    [InlineData("plug plate@4", "plug plate@4", true)]
    [InlineData("plug top:4", "plug plate@4", true)]
    [InlineData("plug 4", "plug plate@4", true)]
    [InlineData("plug gasket@4", "plug gasket@4", true)]
    [InlineData("plug plate@5", "plug plate@5-6", true)]
    [InlineData("plug plate@5-6", "plug plate@5-6", true)]
    [InlineData("plug 9", "plug side-plate@9 (metal already)", true)]
    [InlineData("hole plate@4=3mm", "drill plate@4 to 3 mm (was 2 mm)", false)]
    [InlineData("hole plate@4=1.5mm", "sleeve plate@4 down to 1.5 mm (was 2 mm)", true)]
    [InlineData("hole plate@4=2mm", "leave plate@4 at 2 mm", true)]
    [InlineData("hole plate@4=#45", "drill plate@4 to #45 (2.08 mm) (was 2 mm)", false)]
    [InlineData("hole 9=2mm", "drill a 2 mm hole at side-plate@9 (metal before)", false)]
    [InlineData("hole plate@7=2mm", "make plate@7 a 2 mm hole", false)]
    [InlineData("hole gasket@1=2mm", "make gasket@1 a 2 mm hole", false)]
    [InlineData("drop two-way", "leave out ball body.two-way", true)]
    [InlineData("ball two-way=6mm", "put a ball of 6 mm in place of body.two-way (7 mm)", true)]
    [InlineData("ball line@1=6mm", "put a ball of 6 mm into body.line, for seat 1", true)]
    [InlineData("stick select=midway-shut", "valve body.select stuck midway, every port shut", true)]
    [InlineData("stick half=drained", "regulator body.half stuck with its outlet drained", true)]
    [InlineData("solenoid body.two=reversed", "solenoid body.two of the other polarity", true)]
    [InlineData("leak drive~exhaust=0.3mm2", "leak of 0.3 mm2 between case-half.clutch and exhaust", false)]
    [InlineData("fit body=2", "fit body 2 instead of 1", true)]
    public void A_change_says_what_it_is_and_whether_it_can_be_undone(string word, string text, bool undone)
    {
        var change = Assert.Single(Ask(word).Changes);
        Assert.Equal(text, change.Text.Words());
        Assert.Equal(undone, change.CanBeUndone);
    }

    [Theory]
    [InlineData("plug 1", "ambiguous-target", "Name one: plate@1, side-plate@1.")]
    [InlineData("plug 44", "unknown-target", "Known: 1, 2, 3, 4, 5, 7, 6, 9.")]
    [InlineData("plug plat@4", "unknown-target", "Did you mean plate?")]
    [InlineData("plug body@4", "unknown-target", "Sheets: gasket, plate, side-plate.")]
    [InlineData("plug tip:4", "unknown-target", "Did you mean top?")]
    [InlineData("hole plate@5=2mm", "impossible-change", "Plug it with --plug plate@5-6, or fit another plate.")]
    [InlineData("drop tow-way", "unknown-target", "Did you mean two-way?")]
    [InlineData("ball pocket=6mm", "impossible-change", "For another size: --ball body.two-way=...; to take it out: --drop body.two-way.")]
    [InlineData("ball body.feed=6mm", "impossible-change", "It opens on no joint.")]
    [InlineData("ball line=6mm", "impossible-change", "Name one or two of its locations as body.line@1: 1.")]
    [InlineData("ball line@2=6mm", "unknown-target", "Known: 1.")]
    [InlineData("ball spare@1+1=6mm", "ambiguous-target", "Name one: body.spare, cover.spare.")]
    [InlineData("ball pocket@2+3+4=6mm", "impossible-change", "Write for example body.either@11+12.")]
    [InlineData("stick select=up", "unknown-target", "Known: rest, moved, midway, midway-shut.")]
    [InlineData("stick main=drained", "unknown-target", "Known: open, shut.")]
    [InlineData("stick one=rest", "unknown-target", "Known: body.select, body.main, body.half.")]
    [InlineData("solenoid two=stuck", "unknown-target", "Known: stuck-low, stuck-high, reversed, dead.")]
    [InlineData("leak line~body.line=1mm2", "impossible-change", null)]
    [InlineData("leak spare~line=1mm2", "ambiguous-target", "Name one: body.spare, cover.spare.")]
    [InlineData("fit body=3", "unknown-target", "Known: 1, 2.")]
    [InlineData("fit bdoy=2", "unknown-target", "Did you mean body?")]
    [InlineData("fit onyl", "unknown-target", "Did you mean only?")]
    [InlineData("fit plate", "unknown-target", "Write plate=1.")]
    public void What_cannot_be_carried_out_is_named(string word, string rule, string? help)
    {
        var resolved = Ask(word);
        Assert.Null(resolved.Assembly);
        var fault = Assert.Single(resolved.Faults);
        Assert.Equal((rule, help), (fault.Rule, fault.Help));
        Assert.Equal("--" + word, fault.Place.ToString());
    }

    [Theory]
    [InlineData("plug plate@4", "hole 4=3mm")]
    [InlineData("plug plate@5", "plug plate@6")]
    [InlineData("drop two-way", "ball two-way=6mm")]
    [InlineData("stick select=rest", "stick body.select=moved")]
    [InlineData("solenoid one=dead", "solenoid one=stuck-high")]
    [InlineData("leak line~feed=1mm2", "leak feed~line=2mm2")]
    [InlineData("fit body=1", "fit body=2")]
    public void Changes_that_contradict_are_refused(string one, string other)
    {
        var fault = Assert.Single(Ask(one, other).Faults);
        Assert.Equal("contradictory-changes", fault.Rule);
        Assert.Equal("--" + one, Assert.Single(fault.Related).Place.ToString());
    }

    [Fact]
    public void All_that_is_wrong_is_told_at_once() =>
        Assert.Equal(["--plug 44", "--stick select=up", "--drop x"], Ask("plug 44", "stick select=up", "plug 4", "drop x").Faults.Select(fault => fault.Place.ToString()));

    [Fact]
    public void A_ball_of_a_revision_that_is_not_fitted_is_named_with_it() =>
        Assert.Equal("body 1 has it; this assembly has another revision.", Assert.Single(Ask("fit body=2", "drop two-way").Faults).Help);

    [Fact]
    public void A_ball_put_into_an_empty_pocket_takes_the_seats_that_another_revision_gives_one()
    {
        Assert.Equal("put a ball of 7 mm into body.pocket, for seats 2 and 3", Text2("fit body=2", "ball pocket=7mm"));
        static string Text2(params string[] words) => Ask(words).Changes[^1].Text.Words();
    }

    [Fact]
    public void Work_unmatches_an_assembly_and_other_parts_may_match_it()
    {
        Assert.Equal("only", Case.Assembly().Matched);
        Assert.Null(Changed("plug 9").Matched);
        Assert.Equal(["plug side-plate@9 (metal already)"], Changed("plug 9").Changes.Select(change => change.Words()));
        var back = ChangeResolver.Resolve(Case.Assembly("body=2"), Requests("fit only")).Assembly!;
        Assert.Equal("only", back.Matched);
        Assert.Empty(back.Changes);
    }

    // Free, the valve is moved in 1 (600 kPa on 100 mm2 against 20 N) and at rest in off.
    [Theory]
    [InlineData("rest", 0, 0, "stuck at rest")]
    [InlineData("moved", 600, 600, "stuck moved")]
    [InlineData("midway-shut", 0, 0, "stuck midway, every port shut")]
    // A tenth of 40 mm2 to line and a tenth to sump: the pressure halves.
    [InlineData("midway", 300, 300, "stuck midway, every port a little open")]
    public void A_stuck_valve_stays_where_it_is(string at, double energized, double rest, string words)
    {
        Assert.Equal((600, 0), (Pressure(Case.Assembly(), "body.feed"), Pressure(Case.Assembly(), "body.feed", "off")));
        var stuck = Changed($"stick select={at}");
        CircuitCase.Near(energized, Pressure(stuck, "body.feed"));
        CircuitCase.Near(rest, Pressure(stuck, "body.feed", "off"));
        Assert.Equal(words, Position(stuck, "body.select"));
    }

    // The solver of flow has spools and regulators of its own; they must stick as well.
    [Theory]
    [InlineData("select=rest", "feed", "1")]
    [InlineData("select=moved", "feed", "off")]
    [InlineData("select=midway", "feed", "1")]
    [InlineData("half=open", "control", "1")]
    [InlineData("half=shut", "control", "1")]
    public void What_sticks_in_the_static_answer_sticks_in_flow(string word, string passage, string gear)
    {
        var flow = new Circuits.Tests.Solving.Flow.FlowCase(Changed("stick " + word));
        var steady = flow.Solve(Circuits.Tests.Solving.Flow.FlowCase.Pumped, gear);
        var expected = flow.Static(gear).PressureAt(flow.Node(passage));
        Assert.True(steady.Converged);
        Assert.InRange(steady.PressureAt(flow.Node(passage)) / 1000, (0.9 * expected) - 15, (1.1 * expected) + 15);
    }

    // Work that is shared between equal networks must not be shared with one in which something sticks.
    [Theory]
    [InlineData("stick select=rest")]
    [InlineData("stick select=moved")]
    [InlineData("stick select=midway")]
    [InlineData("stick half=shut")]
    [InlineData("solenoid one=stuck-high")]
    [InlineData("solenoid two=reversed")]
    [InlineData("leak line~exhaust=1mm2")]
    public void A_fault_makes_another_network(string word)
    {
        var names = new Circuits.Judging.NameNumbers();
        Assert.Equal(Seen(Case.Assembly()), Seen(Changed("plug 9")));
        Assert.NotEqual(Seen(Case.Assembly()), Seen(Changed(word)));

        UInt128 Seen(Assembly assembly)
        {
            var network = Circuits.Networks.NetworkBuilder.Build(assembly);
            return Circuits.Judging.SeenNetwork.Of(
                network, [.. Case.Unit.Gears.Select(gear => Circuits.Solving.GearInputs.Of(network, gear))], names, new Circuits.Judging.ByteList()).Whole;
        }
    }

    [Theory]
    [InlineData("half=open", 600)]
    [InlineData("half=shut", 0)]
    [InlineData("half=drained", 0)]
    public void A_stuck_regulator_regulates_no_more(string word, double control)
    {
        CircuitCase.Near(300, Pressure(Case.Assembly(), "body.control"));
        CircuitCase.Near(control, Pressure(Changed("stick " + word), "body.control"));
    }

    [Fact]
    public void A_line_regulator_that_sticks_loses_the_line_or_lets_it_rise()
    {
        CircuitCase.Near(0, Pressure(Changed("stick main=open"), "body.line"));
        CircuitCase.Near(2000, Pressure(Changed("stick main=shut"), "body.line"));
        Assert.Contains(Case.Judge.Report(Changed("stick main=shut")).Findings, finding => finding.Rule == "unregulated-line");
        Assert.Contains(Case.Judge.Report(Changed("stick main=open")).Assumptions, text => text.Words().Contains("assumed no line pressure"));
    }

    // One is low at rest and energized in 1. Two is told to hold 200 of the 500 kPa that its table ends with.
    [Theory]
    [InlineData("one=stuck-low", "body.signal", 0, 0)]
    [InlineData("one=stuck-high", "body.signal", 600, 600)]
    [InlineData("one=dead", "body.signal", 0, 0)]
    [InlineData("one=reversed", "body.signal", 0, 600)]
    [InlineData("two=stuck-low", "body.out", 0, 0)]
    [InlineData("two=stuck-high", "body.out", 600, 600)]
    [InlineData("two=dead", "body.out", 0, 0)]
    [InlineData("two=reversed", "body.out", 300, 600)]
    public void A_faulty_solenoid_does_not_do_what_it_is_told(string word, string passage, double energized, double rest)
    {
        var faulty = Changed("solenoid " + word);
        CircuitCase.Near(energized, Pressure(faulty, passage));
        CircuitCase.Near(rest, Pressure(faulty, passage, "off"));
    }

    [Fact]
    public void A_spring_that_is_missing_and_an_exhaust_that_is_stopped_up_are_changes_too()
    {
        var body = Case.Assembly().Revisions[0];
        var select = body.Valves.Single();
        Assert.Empty(new LoseSprings("body", select).Rewrite(body).Valves.Single().HeldBy);
        Assert.Equal(new Pressure(0), new LoseRegulatorSpring("body", body.Regulators[1]).Rewrite(body).Regulators[1].Spring);
        var restricted = new RestrictExhaust("body", select, new Area(1)).Rewrite(body).Valves.Single();
        Assert.Equal((1, 40), (restricted.Rest[0].Area!.Value.SquareMillimetres, restricted.Moved[0].Area!.Value.SquareMillimetres));
        Assert.Equal(40, new RestrictExhaust("body", select, new Area(60)).Rewrite(body).Valves.Single().Rest[0].Area!.Value.SquareMillimetres);
    }

    // Two orifices in series: line, 3 mm2 solenoid port, leak of 3 mm2 to sump leaves half of 600 kPa.
    [Fact]
    public void A_leak_takes_pressure_away() => CircuitCase.Near(300, Pressure(Changed("leak signal~exhaust=3mm2"), "body.signal"));

    [Fact]
    public void A_plugged_gasket_is_blanked()
    {
        Assert.True(Pressure(Case.Assembly(), "case-half.main") > 0);
        CircuitCase.Near(0, Pressure(Changed("plug gasket@1"), "case-half.main"));
        CircuitCase.Near(0, Pressure(Changed("plug plate@1"), "case-half.main"));
    }
}
