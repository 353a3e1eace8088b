using System.Globalization;
using Circuits.Model;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Faults;
using Circuits.Tests.Demo;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Studies.AirCheck;

[Collection(nameof(FullUnit))]
public class AirCheckTests
{
    // Two clutches behind one plate; the upper casting has the manual valve.
    private const string Unit = """
        joints: {face: {between: [body, housing], sheets: [plate]}}
        parts:
          body:
            kind: casting
            passages: {line: {}, one: {face: 1}, two: {face: 2}}
            lever: {P: [[one, exhaust]], D: [[line, one], [two, exhaust]]}
          plate:
            kind: sheet
            openings: [{at: 1, hole: 2 mm}, {at: 2, hole: 2 mm}]
          housing:
            kind: casting
            passages: {one: {face: [1, 3]}, two: {face: 2}}
        clutches: {one: {at: housing.one}, two: {at: housing.two}}
        taps: {one: housing.one, plate: body.one}
        gears: {P: {lever: P, apply: []}, D: {lever: D, apply: [one]}}
        """;

    private static readonly AirBench Bench = new(CircuitCase.Of(Unit).Assembly());

    [Fact]
    public void Air_can_be_let_in_at_gauge_ports_and_on_every_face_with_a_clutch_behind_it()
    {
        Assert.Equal("P", Bench.Lever);
        Assert.Equal(["one", "plate", "housing.one@face", "housing.two@face"], Bench.Ports.Select(port => port.Name));
        Assert.Equal(["1", "3"], Bench.Ports[2].Locations);
    }

    [Fact]
    public void A_clutch_that_no_port_reaches_is_fed_at_its_own_passage()
    {
        var bench = new AirBench(CircuitCase.Body("feed line", "restrictions: [{between: [line, feed], hole: 1 mm}]", "", "clutches: {only: {at: body.feed}}").Assembly());
        Assert.Equal(["body.feed"], bench.Ports.Select(port => port.Name));
        Assert.Equal(AirPortKind.Feed, bench.Ports[0].Kind);
        Assert.Equal(AirMove.Moves, bench.Right[0].MoveOf("only"));
        Assert.Empty(bench.Right[0].Hisses);
    }

    [Fact]
    public void Air_at_a_gauge_port_moves_its_clutch_and_leaves_by_the_lever()
    {
        var right = Bench.Right[0];
        Assert.Equal(AirMove.Moves, right.MoveOf("one"));
        Assert.Equal(AirMove.Stays, right.MoveOf("two"));
        Assert.Equal(["body.one by the manual valve"], right.Hisses.Select(hiss => hiss.At));
    }

    [Fact]
    public void With_the_lever_elsewhere_air_stays_in() =>
        Assert.Empty(new AirBench(CircuitCase.Of(Unit).Assembly(), "D").Right[0].Hisses.Where(hiss => hiss.At.Contains("manual valve", StringComparison.Ordinal)));

    // Two holes in series, feed d1 and drain d2: p / air = 1 / (1 + (A2 / A1)^2), from Q = Cd A sqrt(2 dp / rho).
    [Theory]
    [InlineData(1.0)]
    [InlineData(2.0)]
    [InlineData(2.5)]
    [InlineData(3.5)]
    [InlineData(5.0)]
    public void A_leaking_piston_moves_while_the_hole_before_it_lets_enough_through(double drain)
    {
        var size = drain.ToString(CultureInfo.InvariantCulture);
        var unit = CircuitCase.Of(Unit.Replace("clutches:", $"  drum: {{kind: drum, leaks: [{{between: [housing.one, exhaust], hole: {size} mm}}]}}\nclutches:", StringComparison.Ordinal));
        var outcome = new AirBench(unit.Assembly()).Right[1];
        var share = 1 / (1 + Math.Pow(drain / 2, 4));
        var expected = share >= 0.6 ? AirMove.Moves : share >= 0.2 ? AirMove.May : AirMove.Stays;
        Assert.Equal(expected, outcome.MoveOf("one"));
        var leak = Math.PI / 4 * drain * drain * Math.Sqrt(share);
        Assert.Equal(leak, outcome.AmountAt("clutch one"), 1e-6);
    }

    [Fact]
    public void A_face_shows_what_crosses_behind_it()
    {
        var faults = FaultLibrary.Of(CircuitCase.Of(Unit.Replace("gears: {P", "faults: {neighbours: [[housing.one, housing.two]]}\ngears: {P", StringComparison.Ordinal)).Assembly());
        var leak = faults.Single(fault => fault.Kind == FaultKind.PassagesLeak);
        var found = Bench.Test(leak.In(CircuitCase.Of(Unit).Assembly()), Bench.Ports[3]);
        Assert.Contains(new AirSign(AirSignKind.Hisses, "housing.one at the face"), AirSign.Between(Bench.Right[3], found));
    }

