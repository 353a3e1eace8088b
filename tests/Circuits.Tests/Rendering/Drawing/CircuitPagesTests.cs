using System.Text.RegularExpressions;
using System.Xml.Linq;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Rendering.Drawing;
using Circuits.Rendering.Drawing.Paper;
using Circuits.Studies.Drawing;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Rendering.Drawing;

/// <summary>Circuits on paper, read back from their pages.</summary>
public partial class CircuitPagesTests
{
    private const double Point = 25.4 / 72;

    [Theory]
    [InlineData("rill/rill.yaml", "a4")]
    [InlineData("weir/weir.yaml", "a4")]
    [InlineData("weir/weir.yaml", "letter")]
    [InlineData("firth/firth.yaml", "a4")]
    [InlineData("firth/firth.yaml", "letter")]
    public void Lettering_can_be_read_and_every_piece_of_it_is_whole_on_one_page(string file, string paper)
    {
        var unit = new DemoUnit(file);
        var views = AssemblyViews.Of(unit.Judge, Assembly.DefaultOf(unit.Unit));
        var drawing = CircuitDrawing.Of(views.Gears, UnitSystem.Si);
        var view = views.Gears[^1];
        var size = PaperSize.All.Single(known => known.Word == paper);
        var pages = new CircuitPages(drawing, view, size);
        var windows = Enumerable.Range(0, pages.Count).Select(page => Window(Page(pages, page), size)).ToList();

        var scale = Assert.Single(windows.Select(window => window.Scale).Distinct());
        Assert.InRange(11 * scale / Point, 5.999, 10.001);
        var whole = new DrawnSheet(CircuitDrawingTests.Draw(drawing, view));
        Assert.NotEmpty(whole.Letters);
        foreach (var letters in whole.Letters.Where(letters => letters.Width < 300))
        {
            Assert.Contains(windows, window => window.Left <= letters.X && letters.X + letters.Width <= window.Right && window.Top <= letters.Y && letters.Y + letters.Height <= window.Bottom);
        }

        // Lines may go over the edge, but nothing of the drawing is on no page.
        var (width, height) = (DrawnSheet.Number(whole.Root.Attribute("width")), DrawnSheet.Number(whole.Root.Attribute("height")));
        for (var x = 1.0; x < width; x += 7)
        {
            for (var y = 1.0; y < height; y += 7) Assert.Contains(windows, window => window.Left <= x && x <= window.Right && window.Top <= y && y <= window.Bottom);
        }
    }

    [Fact]
    public void Pages_are_told_apart_and_what_fits_on_one_has_no_number()
    {
        var unit = new DemoUnit("weir/weir.yaml");
        var views = AssemblyViews.Of(unit.Judge, Assembly.DefaultOf(unit.Unit));
        var pages = new CircuitPages(CircuitDrawing.Of(views.Gears, UnitSystem.Si), views.Gears[0], PaperSize.A4);
        Assert.True(pages.Count > 1);
        var titles = Enumerable.Range(0, pages.Count).Select(page => Page(pages, page).Root!.Elements().First().Value).ToList();
        Assert.Equal(Enumerable.Range(1, pages.Count).Select(page => FormattableString.Invariant($"page {page} of {pages.Count}")), titles.Select(title => title[(title.LastIndexOf(", ", StringComparison.Ordinal) + 2)..]));

        var one = new CircuitPages(CircuitDrawing.Of(views.Gears, UnitSystem.Si), views.Gears[0], new PaperSize("poster", 2000, 3000));
        Assert.Equal(1, one.Count);
        Assert.DoesNotContain("page", Page(one, 0).Root!.Elements().First().Value, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(100, 100, 1)]
    [InlineData(100.5, 100, 2)]
    [InlineData(190, 100, 2)]
    [InlineData(191, 100, 3)]
    [InlineData(191, 190, 6)]
    public void Pages_are_as_few_as_the_shared_strips_allow(double width, double height, int count) =>
        Assert.Equal(count, Paging.Of(100, 100, width, height).Count);

    [Fact]
    public void What_would_be_cut_begins_the_next_page()
    {
        var paging = Paging.Of(100, 100, 165, 50, [(70, 0, 40, 10)]);
        Assert.Equal((70, 0), paging.Corner(1));
        Assert.Equal(Enumerable.Repeat(85.0, 2), paging.Crosses().Select(cross => cross.X));

        // What no page could hold well is cut like everything else.
        Assert.Equal((90, 0), Paging.Of(100, 100, 165, 50, [(20, 0, 90, 10)]).Corner(1));
    }

    private static XDocument Page(CircuitPages pages, int page)
    {
        var text = new StringWriter { NewLine = "\n" };
        pages.Write(text, page);
        return XDocument.Parse(text.ToString());
    }

    /// <summary>What a page shows, in the drawing's own units.</summary>
    private static (double Left, double Top, double Right, double Bottom, double Scale) Window(XDocument page, PaperSize paper)
    {
        var root = page.Root!;
        var size = new[] { root.Attribute("width")!.Value, root.Attribute("height")!.Value }.Select(text => text.Replace("mm", "", StringComparison.Ordinal)).Select(text => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(new[] { paper.Width, paper.Height }, size.Order());
        var clip = page.Descendants().Single(element => element.Name.LocalName == "clipPath").Elements().Single();
        var whole = page.Descendants().Single(element => element.Attribute("class")?.Value == "whole");
        var scale = Numbers(whole.Attribute("transform")!.Value)[0];
        var shift = Numbers(whole.Parent!.Attribute("transform")!.Value);
        var (left, top) = ((DrawnSheet.Number(clip.Attribute("x")) - shift[0]) / scale, (DrawnSheet.Number(clip.Attribute("y")) - shift[1]) / scale);
        return (left - 0.1, top - 0.1, left + (DrawnSheet.Number(clip.Attribute("width")) / scale) + 0.1, top + (DrawnSheet.Number(clip.Attribute("height")) / scale) + 0.1, scale);
    }

    private static List<double> Numbers(string text) => [.. Number().Matches(text).Select(match => double.Parse(match.Value, System.Globalization.CultureInfo.InvariantCulture))];

    [GeneratedRegex(@"-?[\d.]+")]
    private static partial Regex Number();
}
