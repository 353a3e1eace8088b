using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading;
using Xunit;

namespace Circuits.Tests.Reading;

/// <summary>A file with every element of the language, read and compared value by value: what belongs to the whole unit.</summary>
public sealed class KitchenSinkTests
{
    private const double Exact = 1e-9;
    private static readonly string File = TestFiles.Find("Reading/kitchen-sink.yaml");
    private static readonly Unit Unit = Read();

    [Fact]
    public void Name_origin_and_fluid()
    {
        Assert.Equal(("Kitchen sink", DataOrigin.Measured), (Unit.Name, Unit.Data));
        Assert.Equal(At("unit: |Kitchen"), Unit.Place);
        var fluid = Unit.Fluid!;
        Assert.Equal(32, fluid.Grade);
        Assert.Equal(90, fluid.Temperature!.Value.DegreesCelsius, Exact);
        Assert.Equal(new Density(860), fluid.Density);
        Assert.Equal(140, fluid.ViscosityIndex!.Value, Exact);
        Assert.Equal([new(new(40), new(32)), new ViscosityPoint(new(100), new(5.4))], fluid.Viscosities);
        Assert.Equal(At("|fluid:"), fluid.Place);
    }

    [Fact]
    public void Joints()
    {
        Assert.Equal(["front", "rear"], Unit.Joints.Select(joint => joint.Name));
        var (front, rear) = (Unit.Joints[0], Unit.Joints[1]);
        Assert.Equal(At("|front:\n    between"), front.Place);
        Assert.Equal((new NameUse("body", At("between: [|body, cover]")), new NameUse("cover", At("[body, |cover]\n"))), (front.Upper, front.Lower));
        Assert.Equal([new("plate", At("sheets: [|plate")), new NameUse("gasket", At("[plate, |gasket]"))], front.Sheets);
        Assert.Equal(new Location("1", 10, 12.5, At("locations: {|1: [10.0")), front.Locations[0]);
        Assert.Equal(new Location("2", 18, -3, At("12.5], |2: [18")), front.Locations[1]);
        Assert.Equal("seven", front.Locations[^1].Id);
        Assert.Equal([new("1", null, null, At("locations: [|1, 2]}")), new Location("2", null, null, At("locations: [1, |2]}"))], rear.Locations);
        Assert.Empty(rear.Sheets);
    }

    [Fact]
    public void Pump()
    {
        var pump = Unit.Pump!;
        Assert.Equal(new PumpTest(new(700), new(2000), new Temperature(80)), pump.MeasuredAt);
        Assert.Equal(new PassageUse(new("body", "line"), At("into: |body.line")), pump.Into);
        Assert.Equal(new Displacement(16), pump.Displacement);
        Assert.Equal([new("idle", new(700)), new KeyValuePair<string, Speed>("road", new(2000))], pump.Speeds);
        Assert.Equal(0.85, pump.Efficiency!.Value, Exact);
        Assert.Equal(new Pressure(2000), pump.Relief);
        Assert.Equal(At("|pump:"), pump.Place);
    }

    [Fact]
    public void Conditions_and_needs()
    {
        var (idle, fast) = (Unit.Conditions[0], Unit.Conditions[1]);
        Assert.Equal(("idle-hot", Judged.Gears | Judged.Engagements), (idle.Name, idle.Judges));
        Assert.Equal("idle", Assert.IsType<PumpSpeed.Named>(idle.Pump).Name);
        Assert.Equal(110, idle.Temperature.DegreesCelsius, Exact);
        Assert.Equal(At("  |idle-hot:"), idle.Place);
        Assert.Equal(("fast", Judged.Shifts), (fast.Name, fast.Judges));
        Assert.Equal(2400, Assert.IsType<PumpSpeed.Given>(fast.Pump).Speed.RevolutionsPerMinute);
        Assert.Equal(2, Unit.Conditions.Length);
        var need = Assert.Single(Unit.Needs);
        Assert.Equal(("lube", new PassageUse(new("body", "lube"), At("at: |body.lube, least"))), (need.Name, need.At));
        Assert.Equal((new Pressure(30), new Pressure(600), new Circuits.Quantities.Flow(1.5)), (need.Least!.Value, need.Most!.Value, need.Flow!.Value));
        Assert.Equal([new NameUse("R", At("except: [|R]}"))], need.Except);
        Assert.Empty(need.In);
        Assert.Equal(At("  |lube: {at: body.lube, least"), need.Place);
    }

