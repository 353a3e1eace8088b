using System.Globalization;
using System.Xml.Linq;
using Circuits.Cli;
using Circuits.Rendering;
using Circuits.Rendering.Drawing;
using Circuits.Rendering.Plots;
using OxyPlot;
using Xunit;

namespace Circuits.Tests.Rendering;

/// <summary>Plots, as the command line writes them.</summary>
public sealed class PlotTests : IDisposable
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private readonly string folder = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("rill", "shifts")]
    [InlineData("weir", "shifts --with matched")]
    [InlineData("firth", "shifts --fit last,lower-plate=1 --with matched")]
    [InlineData("rill", "matrix")]
    [InlineData("weir", "matrix")]
    [InlineData("rill", "size --at plate@13 --shift 1-2 --want fill=200ms")]
    [InlineData("rill", "size --at plate@13 --shift 1-2 --want fill=1ms")]
    public void TextStaysWithinItsSheetAndNoTwoTextsMeet(string unit, string words)
    {
        var picture = Draw(unit, words, "plot.svg");
        var root = XDocument.Parse(picture).Root!;
        Assert.All(root.Elements(Svg + "title").Concat(root.Elements(Svg + "desc")), text => Assert.NotEmpty(text.Value));
        Assert.Contains("data: invented", picture, StringComparison.Ordinal);
        var width = Number(root, "width");
        foreach (var sheet in root.Elements(Svg + "g"))
        {
            var texts = sheet.Descendants(Svg + "text").Select(text => (text.Value, Box: Box(text))).ToList();
            Assert.NotEmpty(texts);
            foreach (var (value, box) in texts) Assert.True(box.Left >= -0.5 && box.Right <= width + 0.5 && box.Top >= -0.5, $"'{value}' leaves the sheet");
            foreach (var text in sheet.Descendants(Svg + "text"))
            {
                // A viewer's own face, which a test of circuit drawings holds to this width.
                Assert.True(DrawnText.Width(text.Value, Number(text, "font-size"), text.Attribute("font-weight") is not null) <= width, $"'{text.Value}' may leave the sheet in a viewer's face");
                foreach (var clip in text.Ancestors().Select(group => group.Attribute("clip-path")?.Value).OfType<string>())
                {
                    var rect = root.Descendants(Svg + "clipPath").Single(path => clip == $"url(#{path.Attribute("id")!.Value})").Elements().Single();
                    var (box, left, top) = (Box(text), Number(rect, "x"), Number(rect, "y"));
                    Assert.True(box.Left >= left - 1 && box.Right <= left + Number(rect, "width") + 1 && box.Top >= top - 1 && box.Bottom <= top + Number(rect, "height") + 1, $"'{text.Value}' is clipped away");
                }
            }

            for (var i = 0; i < texts.Count; i++)
            {
                for (var k = 0; k < i; k++)
                    Assert.False(Meet(texts[i].Box, texts[k].Box), $"'{texts[i].Value}' lies on '{texts[k].Value}'");
            }
        }
    }

    [Fact]
    public void TheMomentsOfAShiftAreThoseOfItsReport()
    {
        var (page, picture) = (Path.Combine(folder, "page.txt"), Draw("rill", "shifts --shift 1-2 -o " + Path.Combine(folder, "page.txt"), "plot.svg"));
        var row = File.ReadAllLines(page).First(line => line.StartsWith("1-2 ", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("high", row[1]);
        Assert.Contains($">high touches {row[2]} ms<", picture, StringComparison.Ordinal);
        Assert.Contains($">2 holds {row[4]} ms<", picture, StringComparison.Ordinal);
    }

    [Fact]
    public void TheSameCommandGivesTheSameBytes()
    {
        foreach (var words in new[] { "shifts --shift 1-2", "matrix --threads 1", "matrix --threads 3" })
        {
            Assert.Equal(Draw("rill", words, "a.svg"), Draw("rill", words, "b.svg"));
        }

        Assert.Equal(Draw("rill", "matrix --threads 1", "1.svg"), Draw("rill", "matrix --threads 3", "2.svg"));
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("]]> & \"quoted\" 'twice'")]
    [InlineData("\u202Etfel ot thgir\u202C \u05E9\u05DC\u05D5\u05DD")]
    [InlineData("\u001B[31mred\u0007 \uFFFE")]
    [InlineData("\U0001F527\u200D\U0001F6E0 \u4E2D\u6587 e\u0301")]
    public void NamesStayText(string name)
    {
        var text = Markup.Text(name);
        var read = XDocument.Parse($"<text a=\"{text}\">{text}</text>").Root!;
        Assert.Empty(read.Elements());
        Assert.Equal(read.Value, read.Attribute("a")!.Value);
        Assert.DoesNotContain(read.Value, letter => char.IsControl(letter) || letter is '\u202E' or '\u202C');
        if (!name.Contains('\u001B') && !name.Contains('\u202E') && !name.Contains('\u200D')) Assert.Equal(name, read.Value);
    }

    [Fact]
    public void LongNamesAreShortened()
    {
        var fitted = Letters.Fit(new string('w', 200), 12, 100);
        Assert.EndsWith("...", fitted, StringComparison.Ordinal);
        Assert.InRange(Letters.Width(fitted) * 12, 80, 100);
    }

    [Theory]
    [InlineData("plot.png", "plot.png does not end in .svg")]
    [InlineData("plot.gif", "plot.gif does not end in .svg")]
    [InlineData("plot", "plot does not end in .svg")]
    [InlineData("circuit", "this command reads it")]
    public void OtherFilesAreRefused(string name, string why)
    {
        var copy = Path.Combine(folder, "unit.svg");
        File.Copy(Path.Combine(Repository.Root, "circuits/rill/rill.yaml"), copy);
        using var error = new StringWriter();
        var path = name == "circuit" ? copy : Path.Combine(folder, name);
        Assert.Equal(2, CommandLine.Run(["shifts", copy, "--shift", "1-2", "--plot", path], new Surroundings(TextWriter.Null, error)));
        Assert.Contains(why, error.ToString(), StringComparison.Ordinal);
        Assert.Equal(File.ReadAllText(Path.Combine(Repository.Root, "circuits/rill/rill.yaml")), File.ReadAllText(copy));
    }

    /// <summary>
    /// Colours stay apart for people who lack one kind of cone: Vienot, Brettel and Mollon (1999) for red and green, coefficients from memory; in grey
    /// for everybody else. Colours that come close differ by their dashes.
    /// </summary>
    [Fact]
    public void TheFirstLinesStayApartWithoutRedOrGreen()
    {
        foreach (var see in new Func<OxyColor, (double, double, double)>[] { Protan, Deutan })
        {
            for (var i = 0; i < 4; i++)
            {
                for (var k = 0; k < i; k++) Assert.True(Apart(see(PlotColors.Lines[i]), see(PlotColors.Lines[k])) > 0.1, $"{i} and {k}");
            }
        }

        Assert.All(PlotColors.Lines, color => Assert.True(1.05 / (Luminance(color) + 0.05) > 3, "too faint on white"));
        Assert.Equal(PlotColors.Dashes.Length, PlotColors.Dashes.Select(dash => string.Join(' ', dash)).Distinct().Count());
    }

    private string Draw(string unit, string words, string name)
    {
        var path = Path.Combine(folder, name);
        var split = words.Split(' ');
        using var error = new StringWriter();
        var exit = CommandLine.Run([split[0], Path.Combine(Repository.Root, $"circuits/{unit}/{unit}.yaml"), .. split[1..], "--plot", path], new Surroundings(TextWriter.Null, error));
        Assert.True(exit < 2, error.ToString());
        return File.ReadAllText(path);
    }

    private static double Number(XElement element, string name) => double.Parse((string)element.Attribute(name)!, CultureInfo.InvariantCulture);

    private static (double Left, double Top, double Right, double Bottom) Box(XElement text)
    {
        var size = Number(text, "font-size");
        var width = Letters.Width(text.Value) * size;
        var from = (string?)text.Attribute("text-anchor") switch { "middle" => -width / 2, "end" => -width, _ => 0 };
        if ((string?)text.Attribute("transform") is { } transform)
        {
            var numbers = transform.Split('(', ')', ' ').Where(word => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out _))
                .Select(word => double.Parse(word, CultureInfo.InvariantCulture)).ToList();
            // Only axis titles are turned, by a quarter to the left.
            Assert.Equal(-90, numbers[2]);
            var (x, y, down) = (numbers[0], numbers[1], Number(text, "y"));
            return (x + down - (0.72 * size), y - from - width, x + down + (0.2 * size), y - from);
        }

        var (left, line) = (Number(text, "x") + from, Number(text, "y"));
        return (left, line - (0.72 * size), left + width, line + (0.2 * size));
    }

    private static bool Meet((double Left, double Top, double Right, double Bottom) a, (double Left, double Top, double Right, double Bottom) b) =>
        a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;

    private static (double, double, double) Protan(OxyColor color)
    {
        var (r, g, b) = Linear(color);
        return ((0.11238 * r) + (0.88762 * g), (0.11238 * r) + (0.88762 * g), (0.00401 * r) - (0.00401 * g) + b);
    }

    private static (double, double, double) Deutan(OxyColor color)
    {
        var (r, g, b) = Linear(color);
        return ((0.29275 * r) + (0.70725 * g), (0.29275 * r) + (0.70725 * g), (-0.02234 * r) + (0.02234 * g) + b);
    }

    private static double Luminance(OxyColor color)
    {
        var (r, g, b) = Linear(color);
        return (0.2126 * r) + (0.7152 * g) + (0.0722 * b);
    }

    private static (double R, double G, double B) Linear(OxyColor color) => (Linear(color.R), Linear(color.G), Linear(color.B));

    private static double Linear(byte value) => value / 255.0 <= 0.04045 ? value / 255.0 / 12.92 : Math.Pow(((value / 255.0) + 0.055) / 1.055, 2.4);

    private static double Apart((double R, double G, double B) a, (double R, double G, double B) b)
    {
        double Seen(double x, double y) => Math.Cbrt(Math.Max(x, 0)) - Math.Cbrt(Math.Max(y, 0));
        return Math.Sqrt(Math.Pow(Seen(a.R, b.R), 2) + Math.Pow(Seen(a.G, b.G), 2) + Math.Pow(Seen(a.B, b.B), 2));
    }
}
