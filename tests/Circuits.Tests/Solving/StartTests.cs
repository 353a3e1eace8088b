using Circuits.Model;
using Circuits.Reading;
using Circuits.Solving;
using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>Where the gear before leads, when nothing but what it left behind tells the starts apart.</summary>
public class StartTests
{
    /// <summary>In HOLD the manual valve joins the clutch to nothing: it keeps what the gear before left in it, and nothing else stands otherwise.</summary>
    [Fact]
    public void Trapped_oil_tells_starts_apart_that_end_in_the_same_positions()
    {
        var unit = Read();
        var solved = SolvedAssembly.Of(Assembly.DefaultOf(unit));
        var hold = solved.Gears.Single(gear => gear.Gear.Name == "HOLD");
        var clutch = hold.Solution.Network.Clutches[0].Chamber;
        Assert.Equal(0, hold.Solution.PressureAt(clutch));
        Assert.Equal(OilState.Trapped, hold.Solution.OilAt(clutch));
        var other = Assert.Single(hold.Others);
        Assert.Equal("ON", other.From);
        Assert.Equal(600, other.Solution.PressureAt(clutch), 6);
    }

    [Fact]
    public void Starts_that_leave_nothing_behind_lead_to_the_one_answer()
    {
        var solved = SolvedAssembly.Of(Assembly.DefaultOf(Read()));
        Assert.All(solved.Gears.Where(gear => gear.Gear.Name != "HOLD"), gear => Assert.Empty(gear.Others));
    }

    private static Unit Read() => CircuitReader.ReadText(
        """
        format: 1
        unit: Hold
        data: invented
        pump: {into: body.line}
        parts:
          body:
            kind: casting
            passages: {line: {}, apply: {}}
            lever: {"OFF": [[apply, exhaust]], HOLD: [], "ON": [[line, apply]]}
            regulators: {main: {holds: line, spills-to: exhaust, spring: 600 kPa}}
        clutches: {only: {at: body.apply, area: 5000 mm2}}
        gears: {"OFF": {lever: "OFF", apply: []}, HOLD: {lever: HOLD, apply: []}, "ON": {lever: "ON", apply: [only]}}
        """, "hold.yaml").Unit!;
}
