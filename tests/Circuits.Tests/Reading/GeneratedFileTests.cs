using System.Text;
using Circuits.Findings;
using Circuits.Reading;
using Xunit;

namespace Circuits.Tests.Reading;

/// <summary>Bad files that cannot lie in the tree: too large, no text, links. They are made in a folder of their own.</summary>
public sealed class GeneratedFileTests : IDisposable
{
    /// <summary>The rules that these tests exercise.</summary>
    internal static readonly string[] Rules = ["unreadable-file", "file-too-big", "binary-file", "not-utf8", "too-deep", "too-many-aliases", "too-many-faults", "part-file-outside"];

    private readonly string folder = Directory.CreateTempSubdirectory("circuits").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_missing_file_is_one_finding()
    {
        var path = Path.Combine(folder, "no-such-file.yaml");
        Assert.Equal($"{path} unreadable-file {path} does not exist", One(path));
    }

    [Fact]
    public void A_file_in_a_missing_folder_is_one_finding() => Assert.EndsWith("does not exist", One(Path.Combine(folder, "none", "unit.yaml")));

    [Fact]
    public void A_folder_is_one_finding() => Assert.Equal($"{folder} unreadable-file {folder} is a folder", One(folder));

    [Theory]
    [InlineData("")]
    [InlineData("a\0b")]
    public void A_path_that_cannot_be_one_is_one_finding(string path) => Assert.Contains("unreadable-file", One(path));

