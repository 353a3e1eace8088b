using Circuits.Rendering;
using Xunit;

namespace Circuits.Tests.Rendering;

public class GridTests
{
    private static readonly string[] Words = ["R", "low-reverse", "412 kPa", "", new string('w', 30), "漢字の通路", "a few words that wrap", new string('n', 200)];

    /// <summary>Tables of every shape keep within the page, lose nothing, and every band can be read alone.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void A_table_too_wide_is_split_into_bands(int seed)
    {
        var dice = new Random(seed);
        for (var round = 0; round < 40; round++)
        {
            var page = new Page(new TextOptions { Width = dice.Next(40, 100) });
            var grid = Page.Table();
            var columns = dice.Next(1, 14);
            for (var i = 0; i < columns; i++) grid.AddColumn(page.Column($"c{i}", right: dice.Next(3) == 0, wrap: dice.Next(3) == 0));
            for (var row = 0; row < 3; row++)
                grid.AddRow([.. Enumerable.Range(0, columns).Select(i => page.Cell(i == 0 ? $"key{row}" : Words[dice.Next(Words.Length)]))]);
            page.Put(grid, indent: 2);
            var text = page.ToString();
            Assert.All(text.Split('\n'), line => Assert.True(Cells.Of(line) <= page.Options.Width, line));
            foreach (var key in (string[])["key0", "key1", "key2"]) Assert.Equal(Count(text, "c0"), Count(text, key));
            foreach (var letter in "wn漢")
                Assert.Equal(grid.Rows.Sum(row => row.Sum(cell => cell.Text.Count(each => each == letter))), text.Count(each => each == letter));
        }
    }

    private static int Count(string text, string word) => text.Split(word).Length - 1;

    [Fact]
    public void A_table_that_fits_is_one()
    {
        var page = new Page(TextOptions.Default);
        var grid = Page.Table();
        foreach (var heading in (string[])["gear", "pump", "line"]) grid.AddColumn(page.Column(heading, right: heading != "gear"));
        grid.AddRow(page.Cell("R"), page.Cell("4.2"), page.Cell("772"));
        page.Put(grid);
        Assert.Equal("gear  pump  line\nR      4.2   772\n", page.ToString());
    }

    [Fact]
    public void Plain_rows_are_records_that_name_every_cell()
    {
        var page = new Page(new TextOptions { Plain = true, Color = true });
        var grid = Page.Table();
        foreach (var heading in (string[])["shift", "clutch", "holds"]) grid.AddColumn(page.Column(heading));
        grid.AddRow(page.Cell("1-2"), page.Cell("high", Page.Bad), page.Cell("-"));
        grid.AddRow(page.Cell(""), page.Cell("X", spoken: "on,  as charted"), page.Cell(""));
        page.Put(grid, indent: 4);
        Assert.Equal("shift: 1-2\nclutch: high\nholds: none\n\nshift: 1-2\nclutch: on, as charted\n", page.ToString());
    }

    [Fact]
    public void A_plain_tree_is_numbered_and_plain_marks_are_words()
    {
        var page = new Page(new TextOptions { Plain = true });
        var root = new Outline(("root", Page.Plain));
        var first = new Outline(("first", Page.Plain));
        first.Below.Add(new Outline(("leaf", Page.Plain)));
        root.Below.AddRange([first, new Outline(("second", Page.Plain))]);
        page.Put(root, indent: 2);
        page.Item("[ ]", "no hiss");
        page.Item("changes ", "one", indent: 0);
        page.Item("        ", "another", indent: 0);
        page.Item("-", "an item");
        page.Flow(["x 1", "y 2"], Page.Plain);
        Assert.Equal("1 root\n1.1 first\n1.1.1 leaf\n1.2 second\nto tick: no hiss\nchanges: one\nchanges: another\nan item\nx 1\ny 2\n", page.ToString());
    }

    [Fact]
    public void A_mark_as_long_as_a_sentence_leaves_room_for_its_text()
    {
        var page = new Page(TextOptions.Default);
        page.Item(new string('w', 200) + ":", "fed through a hole");
        Assert.All(page.ToString().Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.True(page.ToString().Split('\n').Length < 6, page.ToString());
    }
}
