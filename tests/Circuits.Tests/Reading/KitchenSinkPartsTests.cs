using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Xunit;

namespace Circuits.Tests.Reading;

/// <summary>A file with every element of the language, read and compared value by value: what belongs to parts.</summary>
public sealed class KitchenSinkPartsTests
{
    private const double Exact = 1e-9;
    private static readonly string Folder = TestFiles.Find("Reading") + "/";
    private static readonly Unit Unit = KitchenSinkTests.Read();
    private static readonly Revision First = Unit.FindPart("body")!.FindRevision("1")!;
    private static readonly Revision Second = Unit.FindPart("body")!.FindRevision("2")!;

    [Fact]
    public void Passages()
    {
        Assert.Equal(["line", "lube", "either", "converter", "signal", "signal-2"], First.Passages.Select(passage => passage.Name));
        var line = First.Passages[0];
        Assert.Equal([new("front", "1", Body("line: {front: [|1")), new LocationUse("front", "2", Body("front: [1, |2]"))], line.Locations);
        Assert.Equal((new Length(120), new Area(40), "line", Body("|line: {front")), (line.Length, line.Section, line.Circuit, line.Place));
        Assert.Equal(4.8, line.Volume!.Value.Millilitres, Exact);
        var either = First.Passages[2];
        Assert.Equal(("clutch", new Volume(1)), (either.Circuit, either.Volume));
        Assert.Equal([new LocationUse("front", "3", Body("either: {front: |3"))], either.Locations);
        Assert.Empty(First.Passages[3].Locations);
    }

    [Fact]
    public void Passages_of_a_later_revision()
    {
        Assert.Equal("1", Second.BasedOn);
        Assert.Equal(["line", "lube", "either", "converter", "signal-2"], Second.Passages.Select(passage => passage.Name));
        Assert.Equal(First.Passages[0].Place, Second.Passages[0].Place);
        Assert.Equal((Body("|lube: {front: [5]"), "5", Body("lube: {front: [|5]")), (Second.Passages[1].Place, Second.Passages[1].Locations.Single().Location, Second.Passages[1].Locations.Single().Place));
        Assert.Null(Second.Passages[2].Volume);
        Assert.Equal(First.Passages[2].Locations, Second.Passages[2].Locations);
    }

    [Fact]
    public void Openings()
    {
        var openings = Unit.FindPart("plate")!.Revisions[0].Openings;
        Assert.Equal(["1", "1", "2-3", "4", "5"], openings.Select(Locations));
        Assert.Equal([true, false, false, false, false], openings.Select(opening => opening.Cup));
        Assert.Equal(new Shape.Hole(new(6), "6 mm"), openings[0].Shape);
        var drill = Assert.IsType<Shape.Hole>(openings[1].Shape);
        Assert.Equal("#45", drill.Text);
        Assert.Equal(0.082 * 25.4, drill.Diameter.Millimetres, Exact);
        Assert.Equal(new Shape.Slot(new(4), new(14)), openings[2].Shape);
        Assert.Equal(new Shape.Cutout(new(12)), openings[3].Shape);
        Assert.Equal(Shape.Unsized.Instance, openings[4].Shape);
        Assert.Equal([Top("- |{at: 1, hole: 6 mm"), Top("- |{at: 1, hole: \"#45"), Top("- |{at: [2, 3]"), Top("- |{at: 4"), Top("- |at: 5")], openings.Select(opening => opening.Place));
        Assert.Equal([new("2", Top("at: [|2, 3]")), new NameUse("3", Top("at: [2, |3]"))], openings[2].At);
    }

    [Fact]
    public void Openings_of_a_later_revision_replace_those_at_their_locations()
    {
        var late = Unit.FindPart("plate")!.Revisions[1];
        Assert.Equal(["1", "1", "4", "3", "seven"], late.Openings.Select(Locations));
        Assert.Equal(new Shape.Slot(new(3), new(12.7)), late.Openings[^1].Shape);
        Assert.False(late.OpenElsewhere);
        var gasket = Unit.FindPart("gasket")!.Revisions[0];
        Assert.True(gasket.OpenElsewhere);
        Assert.Equal([new NameUse("6", Top("open-except: [|6]"))], gasket.OpenExcept);
    }

