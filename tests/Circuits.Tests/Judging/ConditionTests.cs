using Circuits.Judging;
using Circuits.Judging.Conditions;
using Circuits.Model;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Judging;

/// <summary>
/// Gears judged by settled flow, on a unit small enough to reckon by hand: a pump of 15 mL/rev and 80 % gives 8.4 L/min at an idle of 700 rpm and 24 L/min
/// at 2000 rpm; a sharp hole passes Cd A sqrt(2 dp / rho), so that the pressure which drives all of a flow through it goes with the square of the flow.
/// </summary>
public class ConditionTests
{
    private const string Oil = "fluid: {grade: ISO VG 32, temperature: 90 degC, density: 860 kg/m3}\npump: {into: body.line, displacement: 15 mL/rev, speed: {idle: 700 rpm, road: 2000 rpm}, efficiency: 80 %}\n";

    private static CircuitCase Unit(string clutch = "area: 8000 mm2, return-spring: 400 N, rate: 20 N/mm, stroke: 2 mm", string whole = "") => CircuitCase.Of($$$"""
        {{{Oil}}}{{{whole}}}
        parts:
          body:
            kind: casting
            revisions:
              sound:
                passages: {line: {}, drive: {}, clutch: {}, lube: {}}
                regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa, port: 60 mm2}}
                restrictions:
                  - {between: [line, clutch], hole: 3 mm}
                  - {between: [line, lube], hole: 1.2 mm}
                  - {between: [lube, exhaust], hole: 2 mm}
              leaking: {based-on: sound, leaks: [{between: [line, exhaust], area: 12 mm2}]}
              dry:
                based-on: sound
                restrictions:
                  - {between: [line, clutch], hole: 3 mm}
                  - {between: [line, lube], hole: 0.5 mm}
                  - {between: [lube, exhaust], hole: 2 mm}
              flooded:
                based-on: sound
                restrictions:
                  - {between: [line, clutch], hole: 3 mm}
                  - {between: [line, lube], hole: 4 mm}
                  - {between: [lube, exhaust], hole: 2 mm}
        matched: {maker: {body: sound}}
        clutches: {only: {at: body.clutch, {{{clutch}}}}}
        gears: {1: {apply: [only]}}
        """, JudgeMode.Full);

    /// <summary>
    /// At 110 degC the oil has some 800 kg/m3. 12 mm2 and the 1.05 mm2 that lube's two holes act as pass 8.4 L/min at
    /// dp = rho/2 (Q / (0.611 A))^2 = 400 (1.4e-4 / 7.97e-6)^2 = 123 kPa: a quarter of 500 kPa. At 24 L/min
    /// they would take 1280 kPa, so that line is held. What lubrication gets at idle falls with line, to a third.
    /// </summary>
    [Fact]
    public void A_leak_that_idle_cannot_feed_makes_a_clutch_weak_there_and_is_right_on_the_road()
    {
        var gear = Unit().Gear("1", "body=leaking");
        Assert.Equal(Verdict.Starved, gear.Verdict);
        Assert.Equal(Verdict.Weak, gear.Clutches[0].Verdict);
        Assert.Equal("idle-hot", gear.DecidedAt!.At.Name);
        Assert.InRange(gear.DecidedAt.LineKilopascals, 118, 128);
        Assert.Equal(Verdict.AsCharted, gear.Conditions.Single(condition => condition.At.Name == "road-hot").Verdict);
        Assert.Equal(ClutchState.Weak, gear.Clutches[0].State);
        Assert.Equal(gear.DecidedAt.LineKilopascals, gear.Clutches[0].Kilopascals, 1.0);
    }

    [Fact]
    public void What_the_static_answer_alone_says_of_it_is_another_mode()
    {
        var unit = Unit();
        Assert.Equal(Verdict.AsCharted, new UnitJudge(unit.Unit, JudgeMode.Quick).Report(unit.Assembly("body=leaking")).Verdict);
    }

    /// <summary>500 kPa on 8000 mm2 is 4000 N: less than a spring of 5000 N, so the plates never touch, though the pressure is the matched set's.</summary>
    [Fact]
    public void A_return_spring_stronger_than_line_on_its_area_is_a_lost_clutch()
    {
        var gear = Unit("area: 8000 mm2, return-spring: 5000 N, rate: 20 N/mm, stroke: 2 mm").Gear("1");
        Assert.Equal((Verdict.Lost, 0.0), (gear.Verdict, gear.DecidedAt!.Clutches[0].ClampNewtons));
        Assert.True(gear.DecidedAt.SharedByMatched);
    }

