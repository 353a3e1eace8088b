using System.Globalization;
using System.Reflection;
using Circuits.Findings;
using Circuits.Quantities;
using Circuits.Reading;
using Circuits.Reading.Yaml;
using Xunit;

namespace Circuits.Tests.Reading;

/// <summary>Every number of the language is held to a range of its own, and the schema tells it.</summary>
public sealed class PlausibleRangeTests
{
    private static readonly string Folder = TestFiles.Find("Reading");
    private static readonly string[] Names = ["kitchen-sink.yaml", "parts/body.yaml"];
    private static readonly SchemaFields Fields = Walked();

    /// <summary>Rules that only the cases below show.</summary>
    internal static string[] Rules => ["unlikely-size"];

    /// <summary>The ranges, by the names that the code gives them.</summary>
    private static IReadOnlyList<(string Name, PlausibleRange Range)> Ranges { get; } =
    [
        .. typeof(PlausibleRange).Assembly.GetTypes()
            .Where(type => type.Namespace == typeof(PlausibleRange).Namespace && type.Name is var name && (name.EndsWith("Ranges", StringComparison.Ordinal) || name == nameof(CountLimits)))
            .SelectMany(type => type.GetProperties(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic))
            .Where(property => property.PropertyType == typeof(PlausibleRange))
            .Select(property => ($"{property.DeclaringType!.Name}.{property.Name}", (PlausibleRange)property.GetValue(null)!)),
    ];

    [Fact]
    public void The_file_with_every_element_uses_every_number_of_the_language() =>
        Assert.True(Fields.All.IsSubsetOf(Fields.Used), string.Join("\n", Fields.All.Except(Fields.Used)));

    [Fact]
    public void No_number_may_be_beyond_all_reason()
    {
        var missed = new List<string>();
        foreach (var use in Fields.Uses)
        {
            foreach (var absurd in Absurd(use))
            {
                if (Spoiled(use, absurd) is null) missed.Add($"{use.Field} at {use.Scalar.Place} as {absurd}");
            }
        }

        Assert.True(missed.Count == 0, string.Join("\n", missed));
        Assert.True(Fields.Uses.Count() > 120);
    }

    [Fact]
    public void The_schema_tells_every_range()
    {
        var missing = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var use in Fields.Uses)
        {
            if (Spoiled(use, Absurd(use)[0]) is not { } finding) continue;
            var told = Fields.DescriptionOf(use.Field);
            var held = Ranges.Where(pair => finding.Words().Contains($"from {pair.Range.Text(pair.Range.Possible)}", StringComparison.Ordinal) && finding.Words().EndsWith(pair.Range.Why, StringComparison.Ordinal)).ToList();
            Assert.NotEmpty(held);
            if (!held.Exists(pair => told.Contains(pair.Range.ToString(), StringComparison.Ordinal))) missing.Add($"{use.Field}: {held[0].Range}");
        }