    [Fact]
    public void A_hiss_that_is_only_somewhat_louder_tells_nothing()
    {
        var quiet = new AirOutcome(true, [], [new AirHiss("x", 1, true, Findings.Place.None)]);
        var louder = quiet with { Hisses = [quiet.Hisses[0] with { SquareMillimetres = 3.9 }] };
        var loud = quiet with { Hisses = [quiet.Hisses[0] with { SquareMillimetres = 4 }] };
        Assert.Empty(AirSign.Between(quiet, louder));
        Assert.Equal([new AirSign(AirSignKind.Hisses, "x")], AirSign.Between(quiet, loud));
        Assert.Equal([new AirSign(AirSignKind.Silent, "x")], AirSign.Between(loud, quiet with { Hisses = [] }));
        Assert.Empty(AirSign.Between(loud with { Settled = false }, quiet));
    }

    // On the face of the gear case nothing lies between a passage and its clutch, so the file alone says which must move.
    [Fact]
    public void On_the_gear_case_of_the_full_unit_each_clutch_moves_by_its_own_passage_alone()
    {
        var assembly = Assembly.DefaultOf(FullUnit.Unit);
        var bench = new AirBench(assembly);
        var tried = 0;
        for (var i = 0; i < bench.Ports.Length; i++)
        {
            if (bench.Ports[i] is not { Kind: AirPortKind.Face, Joint: "deck" } port) continue;
            tried++;
            foreach (var clutch in assembly.Unit.Clutches)
                Assert.Equal(clutch.At!.Value.Name == port.Passage ? AirMove.Moves : AirMove.Stays, bench.Right[i].MoveOf(clutch.Name));
        }

        Assert.True(tried > 10);
    }

    [Theory]
    [InlineData("rill")]
    [InlineData("weir")]
    public void Each_connection_adds_the_most_and_what_is_left_is_blind(string name)
    {
        var report = AirStudy.Run(Assembly.DefaultOf(new DemoUnit($"{name}/{name}.yaml").Unit), interrupted: TestContext.Current.CancellationToken);
        Assert.NotEmpty(report.Connections);
        Assert.Equal(report.Faults.Length, report.Connections.Sum(connection => connection.Adds) + report.Blind.Length);
        Assert.All(report.Connections, connection => Assert.True(connection.Adds > 0));
        Assert.All(report.Others, other => Assert.Equal(0, other.Adds));
        var shares = report.Connections.Select(connection => connection.Share).ToList();
        var gains = shares.Select((share, i) => share - (i > 0 ? shares[i - 1] : 0)).ToList();
        Assert.All(gains.Skip(1).Select((gain, i) => (gain, Before: gains[i])), pair => Assert.True(pair.gain <= pair.Before + 1e-12));
        var weight = report.Faults.Sum(fault => fault.Weight);
        Assert.Equal(1 - (report.Blind.Sum(fault => fault.Weight) / weight), shares[^1], 1e-9);

        // What the plan calls seen is seen when it is tried alone, by the port asked alone.
        var bench = new AirBench(report.Assembly);
        foreach (var fault in report.Faults.Where((_, index) => index % 7 == 0))
        {
            var seen = report.Connections.Any(connection =>
                !AirSign.Between(connection.Right, bench.Test(fault.In(report.Assembly), connection.Port)).IsEmpty);
            Assert.Equal(!report.Blind.Contains(fault), seen);
        }
    }

    [Fact]
    public void A_seal_shows_at_its_own_clutch_on_every_demo_unit()
    {
        foreach (var assembly in new[] { Assembly.DefaultOf(new DemoUnit("rill/rill.yaml").Unit), Assembly.DefaultOf(new DemoUnit("weir/weir.yaml").Unit), Assembly.DefaultOf(FullUnit.Unit) })
        {
            var bench = new AirBench(assembly);
            foreach (var fault in FaultLibrary.Of(assembly).Where(fault => fault.Kind == FaultKind.SealLeaking))
            {
                var found = bench.Test(fault.In(assembly));
                var sign = $"clutch {fault.Element.Replace(":release", ", release side", StringComparison.Ordinal)}";
                Assert.Contains(Enumerable.Range(0, found.Length), i => AirSign.Between(bench.Right[i], found[i]).Contains(new AirSign(AirSignKind.Hisses, sign)));
            }
        }
    }
}
