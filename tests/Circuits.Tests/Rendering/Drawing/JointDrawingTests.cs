using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Circuits.Model;
using Circuits.Rendering.Drawing.Joints;
using Circuits.Rendering.Drawing.Paper;
using Circuits.Studies.Drawing;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Rendering.Drawing;

/// <summary>Joints drawn to scale, read back from their SVG.</summary>
public partial class JointDrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Holes_and_slots_stand_at_their_coordinates_to_scale()
    {
        var sheet = Parse(Draw(Look("rill/rill.yaml", "1 2", "face")));
        var plan = sheet.Descendants(Svg + "g").Single(group => Class(group) == "plan");
        var shift = Pair().Match(plan.Attribute("transform")!.Value);
        var (left, top) = (Number(shift.Groups[1].Value), Number(shift.Groups[2].Value));

        // Location 2 stands at 10, 34 and location 3 at 24, 34; their holes have 3.5 and 2.4 mm. The file says so.
        var two = Opening(plan, "plate@2").Element(Svg + "circle")!;
        var three = Opening(plan, "plate@3").Element(Svg + "circle")!;
        Assert.Equal(1.75, Number(two, "r"));
        Assert.Equal(1.2, Number(three, "r"));
        Assert.Equal(14, Number(three, "cx") - Number(two, "cx"));
        Assert.True(left + Number(two, "cx") > 0 && top + Number(two, "cy") > 0);

        // The slot from 6 (38, 22) to 7 (38, 10) is 3 x 16 mm and lies upright.
        var slot = Opening(plan, "plate@6-7").Element(Svg + "rect")!;
        Assert.Equal((16, 3), (Number(slot, "width"), Number(slot, "height")));
        Assert.Contains("rotate(90 38 -16)", slot.Attribute("transform")!.Value, StringComparison.Ordinal);
        Assert.Equal(["11", "12", "13", "2", "3", "5", "6", "7", "8"], plan.Descendants(Svg + "text").Select(text => text.Value).Order(StringComparer.Ordinal));
        Assert.Equal(2, plan.Descendants(Svg + "g").Count(group => Class(group) == "ball"));
    }

    [Theory]
    [InlineData("rill/rill.yaml", "1 1", "face")]
    [InlineData("rill/rill.yaml", "2 2", "face")]
    [InlineData("weir/weir.yaml", "2 2 1 1", "upper")]
    [InlineData("weir/weir.yaml", "1 1 1 1", "lower")]
    [InlineData("firth/firth.yaml", "", "middle")]
    [InlineData("firth/firth.yaml", "", "deck")]
    public void Numbers_stand_clear_of_one_another_and_of_every_hole(string file, string choice, string joint)
    {
        var plan = Parse(Draw(Look(file, choice, joint))).Descendants(Svg + "g").Single(group => Class(group) == "plan");
        var numbers = plan.Descendants(Svg + "text").Select(text => new LetterBox(
            text.Value, Number(text, "x"), Number(text, "y") - 1.84, Circuits.Rendering.Drawing.DrawnText.Width(text.Value, 2.3), 2.3)).ToList();
        Assert.NotEmpty(numbers);
        for (var i = 0; i < numbers.Count; i++)
        {
            for (var k = i + 1; k < numbers.Count; k++) Assert.False(numbers[i].Meets(numbers[k]), $"{numbers[i].Text} on {numbers[k].Text}");
        }

        foreach (var hole in plan.Descendants(Svg + "circle").Where(circle => Class(circle).StartsWith("hole", StringComparison.Ordinal)))
        {
            // A hole is round: its box may touch a number at a corner that the hole itself does not reach.
            var r = Number(hole, "r") * 0.7;
            var box = new LetterBox("", Number(hole, "cx") - r, Number(hole, "cy") - r, 2 * r, 2 * r);
            Assert.All(numbers, number => Assert.False(number.Meets(box), number.Text));
        }
    }

    [Fact]
    public void What_is_added_and_what_is_removed_is_told_apart()
    {
        var unit = new DemoUnit("weir/weir.yaml");
        var look = JointLook.Of(unit.Pick("1", "1", "1", "1"), unit.Unit.Joints[0], unit.Pick("1", "2", "1", "1"));
        var text = Draw(look);
        var plan = Parse(text).Descendants(Svg + "g").Single(group => Class(group) == "plan");

        // What is gone is an outline, and no filled figure at its location comes after it.
        var figures = plan.Elements(Svg + "g").Where(group => Class(group) is "opening" or "ball").ToList();
        foreach (var location in new[] { "31", "32" })
        {
            var gone = figures.FindIndex(group => group.Attribute("data-element")!.Value == $"plate@{location}" && group.Attribute("data-change")!.Value == "removed");
            Assert.True(gone >= 0);
            Assert.All(figures.Skip(gone + 1), group => Assert.Equal("removed", group.Attribute("data-change")!.Value));
        }

        var openings = plan.Descendants(Svg + "g").Where(group => Class(group) == "opening").ToLookup(group => group.Attribute("data-change")!.Value, group => group.Attribute("data-element")!.Value);

        // Plate 2 has a slot from 22 to 23, and wider seats at 31 and 32. The file says so.
        Assert.Equal(["plate@22-23", "plate@31", "plate@32"], openings["added"].Order());
        Assert.Equal(["plate@31", "plate@32"], openings["removed"].Order());
        Assert.Contains("plate@10", openings["kept"]);
        Assert.Contains("added: hole or slot", text, StringComparison.Ordinal);
        Assert.Equal([], look.Tracks.Where(track => track.Change != LookChange.Kept).Select(track => track.Name.ToString()));
    }

    [Fact]
    public void Without_coordinates_it_says_so_and_lays_a_grid()
    {
        var file = Path.Combine(Repository.Root, "tests/Circuits.Tests/Cli/units/swap.yaml");
        var unit = Circuits.Reading.CircuitReader.ReadFile(file).Unit!;
        var text = Draw(JointLook.Of(Assembly.DefaultOf(unit), unit.Joints[0], null));
        Assert.Contains("The file gives no coordinates", text, StringComparison.Ordinal);
        var holes = Parse(text).Descendants(Svg + "circle").Where(circle => Class(circle) == "hole kept" && circle.Parent!.Attribute("data-element") is not null).ToList();
        Assert.Equal(2, holes.Select(hole => Number(hole, "cx")).Distinct().Count());
    }

    [Fact]
    public void A_joint_too_wide_for_the_paper_goes_over_pages_that_cover_all_of_it()
    {
        var drawing = new JointDrawing(Look("firth/firth.yaml", "", "middle"));
        var pages = new JointPages(drawing, PaperSize.A4);
        Assert.Equal(2, pages.Count);
        var shifts = Enumerable.Range(0, pages.Count).Select(page =>
        {
            var text = new StringWriter();
            pages.Write(text, page);

            // Moved onto the page, and before that to the origin.
            var plan = Parse(text.ToString()).Descendants(Svg + "g").Single(group => Class(group) == "plan");
            return new[] { plan, plan.Parent! }.Sum(group => Number(Pair().Match(group.Attribute("transform")!.Value).Groups[1].Value));
        }).ToList();
        Assert.Equal(drawing.Plan.Extent.Left, 10 - shifts[0], 2);
        Assert.True(shifts[0] - shifts[1] < 190, "each page repeats part of its neighbour");
        Assert.True(10 - shifts[1] + 190 >= drawing.Plan.Extent.Right);
    }

    /// <summary>A printed page is 1:1. Source: PDF 1.7, 8.3.2.3: a point is 1/72 in.</summary>
    [Theory]
    [InlineData("a4", 595.3, 841.9)]
    [InlineData("letter", 612, 792)]
    public void The_scale_bar_measures_50_mm_in_the_printed_page(string paper, double width, double height)
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Absent);
        var folder = Directory.CreateTempSubdirectory("circuits-print-").FullName;
        try
        {
            var pages = new JointPages(new JointDrawing(Look("weir/weir.yaml", "1 1 1 1", "upper")), paper == "a4" ? PaperSize.A4 : PaperSize.Letter);
            var file = Path.Combine(folder, "page.svg");
            var text = new StringWriter();
            pages.Write(text, 0);
            File.WriteAllText(file, text.ToString());
            var printed = Browser.Print(file);
            var size = Regex.Match(printed, @"viewBox=""0 0 ([\d.]+) ([\d.]+)""");
            Assert.Equal(width, Number(size.Groups[1].Value), 1.0);
            Assert.Equal(height, Number(size.Groups[2].Value), 1.0);

            // The bar is the only filled rectangle that is 1.2 mm, 3.4 points, high.
            var bars = Box().Matches(printed).Select(match => (Width: Number(match.Groups[3].Value) - Number(match.Groups[1].Value), Height: Number(match.Groups[5].Value) - Number(match.Groups[2].Value)))
                .Where(box => Math.Abs(box.Height - (1.2 * 72 / 25.4)) < 0.1).ToList();
            Assert.Equal(50, Assert.Single(bars).Width / 72 * 25.4, 0.1);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static JointLook Look(string file, string choice, string joint)
    {
        var unit = new DemoUnit(file);
        var assembly = choice.Length == 0 ? Assembly.DefaultOf(unit.Unit) : unit.Pick(choice.Split(' '));
        return JointLook.Of(assembly, unit.Unit.Joints.Single(known => known.Name == joint), null);
    }

    private static string Draw(JointLook look)
    {
        var text = new StringWriter { NewLine = "\n" };
        new JointDrawing(look).Write(text);
        return text.ToString();
    }

    private static XElement Opening(XElement plan, string name) => plan.Descendants(Svg + "g").Single(group => Class(group) == "opening" && group.Attribute("data-element")!.Value == name);

    private static XElement Parse(string text) => XDocument.Parse(text).Root!;

    private static string Class(XElement element) => element.Attribute("class")?.Value ?? "";

    private static double Number(XElement element, string name) => Number(element.Attribute(name)!.Value);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"translate\((-?[\d.]+) (-?[\d.]+)\)")]
    private static partial Regex Pair();

    [GeneratedRegex(@" d=""M ([\d.]+) ([\d.]+) L ([\d.]+) ([\d.]+) L [\d.]+ ([\d.]+) L [\d.]+ [\d.]+ Z")]
    private static partial Regex Box();
}