    [Fact]
    public void Parts_and_revisions()
    {
        Assert.Equal(
            [
                ("body", PartKind.Casting, "2 1"), ("cover", PartKind.Casting, "1"), ("case-1", PartKind.Casting, "1"), ("plate", PartKind.Sheet, "1 late"),
                ("gasket", PartKind.Sheet, "1"), ("balls", PartKind.BallSet, "with without"), ("pack", PartKind.SolenoidPack, "1"), ("drum", PartKind.Drum, "1 2"), ("shaft", PartKind.Other, "1"), ("measured", PartKind.Other, "1"),
            ],
            Unit.Parts.Select(part => (part.Name, part.Kind, string.Join(' ', part.Revisions.Select(revision => revision.Name)))));
        Assert.Equal(At("|cover:\n    kind"), Unit.FindPart("cover")!.Place);
        Assert.Equal(At("|\"1\":"), Unit.FindPart("plate")!.Revisions[0].Place);
        Assert.Equal([null, "1"], Unit.FindPart("plate")!.Revisions.Select(revision => revision.BasedOn));
    }

    [Fact]
    public void Matched_sets_name_every_part()
    {
        Assert.Equal(["early", "late"], Unit.Matched.Select(set => set.Name));
        Assert.Equal(At("|early:"), Unit.Matched[0].Place);
        Assert.Equal(
            "body=1 cover=1 case-1=1 plate=1 gasket=1 balls=with pack=1 drum=1 shaft=1 measured=1",
            string.Join(' ', Unit.Matched[0].Revisions.Select(pair => $"{pair.Key}={pair.Value}")));
        Assert.Equal(
            "body=2 cover=1 case-1=1 plate=late gasket=1 balls=without pack=1 drum=2 shaft=1 measured=1",
            string.Join(' ', Unit.Matched[1].Revisions.Select(pair => $"{pair.Key}={pair.Value}")));
    }

    [Fact]
    public void Clutches()
    {
        var direct = Unit.Clutches[0];
        Assert.Equal(("direct", At("|direct:\n    at")), (direct.Name, direct.Place));
        Assert.Equal(new PassageUse(new("cover", "clutch"), At("at: |cover.clutch\n")), direct.At);
        Assert.Equal(new PassageUse(new("cover", "release"), At("release: |cover.release")), direct.ReleaseAt);
        Assert.Equal((new Area(9800), new Area(4000)), (direct.Area, direct.ReleaseArea));
        Assert.Equal((new Force(900), new SpringRate(40)), (direct.ReturnSpring, direct.Rate));
        Assert.Equal((new Length(2.5), new Volume(36), new Length(70)), (direct.Stroke, direct.Fill, direct.Radius));
        Assert.Equal((8, 0.12, new SpringRate(41000)), (direct.Plates, direct.Friction, direct.PackRate));
        Assert.Equal(new Drum(new Member("input", At("turns: |input")), new(20), new(40), new(65), At("|drum: {turns")), direct.Drum);
        var low = Unit.Clutches[1];
        Assert.Null(low.Drum);
        Assert.Equal(new PassageUse(new("case-1", "ring"), At("low: {at: |ring}")), low.At);
        Assert.Null(low.Area);
        Assert.Null(low.ReleaseAt);
    }

    [Fact]
    public void Gears()
    {
        Assert.Equal(["R", "N", "1"], Unit.Gears.Select(gear => gear.Name));
        var (reverse, neutral, first) = (Unit.Gears[0], Unit.Gears[1], Unit.Gears[2]);
        Assert.Equal(At("|R: {lever"), reverse.Place);
        Assert.Equal(new NameUse("R", At("R: {lever: |R")), reverse.Lever);
        Assert.Equal([new NameUse("two", At("energize: [|two]"))], reverse.Energize);
        Assert.Equal([new Command(new("pack.two", At("commands: {|pack.two")), new Pressure(500), null)], reverse.Commands);
        Assert.Equal([new("direct", At("apply: [|direct, low]")), new NameUse("low", At("apply: [direct, |low]"))], reverse.Apply);
        Assert.Equal(-2.1, reverse.Ratio);
        Assert.Null(reverse.After);
        Assert.Empty(neutral.Apply);
        Assert.Null(neutral.Ratio);
        Assert.Equal([new Command(new("two", At("commands: {|two: 0.4 A")), null, new Current(0.4))], first.Commands);
        Assert.Equal([new FixedPressure(new(new("body", "signal"), At("signals: {|signal:")), new(180))], first.Signals);
        Assert.Equal(new NameUse("N", At("after: |N}")), first.After);
    }

    [Fact]
    public void Shifts()
    {
        var shift = Assert.Single(Unit.Shifts);
        Assert.Equal((new NameUse("N", At("from: |N,")), new NameUse("1", At("to: |1,"))), (shift.From, shift.To));
        var profile = Assert.Single(shift.Commands);
        Assert.Equal("two", profile.Solenoid.Name);
        Assert.Equal([new(new(0), new(100)), new ProfilePoint(new(300), new(500))], profile.Points);
        Assert.Equal(new Torque(180), shift.InputTorque);
        Assert.Equal(At("- |{from: N"), shift.Place);
    }

