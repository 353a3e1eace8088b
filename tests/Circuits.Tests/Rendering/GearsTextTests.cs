using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Rendering;
using Spectre.Console;
using Xunit;

namespace Circuits.Tests.Rendering;

public class GearsTextTests
{
    private static string Page(TextOptions? options = null, bool detailed = false) =>
        GearsText.Of(Samples.Mix(), Samples.Matched(), detailed, options ?? TextOptions.Default);

    [Fact]
    public void The_page_says_what_it_is_about()
    {
        var page = Page();
        Assert.Contains("unit     Sample (data: invented)\n", page);
        Assert.Contains("assembly body 2, plate 1\n", page);
        Assert.Contains("matched  no; nearest: late (it has plate 2)\n", page);
        Assert.Contains("verdict  never-settles in 4; lost in R; unwanted in 3; weak in 2\n", page);
    }

    [Fact]
    public void The_chart_has_a_row_for_each_gear()
    {
        var lines = Page().Split('\n');
        Assert.Contains(lines, line => Words(line) is ["R", "LOST", "X", ".", "lost", "-", "no", ..]);
        Assert.Contains(lines, line => Words(line) is ["N", ".", ".", ".", "as-charted", "-", "as", ..]);
        Assert.Contains(lines, line => Words(line) is ["2*", ".", "weak", ".", "weak", "3.06", "slips", ..]);
        Assert.Contains(lines, line => Words(line) is ["3", "X", "EXTRA", "drag", "unwanted", "-", "tie-up", ..]);
        Assert.Contains(lines, line => Words(line) is ["4", "?", "?", "?", "never-settles", "0.70", "comes", ..]);
    }

    [Fact]
    public void The_legend_explains_the_marks_that_are_used_and_no_others()
    {
        var page = Page();
        Assert.Contains("drag partly on, not charted", page);
        Assert.Contains("* depends on the gear it is reached from", page);
        Assert.DoesNotContain("trap oil shut in", page);
        Assert.Contains("X on, as charted   . off, as charted\n", GearsText.Of(Samples.Matched(), null, false, TextOptions.Default));
    }

    [Fact]
    public void Trapped_oil_has_a_mark_of_its_own_and_lost_outranks_it()
    {
        var gear = Samples.Matched().Gears[0];
        var clutch = gear.Clutches[0] with { State = ClutchState.Trapped };
        Assert.Equal("trap", ClutchMark.Of(gear, clutch).Text);
        Assert.Equal("LOST", ClutchMark.Of(gear, clutch with { Verdict = Verdict.Lost }).Text);
    }

    [Fact]
    public void A_finding_that_several_gears_share_is_said_once()
    {
        var page = Page();
        Assert.Contains("  Gears 3, 4\n    warning open-drain: oil leaves body.drive through body.lever\n", page);
        Assert.Single(page.Split('\n'), line => line.Contains("open-drain", StringComparison.Ordinal));
    }

    [Fact]
    public void What_the_chart_says_already_is_no_finding_of_the_page()
    {
        var felt = Samples.Mix().Findings[0] with { Rule = "tie-up", Message = Phrase.Of($"{GearMention.Before("3")}tie-up"), Tells = Samples.Mix().Gears[3].Drive!.Feel, Gear = "3", Help = null };
        Assert.DoesNotContain("tie-up: ", GearsText.Of(Samples.Mix() with { Findings = [felt] }, null, false, TextOptions.Default));
        Assert.Contains("tie-up: ", GearsText.Of(Samples.Mix() with { Findings = [felt with { Tells = null }] }, null, false, TextOptions.Default));
    }

    [Fact]
    public void A_cross_feed_says_where_it_comes_in_and_what_it_moves()
    {
        var page = Page();
        Assert.Contains("""
            Cross-feeds
              Gears 3, 4
                warning cross-feed: oil of body.line enters body.signal-2 through plate@23
                        (plate 1)
                      it moves valve select: moved (matched: rest)
                      sample.yaml:44:9
            """, page);
        Assert.Single(page.Split('\n'), line => line.Contains("cross-feed:", StringComparison.Ordinal));
    }

    [Fact]
    public void An_assumption_is_said_once_with_its_place()
    {
        var page = Page();
        Assert.Contains("  - assumed 40 mm2 for valve body.select: no area given [sample.yaml:12:9]\n", page);
        Assert.DoesNotContain("assumed-size", page);
    }

    [Fact]
    public void A_sentence_leaves_out_the_gear_that_its_heading_names()
    {
        Leaves($"high is not applied{GearMention.In("R")}: its oil stops", "high is not applied in R: its oil stops", "high is not applied: its oil stops");
        Leaves($"{GearMention.Before("R")}no reverse", "R: no reverse", "no reverse");
        Leaves($"{GearMention.Subject("3-held")}depends on history", "3-held depends on history", "depends on history");
        Leaves($"open to sump by body.lever{GearMention.AtEnd("R")}", "open to sump by body.lever, in R", "open to sump by body.lever");
        Leaves($"was {new Length(2)} (plate@3), in N, 1", "was 2 mm (plate@3), in N, 1", "was 2 mm (plate@3), in N, 1");

        static void Leaves(PhraseBuilder text, string whole, string without)
        {
            var phrase = text.ToPhrase();
            Assert.Equal((whole, without), (PhraseWords.Of(phrase), PhraseWords.Of(phrase, gearIsTold: true)));
        }
    }

