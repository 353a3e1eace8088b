using System.Collections.Immutable;
using Circuits.Driveline;
using Circuits.Findings;
using Circuits.Model;
using Xunit;

namespace Circuits.Tests.Driveline;

public class GearSetFaults
{
    [Fact]
    public void Joining_the_input_to_the_case_is_named_at_the_joint()
    {
        var set = Gears.Set("set 34/74", input: "set.sun", output: "set.carrier", joined: "set.ring=loose, loose=case, case=set.sun");
        var fault = Single(set, GearsetCannotTurn.Rule);
        Assert.Contains("ties the input to the case", fault.Words());
        Assert.Equal(set.Joined[2].Place, fault.Place);
    }

    [Fact]
    public void Joining_two_members_to_the_case_locks_the_third()
    {
        var set = Gears.Set("set 34/74, rear 30/80", input: "rear.sun", output: "set.carrier", joined: "set.sun=case, set.ring=case, rear.ring=set.carrier");
        var fault = Single(set, GearsetCannotTurn.Rule);
        Assert.Contains("the output cannot turn", fault.Words());
        Assert.Equal(set.Output.Place, fault.Place);
    }

    [Theory]
    [InlineData("set.sun", "case")]
    [InlineData("case", "set.sun")]
    public void The_case_is_neither_input_nor_output(string input, string output)
    {
        var set = Gears.Set("set 34/74", input: input, output: output, clutches: "a: set.carrier set.ring");
        var fault = Single(set, GearsetCannotTurn.Rule);
        Assert.Contains("the case cannot be", fault.Words());
        Assert.Equal(input == "case" ? set.Input!.Value.Place : set.Output.Place, fault.Place);
    }

    [Fact]
    public void A_one_way_clutch_that_keeps_the_input_from_turning_forwards()
    {
        var set = Gears.Set("set 34/74", input: "set.sun", output: "set.carrier", clutches: "a: set.ring case", oneWay: "sprag: case set.sun");
        var fault = Single(set, GearsetCannotTurn.Rule);
        Assert.Contains("sprag", fault.Words());
        Assert.Equal(set.OneWay[0].Place, fault.Place);
    }

    [Theory]
    [InlineData("set 34/34")]
    [InlineData("set 74/34")]
    [InlineData("set 0/34")]
    [InlineData("set 34/34 double")]
    public void Teeth_that_cannot_mesh(string planetary)
    {
        var set = Gears.Set(planetary, input: "set.sun", output: "set.carrier", clutches: "a: set.ring case");
        Assert.Equal(set.Planetaries[0].Place, Single(set, GearsetCannotTurn.Rule).Place);
    }

    [Theory]
    [InlineData("sett.sun", "there is no planetary sett")]
    [InlineData("set.annulus", "a sun, a carrier and a ring")]
    [InlineData("set", "set is a planetary")]
    public void Unknown_members(string name, string says)
    {
        var set = Gears.Set("set 34/74", input: "set.sun", output: "set.carrier", clutches: $"a: {name} case");
        var fault = Single(set, UnknownMember.Rule);
        Assert.Contains(says, fault.Words());
        Assert.Equal(set.Clutches[0].A.Place, fault.Place);
        Assert.Single(Faults(Gears.Set("set 34/74", input: name, output: "set.carrier")));
        Assert.Single(Faults(Gears.Set("set 34/74", output: name)));
        Assert.Single(Faults(Gears.Set("set 34/74", output: "set.sun", joined: $"{name}=set.ring")));
        Assert.Single(Faults(Gears.Set("set 34/74", output: "set.sun", oneWay: $"a: set.ring {name}")));
    }