    [Fact]
    public void A_file_that_may_not_be_read_is_one_finding()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess, "Rights do not bind this user.");
        var path = Write("secret.yaml", "format: 1\n"u8);
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path, UnixFileMode.None);
        Assert.Equal($"{path} unreadable-file {path} may not be read", One(path));
    }

    [Fact]
    public void A_file_of_200_MB_is_refused_without_being_read()
    {
        var path = Path.Combine(folder, "big.yaml");
        using (var stream = File.Create(path)) stream.SetLength(200L * 1024 * 1024);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal($"{path} file-too-big {path} is larger than 8 MB", One(path));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1024 * 1024);
    }

    [Fact]
    public void A_device_without_end_is_refused()
    {
        Assert.SkipUnless(File.Exists("/dev/zero"), "There is no such device here.");
        Assert.Equal("/dev/zero unreadable-file /dev/zero is a device, no ordinary file", One("/dev/zero"));
    }

    [Fact]
    public void A_long_file_of_many_values_is_refused()
    {
        var text = new StringBuilder("format: 1\nmarks: [");
        for (var i = 0; i < 260_000; i++) text.Append("a,");
        Assert.Contains("file-too-big More than 250000 values", One(Write("many.yaml", Encoding.UTF8.GetBytes(text.Append("a]\n").ToString()))));
    }

    [Fact]
    public void Reading_stops_at_a_thousand_faults()
    {
        var text = "format: 1\nunit: x\n" + string.Concat(Enumerable.Range(0, 5000).Select(i => $"key{i}: 1\n"));
        var findings = CircuitReader.ReadText(text, "unit.yaml").Findings;
        Assert.Equal(1001, findings.Length);
        Assert.Equal("unit.yaml too-many-faults More than 1000 faults; reading stopped", Line(findings[0]));
    }

    // What multiplies when it is read, so that a short file would cost much time or memory.
    [Theory]
    [InlineData(501, 0, 0, 0, "More than 500 parts")]
    [InlineData(1, 501, 0, 0, "More than 500 matched sets")]
    [InlineData(1, 0, 201, 0, "part p0 has more than 200 revisions")]
    [InlineData(1, 0, 190, 3000, "The revisions of part p0 come to more than 250000 values")]
    public void What_multiplies_is_bounded(int parts, int sets, int revisions, int passages, string message)
    {
        var text = new StringBuilder("format: 1\nunit: x\ndata: invented\ngears: {N: {apply: []}}\nparts:\n");
        for (var i = 0; i < parts; i++) text.Append($"  p{i}:\n    kind: drum\n    revisions:\n      0: {{passages: {{{string.Join(", ", Enumerable.Range(0, passages).Select(n => $"a{n}: {{}}"))}}}}}\n");
        for (var i = 1; i < revisions; i++) text.Append($"      {i}: {{based-on: 0, passages: {{b: {{}}}}}}\n");
        text.Append(revisions > 0 ? "      last: {}\n" : "").Append("matched:\n  first: {p0: 0}\n");
        for (var i = 0; i < sets; i++) text.Append($"  m{i}: {{p0: 0}}\n");
        Assert.Contains($"file-too-big {message}", string.Join('\n', CircuitReader.ReadText(text.ToString(), "unit.yaml").Findings.Select(Line)));
    }

    [Fact]
    public void A_program_is_no_text()
    {
        var path = Write("tool.yaml", [0x7F, (byte)'E', (byte)'L', (byte)'F', 2, 1, 1, 0, 0, 0]);
        Assert.Equal($"{path}:1:1 binary-file Not a text file: byte 0x7F", One(path));
    }

    [Fact]
    public void A_control_character_is_found_at_its_place()
    {
        var path = Write("bell.yaml", "format: 1\nunit: a\u0007b\n"u8);
        Assert.Equal($"{path}:2:8 binary-file Not a text file: byte 0x07", One(path));
    }

    [Fact]
    public void Another_encoding_is_found_at_its_place()
    {
        var path = Write("latin.yaml", [.. "format: 1\nunit: Getri"u8, 0xE4, .. "be\n"u8]);
        Assert.Equal($"{path}:2:12 not-utf8 Not UTF-8: byte 0xE4", One(path));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Utf16_is_named(bool bigEndian)
    {
        var encoding = new UnicodeEncoding(bigEndian, byteOrderMark: true);
        var path = Write("wide.yaml", [.. encoding.GetPreamble(), .. encoding.GetBytes("format: 1\n")]);
        Assert.Equal($"{path} not-utf8 {path} is UTF-16 text, not UTF-8", One(path));
    }

    [Fact]
    public void A_byte_order_mark_is_no_fault()
    {
        var text = File.ReadAllBytes(TestFiles.Find("Reading/sketch.yaml"));
        var plain = CircuitReader.ReadFile(Write("unit.yaml", text));
        var marked = CircuitReader.ReadFile(Write("unit.yaml", [0xEF, 0xBB, 0xBF, .. text]));
        Assert.Empty(marked.Findings);
        Assert.Equal(plain.Unit!.Parts[0].Place, marked.Unit!.Parts[0].Place);
    }

    [Fact]
    public void Line_ends_of_another_system_are_no_fault()
    {
        var text = File.ReadAllText(TestFiles.Find("Reading/sketch.yaml")).Replace("\n", "\r\n", StringComparison.Ordinal);
        var result = CircuitReader.ReadText(text, "unit.yaml");
        Assert.Empty(result.Findings);
        Assert.Equal(17, result.Unit!.Parts[0].Revisions[0].Passages[0].Place.Line);
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{a: ")]
    [InlineData("- ")]
    [InlineData("? ")]
    public void Deep_nesting_is_one_finding(string step)
    {
        var text = "format: 1\nunit: " + (step.StartsWith('[') || step.StartsWith('{') ? "" : "\n") + string.Concat(Enumerable.Repeat(step, 100_000));
        Assert.Contains("too-deep Nested deeper than 32 levels", One(Write("deep.yaml", Encoding.UTF8.GetBytes(text))));
    }

    [Fact]
    public void An_alias_bomb_is_one_finding()
    {
        var text = new StringBuilder("format: 1\na0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for (var i = 1; i < 20; i++) text.Append($"a{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 10))}]\n");
        Assert.Matches(@"bomb\.yaml:6:\d+ too-many-aliases Aliases add more than 20000 values to this file$", One(Write("bomb.yaml", Encoding.UTF8.GetBytes(text.ToString()))));
    }

    [Fact]
    public void An_alias_stands_for_its_anchor()
    {
        var text = File.ReadAllText(TestFiles.Find("Reading/sketch.yaml"))
            .Replace("a: {}", "a: &closed {}", StringComparison.Ordinal)
            .Replace("b: {}", "b: *closed", StringComparison.Ordinal);
        Assert.Empty(CircuitReader.ReadText(text, "unit.yaml").Findings);
    }

    [Theory]
    [InlineData("link.yaml")]
    [InlineData("way/part.yaml")]
    [InlineData("circle/part.yaml")]
    public void A_part_file_behind_a_link_that_leads_out_is_refused(string reference)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights there.");
        var unit = Directory.CreateDirectory(Path.Combine(folder, "unit")).FullName;
        var outside = Directory.CreateDirectory(Path.Combine(folder, "outside")).FullName;
        File.WriteAllText(Path.Combine(outside, "part.yaml"), "kind: drum\n");
        File.CreateSymbolicLink(Path.Combine(unit, "link.yaml"), Path.Combine(outside, "part.yaml"));
        Directory.CreateSymbolicLink(Path.Combine(unit, "way"), "../outside");
        Directory.CreateSymbolicLink(Path.Combine(unit, "circle"), "circle");
        Assert.Contains($"part-file-outside part drum: file '{reference}' does not lie below the unit file's folder", All(UnitWithPart(unit, reference)));
    }

    [Theory]
    [InlineData("inner/part.yaml")]
    [InlineData("link.yaml")]
    [InlineData("./inner/part.yaml")]
    public void A_part_file_below_the_folder_is_read(string reference)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights there.");
        var inner = Directory.CreateDirectory(Path.Combine(folder, "inner")).FullName;
        File.WriteAllText(Path.Combine(inner, "part.yaml"), "format: 1\nkind: drum\nmarks: [two notches]\n");
        File.CreateSymbolicLink(Path.Combine(folder, "link.yaml"), "inner/part.yaml");
        var result = CircuitReader.ReadFile(UnitWithPart(folder, reference));
        Assert.Empty(result.Findings);
        var mark = result.Unit!.FindPart("drum")!.Revisions[0].Marks.Single();
        Assert.Equal("two notches", mark.Name);
        Assert.Equal((3, 9), (mark.Place.Line, mark.Place.Column));
        Assert.EndsWith(".yaml", mark.Place.File);
        Assert.DoesNotContain("unit.yaml", mark.Place.File);
    }

    private static string UnitWithPart(string folder, string reference)
    {
        var path = Path.Combine(folder, "unit.yaml");
        File.WriteAllText(path, $"format: 1\nunit: Small\ndata: invented\nparts:\n  drum: {reference}\ngears:\n  N: {{apply: []}}\n");
        return path;
    }

    private string Write(string name, ReadOnlySpan<byte> content)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllBytes(path, content);
        return path;
    }

    private static string One(string path) => Line(Assert.Single(CircuitReader.ReadFile(path).Findings));

    private static string All(string path) => string.Join('\n', CircuitReader.ReadFile(path).Findings.Select(Line));

    private static string Line(Finding finding) => $"{finding.Place} {finding.Rule} {finding.Words()}";
}
