using Circuits.Findings;
using Circuits.Reading;
using CsCheck;
using Xunit;

namespace Circuits.Tests.Reading;

/// <summary>Whatever happens to a valid file, reading it ends with findings, not with an exception.</summary>
public sealed class MutatedFileTests
{
    private const string Odd = "[]{}:,#&*!|>'\"%@`-? \t\n\r\\~x0.=<é\u2028";
    private static readonly char[] Breaks = ['\n', '\r', '\u0085', '\u2028', '\u2029'];
    private static readonly string File = TestFiles.Find("Reading/kitchen-sink.yaml");
    private static readonly string[] Files = [.. new[] { "kitchen-sink.yaml", "sketch.yaml" }.Select(name => System.IO.File.ReadAllText(TestFiles.Find("Reading/" + name)))];

    private static readonly Gen<string> Mutated = Gen.Int[0, Files.Length - 1].SelectMany(which =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, Files[which].Length - 1], Gen.Int[1, 60], Gen.Int[0, Odd.Length - 1]).Array[1, 4].Select(changes =>
            changes.Aggregate(Files[which], (text, change) => Change(text, change.Item1, change.Item2, change.Item3, change.Item4))));

    [Fact]
    public void A_changed_file_never_throws() => Mutated.Sample(Check, iter: 300);

    [Fact]
    public void A_file_cut_anywhere_never_throws()
    {
        foreach (var text in Files)
        {
            for (var length = 0; length < text.Length; length += 29) Check(text[..length]);
        }
    }

    [Fact]
    public void A_file_without_one_of_its_lines_never_throws()
    {
        foreach (var text in Files)
        {
            var lines = text.Split('\n');
            for (var i = 0; i < lines.Length; i++) Check(string.Join('\n', lines.Where((_, index) => index != i)));
        }
    }

    [Fact]
    public void No_text_makes_it_throw() => Gen.String.Sample(Check, iter: 300);

    private static void Check(string text)
    {
        var result = CircuitReader.ReadText(text, File);
        Assert.Equal(result.Unit is null, result.Findings.Any(finding => finding.Severity == Severity.Error));
        var lines = text.Split(Breaks).Length;
        Assert.All(result.Findings, finding =>
        {
            Assert.NotEmpty(finding.Place.File);
            if (finding.Place.File == File) Assert.InRange(finding.Place.Line, 0, lines);
            Assert.False(finding.Words().AsSpan().ContainsAny('\n', '\r'), finding.Words());
        });
        Assert.Equal(result.Findings.Order(Comparer<Finding>.Create((a, b) => a.Place.CompareTo(b.Place))), result.Findings);
    }

    private static string Change(string text, int kind, int at, int length, int odd)
    {
        at = Math.Min(at, Math.Max(0, text.Length - 1));
        length = Math.Min(length, text.Length - at);
        return kind switch
        {
            0 => text.Remove(at, length),
            1 => text.Insert(at, text.Substring(at, length)),
            2 => text.Insert(at, Odd[odd].ToString()),
            _ => text.Remove(at, length).Insert(at / 2, text.Substring(at, length)),
        };
    }
}