    [Fact]
    public void More_planetaries_or_couplings_than_any_gear_train_has_are_refused()
    {
        static string Many(int count, Func<int, string> one) => string.Join(", ", Enumerable.Range(0, count).Select(one));
        var sets = Gears.Set(Many(25, i => $"p{i} 34/74"), input: "p0.sun", output: "p0.carrier", clutches: "a: p0.ring case");
        Assert.Equal(sets.Planetaries[24].Place, Single(sets, GearsetTooBig.Rule).Place);
        var clutches = Gears.Set("p 34/74", input: "p.sun", output: "p.carrier", clutches: Many(101, i => $"c{i}: p.ring case"));
        Assert.Equal(clutches.Clutches[100].Place, Single(clutches, GearsetTooBig.Rule).Place);
        Gears.Train(Many(24, i => $"p{i} 34/74"), input: "p0.sun", output: "p0.carrier", clutches: Many(100, i => $"c{i}: p0.ring case"));
    }

    [Fact]
    public void All_faults_come_at_once_in_the_order_of_places()
    {
        var faults = Faults(Gears.Set(
            "set 34/30", input: "set.sun", output: "set.carrier", clutches: "a: set.annulus case, b: case other.ring"));
        Assert.Equal([GearsetCannotTurn.Rule.Name, UnknownMember.Rule.Name, UnknownMember.Rule.Name], faults.Select(fault => fault.Rule));
        Assert.Equal(faults.OrderBy(fault => fault.Place), faults);
    }

    [Fact]
    public void An_input_that_nothing_leads_away_from()
    {
        // The brake leads to the case, and the case leads nowhere.
        var set = Gears.Set("set 34/74", output: "set.carrier", clutches: "a: input case, brake: set.ring case");
        var fault = Single(set, GearsetCannotDrive.Rule);
        Assert.Equal(set.Output.Place, fault.Place);
    }

    [Fact]
    public void Input_and_output_on_one_shaft()
    {
        var set = Gears.Set("set 34/74", input: "set.sun", output: "set.carrier", joined: "set.sun=set.carrier");
        Assert.Contains("one shaft", Single(set, GearsetCannotDrive.Rule).Message.Words());
    }

    [Theory]
    [InlineData("a: set.ring set.ring, b: set.ring case", "", "")]
    [InlineData("b: set.ring case", "", "set.ring=loose, loose=set.ring")]
    [InlineData("b: set.ring case, c: set.ring loose", "", "set.ring=loose")]
    [InlineData("b: set.ring case", "s: loose set.ring", "set.ring=loose")]
    public void What_has_no_effect_is_a_warning_and_the_train_is_built(string clutches, string oneWay, string joined)
    {
        var set = Gears.Set("set 34/74", input: "set.sun", output: "set.carrier", joined: joined, clutches: clutches, oneWay: oneWay);
        Assert.True(GearTrain.TryBuild(set, out var train, out var faults));
        Assert.Equal((CouplingWithoutEffect.Rule.Name, Severity.Warning), (Assert.Single(faults).Rule, faults[0].Severity));
        Assert.Equal(108.0 / 34, Gears.Ratio(train, "b"), 1e-15);
    }

    [Fact]
    public void A_loose_input_and_a_member_as_input_name_the_same_thing()
    {
        var member = Gears.Train("set 34/74", input: "set.sun", output: "set.carrier", clutches: "brake: set.ring case");
        var joined = Gears.Train("set 34/74", output: "set.carrier", joined: "input=set.sun", clutches: "brake: set.ring case");
        var named = Gears.Train("set 34/74", input: "input", output: "output", joined: "input=set.sun, output=set.carrier", clutches: "brake: set.ring case");
        var ratio = Gears.Ratio(member, "brake");
        Assert.Equal(ratio, Gears.Ratio(joined, "brake"));
        Assert.Equal(ratio, Gears.Ratio(named, "brake"));
    }

    private static ImmutableArray<Finding> Faults(GearSet set)
    {
        Assert.False(GearTrain.TryBuild(set, out var train, out var faults));
        Assert.Null(train);
        return faults;
    }

    private static Finding Single(GearSet set, Rule rule)
    {
        var fault = Assert.Single(Faults(set));
        Assert.Equal((rule.Name, rule.Severity), (fault.Rule, fault.Severity));
        return fault;
    }
}