    [Fact]
    public void Balls()
    {
        var twoWay = Assert.Single(Unit.FindPart("balls")!.FindRevision("with")!.Balls);
        Assert.Equal(("two-way", new Length(6.35)), (twoWay.Name, twoWay.Diameter));
        Assert.Equal(new PassageUse(new("cover", "either"), Top("in: |cover.either")), twoWay.Pocket);
        Assert.Equal([new Seat.AtLocation(null, "4", Top("seats: [|4")), new Seat.AtLocation("front", "5", Top("[4, |{joint"))], twoWay.Seats);
        Assert.Empty(Unit.FindPart("balls")!.FindRevision("without")!.Balls);
        var (inside, free) = (First.Balls[0], First.Balls[1]);
        Assert.Equal(new Seat.InCasting(new(new("body", "lube"), Body("{to: |lube")), new Shape.Hole(new(4), "4 mm"), Body("[|{to: lube")), Assert.Single(inside.Seats));
        Assert.Null(inside.Diameter);
        Assert.Equal(new Seat.InCasting(new(PassageName.Exhaust, Body("seats: {to: |exhaust")), Shape.Unsized.Instance, Body("seats: |{to: exhaust")), Assert.Single(free.Seats));
    }

    [Fact]
    public void Valves()
    {
        var select = Assert.Single(First.Valves);
        Assert.Equal(("select", new Length(6), Body("|select:\n")), (select.Name, select.Travel, select.Place));
        Assert.Equal(["body.line+body.lube", "body.converter+exhaust 20"], select.Rest.Select(Show));
        Assert.Equal(["body.line+body.converter+cover.clutch"], select.Moved.Select(Show));
        Assert.Equal((Body("rest: [|[line"), Body("lube], |{join")), (select.Rest[0].Place, select.Rest[1].Place));
        Assert.Equal(
            [new SpoolForce.Signal(new(new("body", "signal-2"), Body("[{pressure: |signal-2, area")), new(95), Body("moved-by: [|{pressure")), new SpoolForce.Signal(new(new("body", "line"), Body("95 mm2}, {pressure: |line}")), null, Body("95 mm2}, |{pressure"))],
            select.MovedBy);
        Assert.Equal([new SpoolForce.Spring(new(40), new(2), Body("held-by: |{spring: 40"))], select.HeldBy);
        Assert.Equal([new SpoolForce.Spring(new(45), null, Body("[|{spring: 45"))], Assert.Single(Second.Valves).HeldBy);
        Assert.Equal(select.Rest.Select(Show), Second.Valves[0].Rest.Select(Show));
        Assert.Equal(Body("|select: {held"), Second.Valves[0].Place);
    }

    [Fact]
    public void Regulators()
    {
        var main = Assert.IsType<Regulator.Spilling>(First.Regulators[0]);
        Assert.Equal(new PassageUse(new("body", "line"), Body("holds: |line")), main.Holds);
        Assert.Equal(["body.converter", "exhaust"], main.SpillsTo.Select(use => use.Name.ToString()));
        Assert.Equal((new Pressure(420), new Area(35)), (main.Spring, main.PortArea));
        Assert.Equal([("body.signal-2", 0.5), ("body.lube", 1.0)], main.SetBy.Select(signal => (signal.From.Name.ToString(), signal.Ratio)));
        var relief = Assert.IsType<Regulator.Spilling>(First.Regulators[1]);
        Assert.Equal(["exhaust"], relief.SpillsTo.Select(use => use.Name.ToString()));
        Assert.Null(relief.Spring);
        Assert.Null(relief.PortArea);
        Assert.Empty(relief.SetBy);
        var direct = Assert.IsType<Regulator.Reducing>(First.Regulators[2]);
        Assert.Equal(("body.line", "body.signal-2", "body.lube"), (direct.From.Name.ToString(), direct.Out.Name.ToString(), direct.To.Name.ToString()));
        Assert.Equal(new Pressure(20), direct.Spring);
        Assert.Equal(new RegulatorSignal(new(new("body", "lube"), Body("{pressure: |lube, ratio: -")), -1.8, Body("set-by: |{pressure")), Assert.Single(direct.SetBy));
        Assert.Equal(Body("|direct: {from"), direct.Place);
    }