        Assert.True(missing.Count == 0, string.Join("\n", missing));
    }

    [Fact]
    public void Every_range_is_sound()
    {
        Assert.All(Ranges, pair =>
        {
            var range = pair.Range;
            Assert.True(range.Possible.Least < range.Possible.Most);
            Assert.True(double.IsFinite(range.Possible.Least) && double.IsFinite(range.Possible.Most));
            if (range.Usual is { } usual)
            {
                Assert.True(range.Possible.Least <= usual.Least && usual.Least < usual.Most && usual.Most <= range.Possible.Most);
                Assert.NotEqual(range.Possible, usual);
            }

            Assert.Equal(range.Usual is null, range.WhyUsual.Length == 0);
            Assert.NotEmpty(range.Why);
            Assert.NotEmpty(range.Source);
            Assert.False(range.Why.EndsWith('.') || range.WhyUsual.EndsWith('.'), "It is a clause of a message.");
            Assert.False(range.IsPossible(double.NaN) || range.IsPossible(double.PositiveInfinity) || range.IsPossible(double.NegativeInfinity));
        });
        Assert.True(Ranges.Count > 40);
    }

    [Theory]
    [InlineData("hole: 0.083 mm", "hole: 2.0 mm", "unlikely-size restriction body:line~lube: hole is unlikely: '0.083 mm' where 0.3 to 25 mm is usual; #80, the smallest number drill, is 0.343 mm, and orifices run from some 0.5 mm up")]
    [InlineData("hole: 100 mm", "hole: 2.0 mm", "size-out-of-range restriction body:line~lube: hole must be from 0.05 to 60 mm, found '100 mm': no drill makes a smaller hole, and no sheet or casting has room for a larger one")]
    [InlineData("hole: 4 in", "hole: 2.0 mm", "size-out-of-range restriction body:line~lube: hole must be from 0.001969 to 2.362 in, found '4 in': no drill makes a smaller hole, and no sheet or casting has room for a larger one")]
    [InlineData("hole: -2 mm", "hole: 2.0 mm", "size-out-of-range restriction body:line~lube: hole must be more than 0, found '-2 mm'")]
    [InlineData("hole: 2 +- 1.97 mm", "hole: 2.0 mm", "size-out-of-range restriction body:line~lube: hole reaches beyond 0.05 to 60 mm within its tolerance: no drill makes a smaller hole, and no sheet or casting has room for a larger one")]
    [InlineData("spring: 0 N", "spring: 40 N", "")]
    [InlineData("spring: 0.00001 N", "spring: 40 N", "unlikely-size valve body.select: held-by: spring is unlikely: '0.00001 N' where 0.2 to 800 N is usual; springs of spools press with some 5 to 150 N")]
    [InlineData("spring: 20 kN", "spring: 40 N", "size-out-of-range valve body.select: held-by: spring must be from 0 to 10 kN, found '20 kN': no spool has room for a stronger spring")]
    public void A_finding_says_the_number_the_range_and_why(string written, string instead, string expected)
    {
        var text = File.ReadAllText(Path.Combine(Folder, "bad", "ball-in-inches.yaml")).Replace("6.35 in", "6.35 mm", StringComparison.Ordinal);
        var findings = CircuitReader.ReadText(text.Replace(instead, written, StringComparison.Ordinal), "small.yaml").Findings;
        Assert.Equal(expected.Length == 0 ? [] : [expected], findings.Select(finding => $"{finding.Rule} {finding.Words()}"));
        Assert.All(findings, finding => Assert.Equal(text.Split('\n').Index().Single(line => line.Item.Contains(instead, StringComparison.Ordinal)).Index + 1, finding.Place.Line));
    }

    public static TheoryData<string, int, int, string, string> Counts() => new()
    {
        { "gears", 50, 1000, "  g{0}: {{lever: N, apply: []}}\n", "gears:\n" },
        { "clutches", 30, 500, "  c{0}: {{at: cover.clutch}}\n", "clutches:\n" },
        { "taps", 60, 1000, "  t{0}: line\n", "taps:\n" },
        { "shifts", 300, 2000, "  - {{from: D, to: N}}\n", "shifts:\n" },
        { "joint front: sheets", 8, 40, "  s{0}: {{kind: sheet}}\n", "parts:\n" },
    };

    [Theory]
    [MemberData(nameof(Counts))]
    public void Counts_have_a_usual_end_and_a_last_one(string what, int usual, int most, string line, string section)
    {
        Assert.Equal([], Found(usual));
        Assert.Equal(["unlikely-size"], Found(usual + 1));
        Assert.Equal(["unlikely-size"], Found(most));
        Assert.Equal(["size-out-of-range"], Found(most + 1));

        IEnumerable<string> Found(int count)
        {
            var text = File.ReadAllText(Path.Combine(Folder, "bad", "ball-in-inches.yaml")).Replace("6.35 in", "6.35 mm", StringComparison.Ordinal);
            var there = what is "gears" ? 2 : what is "taps" or "shifts" ? 0 : 1;
            var more = Enumerable.Range(0, count - there).ToList();
            if (!text.Contains(section, StringComparison.Ordinal)) text += section;
            text = text.Replace(section, section + string.Concat(more.Select(number => string.Format(CultureInfo.InvariantCulture, line, number))), StringComparison.Ordinal);
            text = what.StartsWith("joint", StringComparison.Ordinal) ? text.Replace("sheets: [plate]", $"sheets: [plate{string.Concat(more.Select(number => $", s{number}"))}]", StringComparison.Ordinal) : text;
            var findings = CircuitReader.ReadText(text, "many.yaml").Findings;
            Assert.All(findings, finding => Assert.StartsWith($"{what} are ", finding.Words(), StringComparison.Ordinal));
            return findings.Select(finding => finding.Rule);
        }
    }

    [Fact]
    public void What_is_unlikely_is_read_all_the_same()
    {
        var text = File.ReadAllText(Path.Combine(Folder, "bad", "ball-in-inches.yaml")).Replace("6.35 in", "20 mm", StringComparison.Ordinal);
        var read = CircuitReader.ReadText(text, "small.yaml");
        Assert.Equal(20, read.Unit!.Parts[0].Revisions[0].Balls[0].Diameter!.Value.Millimetres);
        Assert.Equal(Severity.Warning, Assert.Single(read.Findings).Severity);
    }

    private static SchemaFields Walked()
    {
        var fields = new SchemaFields();
        fields.Walk(Path.Combine(Folder, Names[0]));
        return fields;
    }

    /// <summary>Numbers beyond all reason in the place of one: large, and as much below 0.</summary>
    private static string[] Absurd(SchemaFields.Use use)
    {
        if (use.Kind == "slot") return ["9e15 x 9e15 mm", "1e-15 x 3 mm", "-1 x 3 mm"];
        if (use.Kind is "count" or "number" or "ratio" or "weight" or "cost" or "fraction") return use.Kind == "count" ? ["99999999", "-99999999"] : ["9e15", "-9e15"];
        var unit = QuantityText.Parse(use.Scalar.Text).Unit ?? ToleranceText.Parse(use.Scalar.Text).Size.Unit!;
        var symbol = MeasureUnit.All.First(known => known.Dimension == unit.Dimension).Symbol;
        return [$"9e15 {symbol}", $"-9e15 {symbol}"];
    }

    /// <summary>What is found where a number of the file was replaced; null when it is not that the number is out of range.</summary>
    private static Finding? Spoiled(SchemaFields.Use use, string absurd)
    {
        var folder = Directory.CreateTempSubdirectory("circuits-ranges-").FullName;
        try
        {
            Directory.CreateDirectory(Path.Combine(folder, "parts"));
            foreach (var path in Directory.EnumerateFiles(Path.Combine(Folder, "parts")).Prepend(Path.Combine(Folder, Names[0])))
                File.WriteAllText(Path.Combine(folder, Path.GetRelativePath(Folder, path)), path == use.Scalar.Place.File ? With(path, use.Scalar, absurd) : File.ReadAllText(path));
            return CircuitReader.ReadFile(Path.Combine(folder, Names[0])).Findings.FirstOrDefault(finding =>
                finding.Rule == "size-out-of-range" && (finding.Place.Line, finding.Place.Column) == (use.Scalar.Place.Line, use.Scalar.Place.Column));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string With(string path, YamlScalar scalar, string text)
    {
        var lines = File.ReadAllLines(path);
        var (line, column) = (lines[scalar.Place.Line - 1], scalar.Place.Column - 1);
        var quoted = line[column] is '"' or '\'';
        Assert.StartsWith(scalar.Text, line[(column + (quoted ? 1 : 0))..], StringComparison.Ordinal);
        lines[scalar.Place.Line - 1] = string.Create(CultureInfo.InvariantCulture, $"{line[..column]}{text}{line[(column + scalar.Text.Length + (quoted ? 2 : 0))..]}");
        return string.Join('\n', lines);
    }
}
