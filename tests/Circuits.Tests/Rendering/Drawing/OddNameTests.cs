using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Rendering;
using Circuits.Rendering.Drawing;
using Circuits.Rendering.Drawing.Joints;
using Circuits.Studies.Drawing;
using Xunit;

namespace Circuits.Tests.Rendering.Drawing;

/// <summary>Drawings of units whose names are odd, and of units that are big. Alone, since one of them is timed.</summary>
[Collection(nameof(Cli.WorkingDirectory))]
public class OddNameTests
{
    public static TheoryData<string> Names() =>
    [
        "<script>alert(1)</script>", "a\"b'c", "x]]>y", "&amp;&lt;", "\u05E9\u05DC\u05D5\u05DD \u202E drow", new string('w', 200), "\U0001F527\U0001F6E0 oil", "line\u0007bell\u001B[31m", "\uFFFE\uFFFF", "漢字の通路",
    ];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_name_stays_text(string name)
    {
        var unit = Named(name);
        var views = AssemblyViews.Of(new UnitJudge(unit), Assembly.DefaultOf(unit));
        var circuit = CircuitDrawingTests.Draw(CircuitDrawing.Of(views.Gears, UnitSystem.Si), views.Gears[0]);
        var joint = new StringWriter();
        new JointDrawing(JointLook.Of(views.Solved.Network.Assembly, unit.Joints[0], null)).Write(joint);
        foreach (var text in (string[])[circuit, joint.ToString()])
        {
            var document = XDocument.Parse(text);
            Assert.DoesNotContain(document.Descendants(), element => element.Name.LocalName == "script");
            Assert.DoesNotContain(text, letter => char.IsControl(letter) && letter != '\n');
            Assert.DoesNotContain(text, letter => letter is >= '\u202A' and <= '\u202E' or >= '\u2066' and <= '\u2069');
            Assert.Contains(document.Descendants().SelectMany(element => element.Attributes()), attribute => attribute.Value.Contains(Printable.Of(name).Replace("\uFFFE\uFFFF", "\\uFFFE\\uFFFF", StringComparison.Ordinal), StringComparison.Ordinal));
        }

        var sheet = new DrawnSheet(circuit);
        Assert.Equal([], sheet.Overlaps());
        Assert.Equal([], sheet.Struck());
    }

    /// <summary>Lettering takes no more room than is reckoned for it: in a real browser, with the faces that it has.</summary>
    [Fact]
    public void Lettering_is_no_wider_in_a_browser_than_is_reckoned()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Absent);
        var words = Names().Select(row => DrawnText.Short(row.Data)).Concat(["channel-plate.second-servo", "holds 520 kPa", "WWWWMMMM@@%%", "iiiiillll", "foreign oil enters here", "main-plate@121-122"]).ToList();
        var page = new StringBuilder("<!doctype html><meta charset=utf-8><svg xmlns='http://www.w3.org/2000/svg' width=4000 height=2000>");
        foreach (var word in words)
            page.Append(CultureInfo.InvariantCulture, $"<text x=0 y=20 style=\"font:11px {DrawnText.Family}\">{Markup.Text(word)}</text><text x=0 y=20 style=\"font:bold 11px {DrawnText.Family}\">{Markup.Text(word)}</text>");
        page.Append("</svg><script>document.title=[...document.querySelectorAll('text')].map(t=>t.getComputedTextLength().toFixed(2)).join(' ')</script>");
        var file = Path.Combine(Directory.CreateTempSubdirectory("circuits-letters-").FullName, "page.html");
        File.WriteAllText(file, page.ToString());
        var title = Browser.Open(file).Split("<title>")[1].Split("</title>")[0];
        Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
        var widths = title.Split(' ').Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(2 * words.Count, widths.Count);
        for (var i = 0; i < words.Count; i++)
        {
            Assert.InRange(widths[2 * i], 0.01, DrawnText.Width(words[i], 11));
            Assert.InRange(widths[(2 * i) + 1], 0.01, DrawnText.Width(words[i], 11, bold: true));
        }
    }

    [Fact]
    public void Two_thousand_passages_are_all_drawn()
    {
        var unit = BigUnit.Of(1000);
        var views = AssemblyViews.Of(new UnitJudge(unit), Assembly.DefaultOf(unit));
        var text = CircuitDrawingTests.Draw(CircuitDrawing.Of(views.Gears, UnitSystem.Si), views.Gears[0]);
        Assert.Equal(2000, views.Solved.Network.Nodes.Count(node => node.Kind == NodeKind.Passage));
        Assert.Equal(2000, new DrawnSheet(text).Named("symbol").Count(symbol => symbol.Attribute("data-passage") is not null));
    }

    [Fact]
    public void A_unit_of_next_to_nothing_is_drawn()
    {
        var unit = Read("format: 1\nunit: Bare\ndata: invented\nparts: {body: {kind: casting, passages: {only: {}}}}\ngears: {1: {apply: []}}\n");
        var views = AssemblyViews.Of(new UnitJudge(unit), Assembly.DefaultOf(unit));
        var sheet = new DrawnSheet(CircuitDrawingTests.Draw(CircuitDrawing.Of(views.Gears, UnitSystem.Si), views.Gears[0]));
        Assert.Single(sheet.Named("symbol"));
        Assert.Equal([], sheet.Overlaps());
    }

    /// <summary>A body of passages that branch three at a time, each through the plate to one of the housing.</summary>
    private static Unit Read(string text)
    {
        var read = Circuits.Reading.CircuitReader.ReadText(text, "unit.yaml");
        Assert.NotNull(read.Unit);
        return read.Unit;
    }

    /// <summary>A unit in which everything that may bear such a name does; names that the language refuses are put in past the reader.</summary>
    private static Unit Named(string name)
    {
        const string stand = "stand-in";
        var unit = Read($$"""
            format: 1
            unit: {{stand}}
            data: invented
            joints: {face: {between: [body, housing], sheets: [plate]} }
            pump: {into: body.line}
            parts:
              body: {kind: casting, passages: {line: {}, {{stand}}: {face: 1} }, regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa} }, restrictions: [{between: [line, {{stand}}], hole: 2 mm}]}
              plate: {kind: sheet, openings: [{at: 1, hole: 3 mm}]}
              housing: {kind: casting, passages: {out: {face: 1} } }
            clutches: {c: {at: housing.out, area: 5000 mm2} }
            gears: {1: {apply: [c]} }
            """);
        var body = unit.Parts[0];
        var revision = body.Revisions[0];
        var renamed = revision with
        {
            Passages = [.. revision.Passages.Select(passage => passage.Name == stand ? passage with { Name = name, Circuit = name } : passage)],
            Restrictions = [.. revision.Restrictions.Select(item => item with { B = item.B with { Name = new PassageName("body", name) } })],
        };
        return unit with
        {
            Name = name,
            Parts = [body with { Revisions = [renamed] }, .. unit.Parts.Skip(1)],
            Gears = [.. unit.Gears.Select(gear => gear with { Name = name })],
        };
    }
}
