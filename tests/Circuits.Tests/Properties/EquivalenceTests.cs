using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Xunit;

namespace Circuits.Tests.Properties;

/// <summary>Ways to say the same unit otherwise. None may change what is said of it.</summary>
public sealed partial class EquivalenceTests
{
    /// <summary>Random units a property; <c>CIRCUITS_PROPERTY_RUNS</c> multiplies it.</summary>
    private const int Units = 60;

    /// <summary>Assemblies that are compared of each unit.</summary>
    private const int Assemblies = 4;

    [Fact]
    public void Other_names_change_nothing() => Hold(unit =>
        new Saying(Renamed(SpecText.Of(unit)), name => Renamed(name), name => name));

    [Fact]
    public void Another_order_changes_nothing() => Hold(unit => new Saying(SpecText.Of(Reordering.Of(unit)), name => name, name => name));

    [Fact]
    public void A_revision_written_as_what_differs_is_the_revision_written_out() => Hold(unit =>
        new Saying(SpecText.Of(unit, basedOn: true), name => name, name => name));

    [Fact]
    public void A_sheet_that_is_open_everywhere_changes_nothing() => Hold(unit =>
    {
        if (unit.Joints.IsEmpty) return null;
        var gasket = new PartSpec("extra", "sheet", [new RevisionSpec("r1") { IsGasket = true }]);
        var joint = unit.Joints[0];
        var added = unit with
        {
            Parts = unit.Parts.Add(gasket),
            Joints = unit.Joints.SetItem(0, joint with { Sheets = joint.Sheets.Insert(joint.Sheets.Length / 2, gasket.Name) }),
            Matched = [.. unit.Matched.Select(set => set with { Revisions = set.Revisions.Add("r1") })],
        };
        return new Saying(SpecText.Of(added), name => name, name => name);
    });

    [Fact]
    public void Two_holes_side_by_side_are_one_hole_of_their_area() => Hold(unit =>
        new Saying(SpecText.Of(Doubling.Of(unit)), name => name, name => name));

    [Fact]
    public void A_part_in_a_file_of_its_own_is_the_part_in_place() => Property.ForAll(new UnitGen(revisions: true), Units / 3, unit =>
    {
        var folder = Directory.CreateTempSubdirectory("circuits-split-").FullName;
        try
        {
            var split = unit with { Parts = [.. unit.Parts.Select((part, i) => i % 2 == 0 ? part with { File = $"parts/{part.Name}.yaml" } : part)] };
            Directory.CreateDirectory(Path.Combine(folder, "parts"));
            foreach (var part in split.Parts.Where(part => part.File is not null))
                File.WriteAllText(Path.Combine(folder, part.File!), SpecText.FileOf(part));
            var path = Path.Combine(folder, "unit.yaml");
            File.WriteAllText(path, SpecText.Of(split));
            return Compare(unit, CircuitReader.ReadFile(path), name => name, name => name);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }, Shrink.Of, unit => SpecText.Of(unit));

    /// <summary>A unit said otherwise, with the way from a first name to the second, and back.</summary>
    private sealed record Saying(string Text, Func<string, string> There, Func<string, string> Back);

    private static void Hold(Func<UnitSpec, Saying?> otherwise) => Property.ForAll(
        new UnitGen(revisions: true), Units,
        unit => otherwise(unit) is { } said ? Compare(unit, CircuitReader.ReadText(said.Text, "said.yaml"), said.There, said.Back) : null,
        Shrink.Of, unit => SpecText.Of(unit));

    private static string? Compare(UnitSpec unit, ReadResult other, Func<string, string> there, Func<string, string> back)
    {
        var read = CircuitReader.ReadText(SpecText.Of(unit), "drawn.yaml");
        if (read.Unit is null) return $"not read: {read.Findings[0].Message}";
        if (other.Unit is null) return $"not read otherwise: {other.Findings[0].Place} {other.Findings[0].Message}";
        var (judge, otherJudge) = (new UnitJudge(read.Unit, JudgeMode.Quick), new UnitJudge(other.Unit, JudgeMode.Quick));
        foreach (var choice in unit.Choices.Take(Assemblies))
        {
            var byPart = unit.Parts.Zip(choice).ToDictionary(pair => there(pair.First.Name), pair => there(pair.Second));
            var digest = Digest.Of(judge.Report(Fitted(read.Unit, choice)), there, _ => true);
            var again = Digest.Of(otherJudge.Report(Fitted(other.Unit, byPart)), back, passage => !passage.StartsWith("extra.", StringComparison.Ordinal));
            if (digest.Against(again) is { } fault) return $"{fault} ({string.Join(' ', choice)})";
        }

        return null;
    }

    private static Assembly Fitted(Unit unit, ImmutableArray<string> choice) =>
        Assembly.Of(unit, [.. choice.Zip(unit.Parts, (name, part) => part.FindRevision(name)!)]);

    private static Assembly Fitted(Unit unit, Dictionary<string, string> byPart) => Assembly.Of(
        unit, [.. unit.Parts.Select(part => byPart.TryGetValue(part.Name, out var name) ? part.FindRevision(name)! : part.Revisions[0])]);

    /// <summary>Every drawn name is letters and a number; a unit of measure (mm2) is not one.</summary>
    private static string Renamed(string text) =>
        DrawnName().Replace(text, match => match.Value == "mm2" ? match.Value : $"n{(int.Parse(match.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture) * 37 % 101) + 7}{match.Groups[1].Value}y{match.Groups[2].Value}");

    [GeneratedRegex(@"\b([A-Za-z]{1,3})(\d+)\b")]
    private static partial Regex DrawnName();
}
