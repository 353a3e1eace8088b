using Circuits.Model;
using Circuits.Networks;
using Circuits.Rendering;
using Circuits.Rendering.Drawing;
using Circuits.Studies.Drawing;
using Circuits.Studies.Matrix;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Rendering.Drawing;

/// <summary>Circuit drawings of the demo units, read back from their SVG.</summary>
public class CircuitDrawingTests
{
    /// <summary>Every demo unit, in a matched set and in a mix that goes wrong; at most so many pairs of lines may cross.</summary>
    public static TheoryData<string, string, int> Assemblies() => new()
    {
        { "rill/rill.yaml", "1 1", 0 },
        { "rill/rill.yaml", "1 2", 0 },
        { "rill/rill.yaml", "2 1", 0 },
        { "weir/weir.yaml", "1 1 1 1", 8 },
        { "weir/weir.yaml", "1 2 1 1", 8 },
        { "weir/weir.yaml", "2 1 1 1", 8 },
        { "weir/weir.yaml", "3 3 2 2", 8 },
        { "firth/firth.yaml", "", 40 },
    };

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void Nothing_overlaps_and_every_passage_appears_once(string file, string choice, int crossings)
    {
        var unit = new DemoUnit(file);
        var views = Views(unit, choice);
        var drawing = CircuitDrawing.Of(views.Gears, UnitSystem.Si);
        var network = views.Solved.Network;
        foreach (var gear in views.Gears)
        {
            var sheet = new DrawnSheet(Draw(drawing, gear));
            Check(sheet, network);
            Assert.InRange(sheet.Crossings(), 0, crossings);
        }
    }

    /// <summary>Every so many assemblies of a unit, spread over all; each in another gear, since lettering is another in each.</summary>
    [Theory]
    [InlineData("rill/rill.yaml", 1)]
    [InlineData("weir/weir.yaml", 5)]
    [InlineData("firth/firth.yaml", 101)]
    public void Nothing_overlaps_in_mixes(string file, int every)
    {
        var unit = new DemoUnit(file);
        var space = MatrixSpace.Of(unit.Unit)!;
        for (var number = 0L; number < space.Count; number += every)
        {
            var views = AssemblyViews.Of(unit.Judge, space.At(number));
            var gear = views.Gears[(int)(number / every % views.Gears.Length)];
            Check(new DrawnSheet(Draw(CircuitDrawing.Of(views.Gears, UnitSystem.Si), gear)), views.Solved.Network);
        }
    }

    private static void Check(DrawnSheet sheet, Network network)
    {
        Assert.Equal([], sheet.Overlaps());
        Assert.Equal([], sheet.Struck());
        Assert.Equal([], sheet.Merged());
        Assert.Equal(
            network.Nodes.Where(node => node.Kind == NodeKind.Passage).Select(node => node.Name).Order(),
            sheet.Named("symbol").Select(symbol => symbol.Attribute("data-passage")?.Value).OfType<string>().Order());
        Assert.Equal(network.Clutches.Select(clutch => clutch.Clutch.Name), sheet.Named("symbol").Where(symbol => Kind(symbol) == "clutch").Select(symbol => symbol.Attribute("data-element")!.Value));

        var (width, height) = (DrawnSheet.Number(sheet.Root.Attribute("width")), DrawnSheet.Number(sheet.Root.Attribute("height")));
        Assert.All(sheet.Letters, box => Assert.True(box.X >= 0 && box.X + box.Width <= width && box.Y >= 0 && box.Y + box.Height <= height, box.Text));
        var legend = sheet.Elements("g").Concat(sheet.Elements("rect")).Select(item => item.Attribute("data-legend")?.Value).OfType<string>().ToHashSet();
        Assert.Subset(legend, sheet.Named("symbol").Select(Kind).ToHashSet());
        Assert.Subset(legend, sheet.Named("line").Select(line => line.Attribute("data-look")!.Value).ToHashSet());
    }

