using System.Text.RegularExpressions;
using Circuits.Cli;
using Circuits.Rendering;
using Xunit;

namespace Circuits.Tests.Cli;

/// <summary>Text that is read out, and text on a narrow terminal: the same facts, for every verb that prints text and every demo unit.</summary>
[Collection(nameof(WorkingDirectory))]
public partial class PlainTests
{
    /// <summary>Marks that mean something by their looks; their meaning is spoken instead.</summary>
    private static readonly HashSet<string> Marks = ["X", ".", "-", ">", "*", "·", "!", "=", "?", "W", "U", "L", "weak", "LOST", "EXTRA", "drag", "trap", "[", "]"];

    /// <summary>Verbs that think for long; the small unit makes them print all that they can, and the others would only keep one waiting.</summary>
    private static readonly string[] Long = ["matrix", "diagnose", "remedy", "air-check", "hazards"];

    private static readonly string[] Units = [.. Directory.GetFiles(Path.Combine(Repository.Root, "circuits"), "*.yaml", SearchOption.AllDirectories)
        .Where(file => Path.GetFileNameWithoutExtension(file) == Path.GetFileName(Path.GetDirectoryName(file))).Order(StringComparer.Ordinal)];

    private static readonly string[][] Lines =
    [
        ["check", "FILE"], ["gears", "FILE"], ["gears", "FILE", "--fit", "MIX", "--gear", "GEAR"], ["trace", "FILE", "--gear", "GEAR", "--of", "CLUTCH"],
        ["what-if", "FILE", "--fit", "MIX"], ["matrix", "FILE", "--fit", "MIX"], ["identify", "FILE"], ["diagnose", "FILE", "--complaint", "no reverse", "--singles", "--plan", "2"],
        ["remedy", "FILE", "--fit", "MIX"], ["pressures", "FILE", "--gear", "GEAR"], ["pressures", "FILE", "--spread", "2"], ["shifts", "FILE", "--shift", "SHIFT"],
        ["size", "FILE", "--shift", "SHIFT", "--clutch", "high", "--want", "fill=80ms", "--at", "plate@13"], ["air-check", "FILE"], ["hazards", "FILE"], ["report", "FILE", "--form", "job"], ["explain"], ["explain", "lost-supply"],
    ];

    public static TheoryData<string, string> Commands()
    {
        var data = new TheoryData<string, string>();
        foreach (var unit in Units)
        {
            var small = Path.GetFileName(unit) == "rill.yaml";
            foreach (var line in Lines.Where(line => small || (line.Contains("FILE") && line[0] != "size" && !Long.Contains(line[0])))) data.Add(Path.GetFileName(unit), string.Join('|', line));
        }

        return data;
    }

    [Fact]
    public void Every_verb_that_prints_text_can_print_it_plainly()
    {
        var verbs = Verbs.For([], new CommonOptions()).Where(verb => verb.Command.Options.OfType<FormatOption>().Any()).ToList();
        Assert.All(verbs, verb => Assert.Contains(verb.Command.Options, option => option.Name == "--plain"));
        Assert.Equal(verbs.Select(verb => verb.Command.Name).Order(StringComparer.Ordinal), Lines.Select(line => line[0]).Distinct().Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void Plain_text_says_everything_and_draws_nothing_and_other_text_fits_eighty_columns(string unit, string line)
    {
        var words = Words(unit, line);
        var plain = Run([.. words, "--plain"], width: 80, colour: true);
        Assert.NotEmpty(plain);
        foreach (var each in plain.TrimEnd('\n').Split('\n'))
        {
            Assert.DoesNotContain(each, letter => letter is >= '\u2500' and <= '\u257F' or '\u001B' or '\t' or '·');
            if (words[0] == "check" || IsExample(words, each)) continue;
            Assert.DoesNotMatch(Drawn(), each);
        }

        if (words[0] != "check") Assert.All(Run(words, width: 80, colour: false).Split('\n').Where(each => !IsExample(words, each)), each => Assert.True(Cells.Of(each) <= 80, each));
        var spoken = Tokens(plain).ToHashSet();
        var wide = Run(words, width: 2000, colour: false);
        Assert.Equal([], Tokens(string.Join('\n', wide.Split('\n').Where(each => !each.StartsWith(". as charted", StringComparison.Ordinal)))).Where(token => !spoken.Contains(token)).Distinct());
    }

    [Fact]
    public void No_progress_is_shown()
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        CommandLine.Run(["matrix", Units[0], "--plain"], new Surroundings(output, error) { ErrorIsTerminal = true });
        Assert.Equal("", error.ToString());
    }

    [Theory]
    [InlineData("gears|FILE|--plain|--format|json", "--plain is a form of text, and --format json asks for another format")]
    [InlineData("report|FILE|--plain", "a page is written as HTML, not as text")]
    [InlineData("report|FILE|--format|text", "a page is written as HTML, not as text")]
    public void What_has_no_plain_form_says_so(string line, string says)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(2, CommandLine.Run(Words("rill.yaml", line), new Surroundings(output, error)));
        Assert.Contains(says, error.ToString());
        Assert.Equal("", output.ToString());
    }

    // A file or a command to copy is written as it is to be typed in.
    private static bool IsExample(string[] words, string line) => words[0] == "explain" || line.TrimStart().StartsWith("circuits ", StringComparison.Ordinal);

    private static string[] Words(string unit, string line)
    {
        var file = Units.Single(each => Path.GetFileName(each) == unit);
        var mix = unit == "firth.yaml" ? "main-plate=2" : "plate=2";
        return [.. line.Split('|').Select(word => word switch { "FILE" => file, "MIX" => mix, "GEAR" => "R", "CLUTCH" => "high", "SHIFT" => "1-2", _ => word })];
    }

    private static string Run(string[] words, int width, bool colour)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var exit = CommandLine.Run(words, new Surroundings(output, error)
        {
            OutIsTerminal = true,
            TerminalWidth = width,
            Variable = name => name switch { "NO_COLOR" when !colour => "1", "LANG" => "en.UTF-8", _ => null },
        });
        Assert.True(exit is 0 or 1, error.ToString());
        return output.ToString();
    }

    private static IEnumerable<string> Tokens(string text) => text.Split([' ', '\n', '─', '│', '├', '└', '─'], StringSplitOptions.RemoveEmptyEntries)
        .Where(word => !Marks.Contains(word) && !word.StartsWith('_')).Select(word => word.TrimEnd(':', ',', '*').TrimStart('*')).Where(word => word.Length > 0);

    // Blanks that set something out, lines made of letters, and marks before an item.
    [GeneratedRegex(@"^ |  |__|--{2,}|\|\||^[-*!=>?·] | $", RegexOptions.CultureInvariant)]
    private static partial Regex Drawn();
}