    [Fact]
    public void Solenoids()
    {
        var two = Assert.Single(Unit.FindPart("pack")!.Revisions[0].Solenoids);
        Assert.Equal(("body.line", "body.signal", "exhaust"), (two.Feed.Name.ToString(), two.Out.Name.ToString(), two.To.Name.ToString()));
        Assert.Equal((SolenoidKind.Pressure, RestState.High, new Area(3)), (two.Kind, two.AtRest, two.PortArea));
        Assert.Equal([new(new(0), new(600)), new CurrentPoint(new(1), new(0))], two.Table);
        Assert.Equal(Top("|two: {feed"), two.Place);
        var three = Assert.Single(First.Solenoids);
        Assert.Equal((SolenoidKind.Switching, RestState.Low, "body.signal-2"), (three.Kind, three.AtRest, three.To.Name.ToString()));
        Assert.Null(three.PortArea);
        Assert.Empty(three.Table);
    }

    [Fact]
    public void Lever()
    {
        Assert.Equal(["R", "N"], First.Lever.Select(position => position.Name));
        Assert.Equal(["body.line+body.signal-2"], First.Lever[0].Ports.Select(Show));
        Assert.Equal(Body("|R: [[line"), First.Lever[0].Place);
        Assert.Empty(First.Lever[1].Ports);
    }

    [Fact]
    public void Restrictions_and_leaks()
    {
        Assert.Equal(["body.line~body.converter 2 mm", "body.line~body.signal-2 1 mm", "body.lube~exhaust unsized"], First.Restrictions.Select(item => Show(item.A, item.B, item.Shape)));
        Assert.Equal(["body.lube~exhaust unsized", "body.line~body.converter 2.2 mm"], Second.Restrictions.Select(item => Show(item.A, item.B, item.Shape)));
        Assert.Equal((Body("|{between: [line, converter], hole: 2.0"), Body("|{between: [line, converter], hole: 2.2")), (First.Restrictions[0].Place, Second.Restrictions[1].Place));
        var leak = Assert.Single(First.Leaks);
        Assert.Equal("body.line~body.lube slot", Show(leak.A, leak.B, leak.Shape));
        Assert.Equal(0.6, leak.Shape.Area!.Value.SquareMillimetres, Exact);
        Assert.Equal(Body("leaks: [|{between"), leak.Place);
        Assert.Empty(Second.Leaks);
        Assert.Equal(new Shape.Cutout(new(0.3)), Assert.Single(Unit.FindPart("shaft")!.Revisions[0].Leaks).Shape);
    }

    [Fact]
    public void Screens()
    {
        Assert.Equal(["filter", "strainer", "plain-screen"], First.Screens.Select(screen => screen.Name));
        var (filter, strainer, plain) = (First.Screens[0], First.Screens[1], First.Screens[2]);
        Assert.Equal(
            (new PassageUse(new("body", "line"), Body("filter: {from: |line")), new PassageUse(new("body", "lube"), Body("from: line, to: |lube, area: 300")), Body("|filter: {from")),
            (filter.From, filter.To, filter.Place));
        Assert.Equal(new Shape.Cutout(new(300)), filter.Mesh);
        Assert.Equal(0.2, filter.Clogged, Exact);
        Assert.Equal(new Bypass(new(80), new Shape.Hole(new(6), "6 mm"), Body("clogged: 20 %, |bypass")), filter.Bypass);
        Assert.Equal(new Shape.Hole(new(12), "12 mm"), strainer.Mesh);
        Assert.Equal((new Pressure(50), new Shape.Cutout(new(25))), (strainer.Bypass!.OpensAt, (Shape.Cutout)strainer.Bypass.Hole));
        Assert.Equal((Shape.Unsized.Instance, 0, null), (plain.Mesh, plain.Clogged, plain.Bypass));
    }