    [Fact]
    public void Colours_and_words_are_those_of_the_solver()
    {
        var views = Views(new DemoUnit("rill/rill.yaml"), "1 2");
        var reverse = views.Gears.Single(gear => gear.Gear == "R");
        var sheet = new DrawnSheet(Draw(CircuitDrawing.Of(views.Gears, UnitSystem.Si), reverse));

        // The slot of plate 2 lets reverse oil into the second branch; the high clutch is lost. README.md of the unit reasons it out.
        Assert.Equal("cross-feed", Passage(sheet, "body.second").Attribute("data-look")!.Value);
        Assert.Contains("differs", Passage(sheet, "body.second").Attribute("class")!.Value, StringComparison.Ordinal);
        Assert.Equal("exhaust", Passage(sheet, "body.drive").Attribute("data-look")!.Value);
        var entry = sheet.Named("symbol").Single(symbol => symbol.Attribute("data-element")?.Value == "plate@6-7");
        Assert.Contains("foreign oil enters here", entry.Value, StringComparison.Ordinal);

        // The high clutch's oil drains there, too: both marks, one around the other.
        Assert.Equal(["entry", "stop", "stop"], Frames(entry));
        Assert.Equal(3, entry.Elements().Where(element => element.Attribute("class")?.Value is "stop" or "entry").Select(element => element.Attribute("width")!.Value).Distinct().Count());
        Assert.Contains(sheet.Letters, letters => letters.Text.StartsWith("lost: released", StringComparison.Ordinal));
        Assert.Contains("Foreign oil of body.either enters body.second through plate@6-7", sheet.Elements("desc").Single().Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_matched_set_differs_from_nothing()
    {
        var views = Views(new DemoUnit("rill/rill.yaml"), "1 1");
        var sheet = new DrawnSheet(Draw(CircuitDrawing.Of(views.Gears, UnitSystem.Si), views.Gears[0]));
        Assert.DoesNotContain(sheet.Named("symbol"), symbol => symbol.Attribute("class")!.Value.Contains("differs", StringComparison.Ordinal));
    }

    [Fact]
    public void A_change_of_gear_shows_what_it_changes()
    {
        var views = Views(new DemoUnit("rill/rill.yaml"), "1 1");
        var view = views.Change(2, 3);
        var sheet = new DrawnSheet(Draw(CircuitDrawing.Of([view], UnitSystem.Si), view));
        Assert.Contains("differs", Passage(sheet, "housing.high").Attribute("class")!.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("differs", Passage(sheet, "housing.forward").Attribute("class")!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_a_clutch_stops_the_metal_is_drawn()
    {
        // Third oil ends at location 22, which plate 1 blanks.
        var views = Views(new DemoUnit("weir/weir.yaml"), "2 1 1 1");
        var sheet = new DrawnSheet(Draw(CircuitDrawing.Of(views.Gears, UnitSystem.Si), views.Gears.Single(gear => gear.Gear == "3")));
        var stop = sheet.Named("symbol").First(symbol => Kind(symbol) == "metal" && symbol.Value.Contains("high stops here", StringComparison.Ordinal));

        // Two frames, one in the other, where oil stops; one of dashes where foreign oil enters.
        Assert.Equal(["stop", "stop"], Frames(stop));
        foreach (var legend in sheet.Named("legend")) Assert.Equal(2, legend.Elements().Count(element => element.Attribute("class")?.Value == "stop"));
    }

    private static IEnumerable<string> Frames(System.Xml.Linq.XElement symbol) =>
        symbol.Elements().Select(element => element.Attribute("class")?.Value).OfType<string>().Where(style => style is "stop" or "entry");

    internal static string Draw(CircuitDrawing drawing, GearView gear)
    {
        var text = new StringWriter { NewLine = "\n" };
        drawing.Write(text, gear);
        return text.ToString();
    }

    private static AssemblyViews Views(DemoUnit unit, string choice) =>
        AssemblyViews.Of(unit.Judge, choice.Length == 0 ? Assembly.DefaultOf(unit.Unit) : unit.Pick(choice.Split(' ')));

    private static string Kind(System.Xml.Linq.XElement symbol) => symbol.Attribute("class")!.Value.Split(' ')[1];

    private static System.Xml.Linq.XElement Passage(DrawnSheet sheet, string name) => sheet.Named("symbol").Single(symbol => symbol.Attribute("data-passage")?.Value == name);
}