    [Fact]
    public void Openings_that_control_otherwise_than_in_the_matched_set_are_compared()
    {
        var page = Page();
        Assert.Contains("  Gears 3, 4\n    - direct applies through 8 mm plate@7; in late 2.1 mm plate@7\n", page);
        Assert.DoesNotContain("direct releases", page);
        Assert.DoesNotContain("Controlled through", GearsText.Of(Samples.Matched(), Samples.Matched(), false, TextOptions.Default));
    }

    [Fact]
    public void Detail_marks_what_stands_otherwise_than_in_the_matched_set()
    {
        var page = Page(detailed: true);
        Assert.Contains(page.Split('\n'), line => Words(line) is ["body.select", "valve", "moved", "*", "rest"]);
        Assert.Contains(page.Split('\n'), line => Words(line) is ["body.two-way", "ball", "closes", "plate@11"]);
        Assert.Contains(page.Split('\n'), line => Words(line) is ["signal-2", "120", "kPa", "neither:", "trapped", "body.signal-2"]);
        Assert.Contains("open to sump: drive", page);
        Assert.Contains("direct gets no oil past plate@22: blanked", page);
        Assert.Contains("valve body.select goes to and fro", page);
        Assert.Contains("coming from N, valve body.select stays at rest", page);
    }

    [Fact]
    public void Nobody_is_sent_on_the_road_with_a_tie_up_or_a_lost_reverse()
    {
        var page = Page(new TextOptions { Width = 200 });
        Assert.Contains("Do not drive to see what happens: in gear 3 a clutch holds that should not.", page);
        Assert.Contains("Do not drive to see what happens: in gears R, 4 drive is lost or uncertain.", page);
        Assert.Contains("licensed technician decide", page);
        Assert.DoesNotContain("Do not drive", GearsText.Of(Samples.Matched(), null, false, TextOptions.Default));
    }

    [Fact]
    public void Without_a_gear_train_the_page_says_what_it_did_not_work_out()
    {
        var report = Samples.Mix() with { Gears = [.. Samples.Mix().Gears.Select(gear => gear with { Drive = null })] };
        var page = GearsText.Of(report, null, false, new TextOptions { Width = 200 });
        Assert.DoesNotContain("the driver feels  ", page);
        Assert.Contains("what the driver feels are not worked out", page);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(80)]
    [InlineData(132)]
    public void No_line_is_wider_than_asked_and_none_ends_in_blanks(int width)
    {
        foreach (var line in Page(new TextOptions { Width = width }, detailed: width >= 80).Split('\n'))
        {
            Assert.True(line.GetCellWidth() <= width, line);
            Assert.Equal(line.TrimEnd(), line);
        }
    }

    [Fact]
    public void Many_clutches_with_long_names_still_fit()
    {
        var clutches = Enumerable.Range(1, 12).Select(i => Samples.Mix().Gears[0].Clutches[0] with { Clutch = $"intermediate-number-{i}" });
        var report = Samples.Mix() with { Gears = [Samples.Mix().Gears[0] with { Clutches = [.. clutches] }] };
        var page = GearsText.Of(report, null, false, TextOptions.Default);
        Assert.All(page.Split('\n'), line => Assert.True(line.GetCellWidth() <= 80, line));
        Assert.Equal(12, page.Split(' ', '\n').Count(word => word == "LOST") - 1); // and one in the legend
    }

    [Theory]
    [InlineData("low-reverse", 11, "low-reverse")]
    [InlineData("low-reverse", 8, "low-|reverse")]
    [InlineData("overdrive", 8, "overd|rive")]
    [InlineData("a-b-overdrive", 5, "a-b-|overd|rive")]
    public void Headings_break_at_hyphens_first(string name, int width, string lines) =>
        Assert.Equal(lines, string.Join('|', ClutchColumns.HeadingLines(name, width)));

    [Fact]
    public void Colour_only_colours()
    {
        var plain = Page();
        var coloured = Page(new TextOptions { Color = true });
        Assert.DoesNotContain('\u001B', plain);
        Assert.Contains('\u001B', coloured);
        Assert.Equal(plain, System.Text.RegularExpressions.Regex.Replace(coloured, "\u001B\\[[0-9;]*m", "").Replace(" \n", "\n"));
    }

    [Fact]
    public void Names_from_a_file_cannot_act_on_the_terminal()
    {
        var report = Samples.Mix() with
        {
            Assumptions = [new Assumption(Phrase.Of($"assumed {"\u001B[2J\u202Egpj.exe\r\n\u009B31m"}"), Place.None)],
            Findings = [Samples.Mix().Findings[0] with { Message = Phrase.Of($"{"\u001B]0;title\u0007"}") }],
        };
        var page = GearsText.Of(report, null, false, TextOptions.Default);
        Assert.DoesNotContain(page, letter => letter != '\n' && (char.IsControl(letter) || letter == '\u202E'));
        Assert.Contains(@"\u001B]0;title\u0007", page);
    }

    private static ImmutableArray<string> Words(string line) => [.. line.Split(' ', StringSplitOptions.RemoveEmptyEntries)];
}