    [Fact]
    public void Accumulators()
    {
        var (soft, plain) = (First.Accumulators[0], First.Accumulators[1]);
        Assert.Equal(("body.lube", "body.converter"), (soft.At.Name.ToString(), soft.Back!.Value.Name.ToString()));
        Assert.Equal((new Area(500), new Force(200), new SpringRate(10), new Length(12)), (soft.Area, soft.Spring, soft.Rate, soft.Stroke));
        Assert.Equal(Body("|soft:"), soft.Place);
        Assert.Null(plain.Back);
        Assert.Equal(((Area?)null, (Force?)null, (SpringRate?)null, (Length?)null), (plain.Area, plain.Spring, plain.Rate, plain.Stroke));
    }

    [Fact]
    public void Changed_clutches_and_marks()
    {
        var low = Assert.Single(First.Clutches);
        Assert.Equal(("low", new Area(9000), (PassageUse?)null), (low.Name, low.Area, low.At));
        var drum = Unit.FindPart("drum")!;
        Assert.Equal([(10, 38.0), (12, 38.0)], drum.Revisions.Select(revision => (revision.Clutches[0].Plates!.Value, revision.Clutches[0].Fill!.Value.Millilitres)));
        Assert.Equal(("inside", "lube"), (drum.Revisions[1].Passages[0].Name, drum.Revisions[1].Passages[0].Circuit));
        Assert.Equal([new NameUse("no rib", Body("[|no rib"))], First.Marks);
        Assert.Equal([new NameUse("rib between 5 and 6", Body("[|rib between"))], Second.Marks);
    }

    [Fact]
    public void What_was_measured_of_an_element()
    {
        var part = Unit.FindPart("measured")!.Revisions[0];
        Assert.Equal(new Length(0.8), part.Balls[0].Lift);
        Assert.Equal([new Length(0.5), new Length(-0.25)], part.Valves.Select(valve => valve.Overlap!.Value));
        Assert.Equal([0, 0.25 / 3.25], part.Valves.Select(valve => valve.OpenMidway!.Value));
        Assert.Null(First.Valves[0].Overlap);
        Assert.Null(First.Valves[0].OpenMidway);
        Assert.Equal(
            [new RegulatorSpool(new(80), new(3), new(1.2), new(-0.1)), new RegulatorSpool(new(90), new(4), new(2), new(0.2))],
            part.Regulators.Select(regulator => regulator.Spool));
        Assert.Null(First.Regulators[0].Spool);
        Assert.Equal(new Shape.Hole(new(2), "2 mm") { Depth = new(9) }, Assert.Single(part.Restrictions).Shape);
        Assert.Equal([new Shape.RoundGap(new(12), new(0.02), new(10), 0.5), new Shape.FlatGap(new(30), new(0.05), new(5))], part.Leaks.Select(leak => leak.Shape));
        Assert.Equal(0.02 * 12 * Math.PI, part.Leaks[0].Shape.Area!.Value.SquareMillimetres, Exact);
        Assert.Equal(1.5, part.Leaks[1].Shape.Area!.Value.SquareMillimetres, Exact);
    }

    private static Place Top(string marked) => TestFiles.PlaceOf(Folder + "kitchen-sink.yaml", marked);

    private static Place Body(string marked) => TestFiles.PlaceOf(Folder + "parts/body.yaml", marked);

    private static string Locations(Opening opening) => string.Join('-', opening.At.Select(at => at.Name));

    private static string Show(Port port) => string.Join('+', port.Passages.Select(use => use.Name)) + (port.Area is { } area ? $" {area.SquareMillimetres:0.##}" : "");

    private static string Show(PassageUse a, PassageUse b, Shape shape) => $"{a.Name}~{b.Name} " + shape switch
    {
        Shape.Hole hole => hole.Text.Replace(".0", "", StringComparison.Ordinal),
        Shape.Slot => "slot",
        Shape.Cutout => "area",
        _ => "unsized",
    };
}
