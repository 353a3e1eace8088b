using Circuits.Findings;
using Circuits.Quantities;
using Circuits.Rendering;
using Xunit;

namespace Circuits.Tests.Rendering;

public class TextPiecesTests
{
    [Fact]
    public void A_diagnostic_is_one_line_that_an_editor_can_read_and_indented_help()
    {
        var text = FindingText.Of(Samples.Mix().Findings[0], "late, gear R");
        Assert.Equal(
            "sample.yaml:41:9: error lost-supply: clutch direct gets no oil: plate@22 is blanked [late, gear R]\n"
            + "  help: Fit plate 2, or open location 22 with 2.1 mm.\n"
            + "  sample.yaml:60:9: plate 2 has the hole\n", text);
    }

    [Fact]
    public void A_diagnostic_without_a_place_has_no_colon_to_begin_with() =>
        Assert.Equal("note r: m\n", FindingText.Of(new Finding("r", Severity.Note, Phrase.Of($"m"), Place.None)));

    [Fact]
    public void What_the_file_says_is_told_as_it_stands_there()
    {
        var finding = new Finding("number-without-unit", Severity.Error, Phrase.Of($"{"hole 3 mm"} of {new Length(3)}"), Place.None) { Help = "Write 3 mm." };
        Assert.Contains("hole 3 mm of 0.1181 in\n  help: Write 3 mm.\n", FindingText.Of(finding, units: UnitSystem.Shop));
    }

    [Theory]
    [InlineData("plain ascii, ümlaut, 漢字, 🙂", "plain ascii, ümlaut, 漢字, 🙂")]
    [InlineData("\u001B[31m", @"\u001B[31m")]
    [InlineData("a\tb\nc", @"a\u0009b\u000Ac")]
    [InlineData("\u202Eevil\u200B", @"\u202Eevil\u200B")]
    [InlineData("\u2028", @"\u2028")]
    [InlineData("\U000E0041x", @"\uDB40\uDC41x")]
    public void Characters_that_act_are_shown_as_escapes(string text, string shown) => Assert.Equal(shown, Printable.Of(text));

    [Fact]
    public void Half_a_character_is_shown_as_an_escape() => Assert.Equal(@"\uD800x\uDC00", Printable.Of("\uD800x\uDC00"));

    // 1 psi = 6.894757 kPa: NIST SP 811, appendix B.8 (from memory).
    [Fact]
    public void A_psi_is_what_the_standards_say() => Assert.Equal(1, Measures.Value(new Quantity(Dimension.Pressure, 6.894757), UnitSystem.Shop), 6);

    [Fact]
    public void A_trace_is_a_tree_with_the_place_of_every_fact()
    {
        var text = TraceText.Of(Samples.Mixed, ["late"], [Samples.Trace()], TextOptions.Default);
        Assert.EndsWith(
            """
            direct in gear R
            from supply
              clutch direct has no supply [sample.yaml:70:9]
              ├── case.direct is fed through plate@22 alone [sample.yaml:22:9]
              │   ├── plate@22 is blanked: plate 1 has metal there, over a passage that its
              │   │   mate opens [sample.yaml:41:9]
              │   └── the ball body.two-way would let oil pass
              └── no valve joins it
            to sump
              case.direct is open to sump through body.select [sample.yaml:30:9]

            """, text, StringComparison.Ordinal);
        Assert.DoesNotContain(
            TraceText.Of(Samples.Mixed, ["late"], [Samples.Trace()], new TextOptions { Unicode = false }), letter => letter > 126);
    }

    [Fact]
    public void A_rule_is_told_in_full_and_its_example_is_not_wrapped()
    {
        var example = "line one\n    indented " + new string('x', 100);
        var rule = new Rule("lost-supply", Severity.Error, "A charted clutch gets no oil.", "No drive.", example, "Fit the right plate.");
        var text = RulesText.Of(rule, TextOptions.Default);
        Assert.Contains("lost-supply   error\n\nA charted clutch gets no oil.\n", text);
        Assert.Contains("  line one\n      indented " + new string('x', 100) + "\n", text);
        Assert.Contains("To mend it\n  Fit the right plate.\n", text);
    }

    [Fact]
    public void A_checked_file_is_one_line_of_counts_then_its_findings()
    {
        var mix = Samples.Mix();
        var finding = mix.Findings[0] with { Assembly = Samples.Late.Choice };
        var text = CheckText.Of([new CheckedFile("sample.yaml", Samples.Unit, [Samples.Matched(), mix], 2, 3, [finding])], UnitSystem.Si);
        Assert.StartsWith("sample.yaml: NOT OK: 2 matched sets in 5 gears, 2 of 3 expectations held, 1 error\n"
            + "sample.yaml:41:9: error lost-supply: clutch direct gets no oil: plate@22 is blanked [late, gear R]\n", text);

        var mixed = finding with { Assembly = Samples.Mixed.Choice };
        Assert.Contains("[body=2, plate=1, gear R]", CheckText.Of([new CheckedFile("s", Samples.Unit, [], 0, 0, [mixed])], UnitSystem.Si));
    }

    [Fact]
    public void Several_checked_files_end_with_a_total() => Assert.EndsWith(
        "2 files: 1 ok, 1 not ok\n", CheckText.Of(
            [
                new CheckedFile("a", Samples.Unit, [Samples.Matched()], 0, 0, []),
                new CheckedFile("b", null, [], 0, 0, [new Finding("empty-file", Severity.Error, Phrase.Of($"nothing there"), new Place("b", 0, 0))]),
            ], UnitSystem.Si));
}