    /// <summary>
    /// Two holes in series, 1.2 and 2.0 mm: p = 500 / (1 + (2/1.2)^4) = 57 kPa. With 0.5 mm it is 500 / (1 + 4^4) = 1.9 kPa, and the flow a sixth
    /// ((0.5 / 1.2)^2, and a little for the back pressure). With 4 mm it is 500 / (1 + (1/2)^4) = 471 kPa.
    /// </summary>
    [Theory]
    [InlineData("body=dry", Verdict.Starved, 1.9)]
    [InlineData("body=flooded", Verdict.OverPressure, 471)]
    public void A_need_is_recognized_by_what_the_matched_set_gives_it(string change, Verdict verdict, double kilopascals)
    {
        var unit = Unit();
        var sound = Assert.Single(unit.Gear("1").Conditions[0].Needs);
        Assert.Equal(("body.lube", "body:lube~exhaust", Verdict.AsCharted), (sound.Need.Name, sound.Need.DrainsBy, sound.Verdict));
        Assert.InRange(sound.Kilopascals, 0.93 * 57, 1.07 * 57);
        var gear = unit.Gear("1", change);
        Assert.Equal(verdict, gear.Verdict);
        Assert.InRange(gear.Conditions[0].Needs[0].Kilopascals, 0.9 * kilopascals, 1.1 * kilopascals);
        Assert.Equal(Verdict.AsCharted, gear.Clutches[0].Verdict);
    }

    [Theory]
    [InlineData("least: 30 kPa", Verdict.AsCharted)]
    [InlineData("least: 70 kPa", Verdict.Starved)]
    [InlineData("most: 40 kPa", Verdict.OverPressure)]
    [InlineData("flow: 0.5 L/min", Verdict.AsCharted)]
    [InlineData("flow: 3 L/min", Verdict.Starved)]
    [InlineData("least: 70 kPa, except: [1]", Verdict.AsCharted)]
    [InlineData("least: 70 kPa, in: [1]", Verdict.Starved)]
    public void A_need_of_the_file_is_held_to_what_the_file_says(string need, Verdict verdict) =>
        Assert.Equal(verdict, Unit(whole: $"needs: {{lube: {{at: body.lube, {need}}}}}\n").Gear("1").Verdict);

    /// <summary>100 Nm at the input of a clutch that can carry 0.12 x 8 x 3560 N x 60 mm = 205 Nm, and of one with a tenth of its area.</summary>
    [Theory]
    [InlineData("area: 8000 mm2, return-spring: 400 N, rate: 20 N/mm, stroke: 2 mm, plates: 8, friction: 0.12, radius: 60 mm", Verdict.AsCharted)]
    [InlineData("area: 2000 mm2, return-spring: 100 N, rate: 20 N/mm, stroke: 2 mm, plates: 8, friction: 0.12, radius: 60 mm", Verdict.Weak)]
    public void A_clutch_that_cannot_carry_its_torque_is_weak_at_any_pressure(string clutch, Verdict verdict)
    {
        const string gearset = "gearset: {planetaries: {one: {sun: 30, ring: 70}}, output: one.carrier, joined: [[one.sun, one.ring]], clutches: {only: [input, one.sun]}}\nshifts: []\n";
        var gear = Unit(clutch, gearset).Gear("1");
        Assert.Equal(verdict, gear.Conditions.Single(condition => condition.At.Name == "road-hot").Verdict);
    }

    [Fact]
    public void A_file_may_name_its_own_conditions()
    {
        var unit = Unit(whole: "conditions: {slow: {speed: 300 rpm, temperature: 60 degC, judges: [gears]}, told: {speed: idle, temperature: 60 degC}}\n");
        var gear = unit.Gear("1", "body=leaking");
        var only = Assert.Single(gear.Conditions);
        Assert.Equal(new OperatingPoint("slow", 60, 300), only.At);
    }

    [Fact]
    public void A_verdict_is_that_of_its_worst_condition_and_the_first_of_them()
    {
        var gear = Unit(whole: "conditions: {a: {speed: road, temperature: 110 degC, judges: [gears]}, b: {speed: idle, temperature: 110 degC, judges: [gears]}, c: {speed: idle, temperature: 110 degC, judges: [gears]}}\n")
            .Gear("1", "body=leaking");
        Assert.Equal("b", gear.DecidedAt!.At.Name);
    }
}
