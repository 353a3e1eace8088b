using System.Text.Json;
using Circuits.Model;
using Circuits.Reading;
using Json.Schema;
using Xunit;

namespace Circuits.Tests.Reading;

/// <summary>Change sets: files and words of the command line.</summary>
public class ChangeSetTests
{
    private const string Everything = """
        changes: 1
        job: slams into third
        from: {body: 1, plate: 2}
        fit: {plate: 3}
        hole: {plate@21: 2.0 mm, 7: "#45"}
        plug: [22, plate@6-7]
        drop: two-way
        ball: {either@11+12: 6.35 mm}
        stick: {select: midway}
        leak: {body.line~exhaust: 0.3 mm2}
        solenoid: {two: stuck-low}
        """;

    /// <summary>Rules that only change sets can break; the cases below show them.</summary>
    internal static string[] Rules => ["incomplete-change"];

    private static string Line(Findings.Finding finding) => $"{finding.Place} {finding.Rule}: {finding.Words()}";

    [Fact]
    public void Every_kind_of_change_is_read_in_the_order_of_the_file()
    {
        var read = ChangeSetReader.ReadText(Everything, "job.yaml");
        Assert.Empty(read.Findings.Select(Line));
        var set = read.Set!;
        Assert.Equal("slams into third", set.Job);
        Assert.Equal(["body 1", "plate 2"], set.From.Cast<ChangeRequest.Fit>().Select(fit => $"{fit.Part} {fit.Revision}"));
        Assert.Equal(
            ["Fit", "Hole", "Hole", "Plug", "Plug", "Drop", "Ball", "Stick", "Leak", "Solenoid"], set.Changes.Select(change => change.GetType().Name));
        Assert.Equal("job.yaml:5:8", set.Changes[1].Place.ToString());
        var drill = Assert.IsType<ChangeRequest.Hole>(set.Changes[2]);
        Assert.Equal(("7", "#45", 2.0828), (drill.Location, drill.Size.Text, Math.Round(drill.Size.Diameter.Millimetres, 4)));
    }

    [Fact]
    public void The_schema_knows_what_the_reader_knows()
    {
        var schema = JsonSchema.FromText(LanguageSchema.ChangeSet, new BuildOptions { SchemaRegistry = new SchemaRegistry() });
        Assert.True(Valid(Everything));
        Assert.True(Valid("changes: 1\nfrom: late\nfit: late\n"));
        Assert.True(Valid("changes: 1\neach: {one: {plug: [22]}, two: {from: late, drop: a}}\n"));
        Assert.False(Valid("changes: 1\neach: {one: {plugs: [22]}}\n"));
        Assert.False(Valid("changes: 1\neach: {one: {plug: [22]}}\ndrop: a\n"));
        Assert.False(Valid("plug: [22]\n"));
        Assert.False(Valid("changes: 1\nplugs: [22]\n"));
        Assert.False(Valid("changes: 1\nstick: {select: up}\n"));

        bool Valid(string text) => schema.Evaluate(JsonDocument.Parse(YamlAsJson.Read(text)!.ToJsonString()).RootElement).IsValid;
    }

