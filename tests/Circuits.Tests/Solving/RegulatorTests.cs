using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>Regulators and pressure solenoids against closed forms. Flow is area times the root of the pressure difference.</summary>
public sealed class RegulatorTests
{
    [Fact]
    public void A_reducing_regulator_holds_its_outlet_at_the_set_pressure_while_it_gives_flow()
    {
        // A dead end hangs on the outlet; it must not disturb the flow that the regulator gives.
        var unit = CircuitCase.Body("feed out far end", """
            regulators: {limit: {from: feed, out: out, spring: 300 kPa}}
            restrictions: [{between: [out, far], hole: 2 mm}, {between: [far, exhaust], hole: 2 mm}, {between: [out, end], hole: 1 mm}]
            """, "signals: {body.feed: 900 kPa}");
        CircuitCase.Near(300, unit.Pressure("out"));
        CircuitCase.Near(150, unit.Pressure("far"));
        CircuitCase.Near(300, unit.Pressure("end"));
        Assert.Equal("holds 300 kPa", unit.Position("body.limit"));
    }

    [Fact]
    public void A_relief_that_nothing_pushes_against_stays_shut()
    {
        // A second regulator holds the other end of the leak low, so the relief must not "hold" by giving oil it does not have.
        var unit = CircuitCase.Body("feed out held end", """
            regulators:
              limit: {from: feed, out: out, spring: 20 kPa}
              relief: {holds: held, spills-to: exhaust, spring: 290 kPa}
            restrictions: [{between: [out, held], hole: 0.75 mm}, {between: [out, end], hole: 2 mm}]
            """, "signals: {body.feed: 900 kPa}");
        CircuitCase.Near(20, unit.Pressure("held"));
        Assert.Equal("closed", unit.Position("body.relief"));
    }
}