    [Fact]
    public void Gear_train()
    {
        var set = Unit.GearSet!;
        Assert.Equal(At("|gearset:"), set.Place);
        Assert.Equal(
            [new("front", 34, 74, false, At("planetaries: {|front:")), new("rear", 30, 80, true, At("|rear: {sun")), new Planetary("third", 30, 60, false, At("|third: {sun"))],
            set.Planetaries);
        Assert.Equal(["front.carrier=rear.ring", "rear.ring=third.sun"], set.Joined.Select(Show));
        Assert.Equal(new Member("drum-shaft", At("input: |drum-shaft")), set.Input);
        Assert.Equal(new Member("rear.carrier", At("output: |rear.carrier")), set.Output);
        Assert.Equal(["direct:input=rear.sun", "low:front.ring=case"], set.Clutches.Select(Show));
        Assert.Equal(["sprag:rear.carrier=case"], set.OneWay.Select(Show));
        Assert.Equal(At("clutches: {|direct: [input"), set.Clutches[0].Place);
        Assert.Equal(At("{direct: [|input"), set.Clutches[0].A.Place);
    }

    [Fact]
    public void Taps_expectations_and_thresholds()
    {
        Assert.Equal([new("line", new(new("body", "line"), At("taps: {line: |line"))), new Tap("clutch", new(new("cover", "clutch"), At("line, clutch: |cover.clutch}")))], Unit.Taps);
        var first = Unit.Expectations[0];
        Assert.Equal([new("body", "2"), new KeyValuePair<string, string>("plate", "1")], first.Assembly);
        Assert.Equal((new NameUse("R", At("gear: |R, verdict")), Verdict.NeverSettles, "it was tried"), (first.Gear, first.Verdict, first.Because));
        Assert.Equal([new NameUse("cross-feed", At("finds: [|cross-feed"))], first.Finds);
        Assert.Equal(At("- |{assembly: {body: 2"), first.Place);
        Assert.Null(first.Matched);
        Assert.Equal(("late", Verdict.AsCharted), (Unit.Expectations[1].Matched, Unit.Expectations[1].Verdict));
        Assert.Null(Unit.Expectations[1].Gear);
        Assert.Empty(Unit.Expectations[1].Finds);
        Assert.Equal([Verdict.Weak, Verdict.Unwanted, Verdict.Lost], Unit.Expectations.Skip(2).Select(expectation => expectation.Verdict));
        Assert.Equal(new Thresholds(0.7, 0.25, 0.05) { LineOff = 0.15, Shifts = new ShiftLimits(50, 350, 70, 90, 1100) }, Unit.Thresholds);
    }

    [Fact]
    public void Faults()
    {
        var faults = Unit.Faults;
        Assert.Equal([new(FaultKind.HolePlugged, 3), new KeyValuePair<FaultKind, double>(FaultKind.ValveStuckMidway, 0)], faults.Weights);
        Assert.Equal([new NamedWeight("seal-leaking direct", 12.5, At("named: {|\"seal-leaking direct\""))], faults.Named);
        Assert.Equal(
            [new NeighbourPair(new(new("body", "line"), At("neighbours: [[|body.line")), new(new("cover", "clutch"), At("neighbours: [[body.line, |cover")), At("neighbours: [|[body"))],
            faults.Neighbours);
        Assert.Equal((20, 8, 4), (faults.Near.Millimetres, faults.SealLeak.SquareMillimetres, faults.PassageLeak.SquareMillimetres));
        Assert.Equal((0.5, 1.4, 0.9), (faults.Exhaust.SquareMillimetres, faults.Wear, faults.Clog));
        Assert.Equal([1, 2, 3, 4, 5, 5.5, 6, 7.5], Enum.GetValues<TestKind>().Select(Unit.TestCosts.Of));
        Assert.Equal((3, 0, 6), (faults.WeightOf(FaultKind.HolePlugged), faults.WeightOf(FaultKind.ValveStuckMidway), faults.WeightOf(FaultKind.SealLeaking)));
    }

    internal static Unit Read()
    {
        var result = CircuitReader.ReadFile(File);
        Assert.Empty(result.Findings);
        return result.Unit!;
    }

    private static Place At(string marked) => TestFiles.PlaceOf(File, marked);

    private static string Show(Coupling coupling) => $"{coupling.Name}{(coupling.Name.Length > 0 ? ":" : "")}{coupling.A.Name}={coupling.B.Name}";
}
