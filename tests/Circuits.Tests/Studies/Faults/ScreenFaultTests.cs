using Circuits.Studies.Faults;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Studies.Faults;

/// <summary>What can be wrong with a screen, and what that does.</summary>
public sealed class ScreenFaultTests
{
    /// <summary>Two equal holes in series, the first of them a screen: half of 600 kPa behind it while it is clean.</summary>
    private static readonly CircuitCase Case = CircuitCase.Body("dirty clean", """
        screens:
          filter: {from: dirty, to: clean, area: 12 mm2, bypass: {opens-at: 350 kPa, hole: 8 mm}}
          plain: {from: dirty, to: clean, area: 0.001 mm2, clogged: 96 %}
        restrictions: [{between: [clean, exhaust], area: 12 mm2}]
        """, "signals: {body.dirty: 600 kPa}");

    [Fact]
    public void A_screen_has_these_faults_and_no_others() => Assert.Equal(
        ["screen-clogged body.filter", "screen-out body.filter", "screen-out body.plain", "bypass-stuck-open body.filter", "bypass-stuck-shut body.filter"],
        FaultLibrary.Of(Case.Assembly()).Select(fault => fault.Code).Where(code => code.Contains("screen", StringComparison.Ordinal) || code.Contains("bypass", StringComparison.Ordinal)));

    [Theory]
    [InlineData("screen-clogged body.filter", 250)] // 5 % of the mesh is left: the bypass gives the rest, 350 kPa below
    [InlineData("screen-out body.filter", 600)]
    [InlineData("bypass-stuck-shut body.filter", 300)]
    public void What_each_of_them_does(string code, double behind)
    {
        var fault = FaultLibrary.Of(Case.Assembly()).Single(fault => fault.Code == code);
        var report = Case.Judge.Report(fault.In(Case.Assembly()));
        Assert.Equal(behind, report.Gears[0].Pressures.Single(pressure => pressure.Passage == "body.clean").Kilopascals, 0.1);
    }
}