    [Theory]
    [InlineData("plug: [22]\n", "j:1:1 missing-key: The file lacks the key changes")]
    [InlineData("changes: 2\n", "j:1:10 unsupported-format: This file has changes '2'; this program reads version 1 of change sets")]
    [InlineData("changes: 1\nplugs: [22]\n", "j:2:1 unknown-key: The file has no key 'plugs'")]
    [InlineData("changes: 1\nplug: {22: 1}\n", "j:2:7 wrong-type: plug must be a name, found a mapping")]
    [InlineData("changes: 1\nhole: [22]\n", "j:2:7 wrong-type: hole must be keys with values, found a list of 1")]
    [InlineData("changes: 1\nhole: {22: 2.0}\n", "j:2:12 number-without-unit: hole 22 is a number without a unit: 2.0")]
    [InlineData("changes: 1\nhole: {22: 2 kPa}\n", "j:2:12 wrong-dimension: hole 22 must be a length, found a pressure (2 kPa)")]
    [InlineData("changes: 1\nhole: {22: -1 mm}\n", "j:2:12 size-out-of-range: hole 22 must be more than 0, found '-1 mm'")]
    [InlineData("changes: 1\nleak: {line: 1 mm2}\n", "j:2:8 incomplete-change: A leak joins two passages, found 'line'")]
    [InlineData("changes: 1\nleak: {a~b: 1 mm}\n", "j:2:13 wrong-dimension: leak a~b must be an area, found a length (1 mm)")]
    [InlineData("changes: 1\nball: {a: }\n", "j:2:11 empty-value: ball: a has no value; expected a value")]
    [InlineData("changes: 1\ndrop: [a, [b]]\n", "j:2:11 wrong-type: drop must be a name, found a list of 1")]
    [InlineData("changes: 1\neach: {one: {drop: a}}\n", "j:2:7 wrong-type: this file holds many change sets, where one is expected")]
    [InlineData("changes: 1\nplug: [1]\nplug: [2]\n", "j:3:1 duplicate-key: Key 'plug' stands here and in line 2")]
    public void A_fault_is_told_at_its_place(string text, string expected)
    {
        var read = ChangeSetReader.ReadText(text, "j");
        Assert.Null(read.Set);
        Assert.Equal(expected, Line(Assert.Single(read.Findings)));
    }

    [Theory]
    [InlineData("hole", "21", "--hole 21 incomplete-change: --hole takes a name and a value, found '21'")]
    [InlineData("hole", "21=", "--hole 21= incomplete-change: --hole takes a name and a value, found '21='")]
    [InlineData("hole", "=2mm", "--hole =2mm incomplete-change: --hole takes a name and a value, found '=2mm'")]
    [InlineData("plug", "21=2mm", "--plug 21=2mm incomplete-change: --plug takes a name alone, found '21=2mm'")]
    [InlineData("leak", "a=0.3mm2", "--leak a=0.3mm2 incomplete-change: A leak joins two passages, found 'a'")]
    [InlineData("hole", "21=2", "--hole 21=2 number-without-unit: hole 21 is a number without a unit: 2")]
    public void A_fault_in_words_names_the_option(string kind, string word, string expected) =>
        Assert.Equal(expected, Line(Assert.Single(ChangeWords.Read([(kind, $"--{kind}", word)]).Findings)));

    [Fact]
    public void Many_sets_are_read_by_name_and_every_fault_of_any_is_told()
    {
        var folder = Directory.CreateTempSubdirectory("circuits-each-").FullName;
        try
        {
            var path = Path.Combine(folder, "jobs.yaml");
            File.WriteAllText(path, "changes: 1\neach:\n  first: {drop: a, from: late}\n  second: {hole: {1: 2 mm}}\n");
            var (sets, findings) = ChangeSetReader.ReadEach(path);
            Assert.Empty(findings);
            Assert.Equal(["first 1 1", "second 1 0"], sets.Select(pair => $"{pair.Key} {pair.Value.Changes.Length} {pair.Value.From.Length}"));
            File.WriteAllText(path, "changes: 1\neach:\n  first: {drops: a}\n  second: {hole: {1: 2 kPa}}\nplug: [1]\n");
            (sets, findings) = ChangeSetReader.ReadEach(path);
            Assert.True(sets.IsDefault);
            Assert.Equal(["unknown-key 3:11", "wrong-dimension 4:22", "unknown-key 5:1"], findings.Select(finding => $"{finding.Rule} {finding.Place.Line}:{finding.Place.Column}"));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Junk_never_throws()
    {
        foreach (var text in (string[])["", "\0", "[", "changes: &a [*a]", "changes: 1\nhole: {? [1] : 2}", "- 1", new string('[', 5000)])
            Assert.NotEmpty(ChangeSetReader.ReadText(text, "junk.yaml").Findings);
    }
}
