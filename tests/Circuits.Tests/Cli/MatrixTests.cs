using Circuits.Cli;
using Xunit;

namespace Circuits.Tests.Cli;

/// <summary>Shards, threads, interruption and failing outputs of <c>matrix</c>.</summary>
public sealed class MatrixTests : IDisposable
{
    private static readonly string Bench = Path.Combine(Repository.Root, "tests", "Circuits.Tests", "Cli", "units", "bench.yaml");

    private readonly string folder = Directory.CreateTempSubdirectory("circuits-matrix-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    public static TheoryData<string, int> Splits()
    {
        var splits = new TheoryData<string, int>();
        foreach (var format in (string[])["jsonl", "csv"])
        {
            // 24 assemblies: with 30 shards some are empty.
            foreach (var shards in (int[])[1, 2, 7, 24, 30]) splits.Add(format, shards);
        }

        return splits;
    }

    [Theory]
    [MemberData(nameof(Splits))]
    public void Merged_shards_are_the_bytes_of_a_single_run(string format, int shards)
    {
        var files = Enumerable.Range(1, shards).Select(k => Shard(format, k, shards)).ToList();
        var all = At("all");
        Assert.Equal((0, "", ""), Run(["matrix", "--merge", .. files.AsEnumerable().Reverse(), "-o", all]));
        var whole = Run(["matrix", Bench, "--format", format]).Out;
        Assert.Equal(whole, File.ReadAllText(all));
        Assert.Equal(whole, Run(["matrix", "--merge", .. files]).Out);
        var rows = whole.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length - (format == "csv" ? 1 : 0);
        Assert.Equal(24, rows);
    }

    // Thirteen million assemblies that all differ.
    [Fact]
    public void What_would_take_long_is_not_begun_unasked()
    {
        var plates = string.Concat(Enumerable.Range(0, 4).Select(plate =>
            $"  plate{plate}:\n    kind: sheet\n    revisions:\n" + string.Concat(Enumerable.Range(0, 60).Select(revision =>
                FormattableString.Invariant($"      r{revision}: {{openings: [{{at: {plate}, hole: {2 + (0.02 * revision)} mm}}]}}\n")))));
        var unit = At("many.yaml");
        File.WriteAllText(unit, """
            format: 1
            unit: Many
            data: invented
            joints: {f0: {between: [body, cover], sheets: [plate0]}, f1: {between: [body, cover], sheets: [plate1]}, f2: {between: [body, cover], sheets: [plate2]}, f3: {between: [body, cover], sheets: [plate3]}}
            pump: {into: body.line}
            parts:
              body: {kind: casting, passages: {line: {f0: 0, f1: 1, f2: 2, f3: 3}}, regulators: {main: {holds: line, spills-to: exhaust, spring: 600 kPa}}}
              cover: {kind: casting, passages: {a: {f0: 0}, b: {f1: 1}, c: {f2: 2}, d: {f3: 3}}, restrictions: [{between: [a, exhaust], hole: 1 mm}, {between: [b, exhaust], hole: 1 mm}, {between: [c, exhaust], hole: 1 mm}, {between: [d, exhaust], hole: 1 mm}]}
            clutches: {one: {at: cover.a}, two: {at: cover.b}, three: {at: cover.c}, four: {at: cover.d}}
            matched: {all: {plate0: r0, plate1: r0, plate2: r0, plate3: r0}}
            gears: {G: {apply: [one, two, three, four]}, H: {apply: [one, two, three, four]}}
            """.Replace("parts:\n", "parts:\n" + plates, StringComparison.Ordinal));
        var rows = At("rows");
        var (exit, output, error) = Run("matrix", unit, "--format", "jsonl", "-o", rows);
        Assert.Equal((2, ""), (exit, output));
        Assert.Matches("^circuits: error usage: 12960000 assemblies would take about [0-9]+ (min|h|days) here; more than 10 min are not begun unasked\n  help: --quick ", error);
        Assert.False(File.Exists(rows));

        // A share is measured as a share, and what is asked for twice begins.
        Assert.Equal(0, Run("matrix", unit, "--format", "jsonl", "--shard", "1/1000000", "-o", rows).Exit);
        Assert.Equal(0, Run("matrix", unit, "--format", "jsonl", "--shard", "1/1000000", "--yes", "-o", rows).Exit);
    }

    [Fact]
    public void Shards_that_do_not_make_one_matrix_are_refused_and_an_existing_file_is_kept()
    {
        var (one, two, three) = (Shard("jsonl", 1, 3), Shard("jsonl", 2, 3), Shard("jsonl", 3, 3));
        var csv = Shard("csv", 3, 3);
        var other = Shard("jsonl", 3, 3, "--fit", "body=1,body=2");
        var sameCount = Shard("jsonl", 3, 3, "--gear", "1");
        var half = Shard("jsonl", 1, 2);
        var lines = File.ReadAllLines(two);
        Refused("1 of 3 shards missing, shard 3", one, two);
        Refused("2 of 3 shards missing, shard 1", two);
        Refused("are both shard 2 of 3", one, two, Made(lines), three);
        Refused("shards of different runs", one, two, other);
        Refused("shards of different runs", one, two, sameCount);
        Refused("shards of different runs", half, two);
        Refused("different formats", one, two, csv);
        Refused("ends early: it has 7 of 8 rows", one, Made(lines[..^1]), three);
        Refused("goes on after its last row", one, Made([.. lines, lines[^1]]), three);
        Refused("line 3 is not the row that belongs there", one, Made([.. lines[..2], lines[3], lines[2], .. lines[4..]]), three);
        Refused("line 9 is not the row that belongs there", one, Made([.. lines[..^1], lines[^1][..^5]]), three);
        Refused("is no shard of a matrix", one, Bench, three);
        Refused("is no shard of a matrix", one, Made([]), three);
        Refused("does not exist", one, two, At("nothing"));
        Refused("is a folder", one, two, folder);

        void Refused(string why, params string[] files)
        {
            var kept = At("kept");
            File.WriteAllText(kept, "what was here before");
            var (exit, output, error) = Run(["matrix", "--merge", .. files, "-o", kept]);
            Assert.Equal((2, ""), (exit, output));
            Assert.Contains(why, error, StringComparison.Ordinal);
            Assert.StartsWith("circuits: error merge: ", error, StringComparison.Ordinal);
            Assert.Equal("what was here before", File.ReadAllText(kept));
            Assert.Equal((2, ""), Run(["matrix", "--merge", .. files]) is var (e, o, _) ? (e, o) : default);
            Assert.DoesNotContain(Directory.EnumerateFiles(folder), file => file.EndsWith(".tmp", StringComparison.Ordinal));
        }

        string Made(IEnumerable<string> rows)
        {
            var file = At($"made{Guid.NewGuid():N}");
            File.WriteAllLines(file, rows);
            return file;
        }
    }

    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("jsonl")]
    [InlineData("csv")]
    public void The_number_of_threads_does_not_show(string format)
    {
        string[] command = ["matrix", Path.Combine(Repository.Root, "circuits", "firth", "firth.yaml"), "--fit", "balls=1,lower=1", "--format", format];
        var alone = Run([.. command, "--threads", "1"]);
        Assert.Equal((0, ""), (alone.Exit, alone.Error));
        Assert.Equal(alone, Run([.. command, "--threads", "2"]));
        Assert.Equal(alone, Run([.. command, "--threads", "7"]));
    }

    [Theory]
    [InlineData("1")]
    [InlineData("3")]
    public void An_interrupted_run_leaves_whole_rows_only(string threads)
    {
        using var broken = new CancellationTokenSource();
        using var output = new InterruptingWriter(broken);
        using var error = new StringWriter();
        string[] command = ["matrix", Path.Combine(Repository.Root, "circuits", "firth", "firth.yaml"), "--fit", "balls=1,lower=1", "--format", "jsonl"];
        var exit = CommandLine.Run([.. command, "--threads", threads], new Surroundings(output, error) { Listen = () => broken.Token });
        Assert.Equal((130, ""), (exit, error.ToString()));
        var left = output.ToString();
        Assert.EndsWith("}\n", left, StringComparison.Ordinal);
        var whole = Run(command).Out;
        Assert.StartsWith(left, whole, StringComparison.Ordinal);
        Assert.InRange(left.Length, 1, whole.Length - 1);
    }

    [Fact]
    public void An_interrupted_run_into_a_file_keeps_what_was_there()
    {
        var file = At("kept");
        File.WriteAllText(file, "what was here before");
        using var broken = new CancellationTokenSource();
        using var error = new InterruptingWriter(broken);
        var world = new Surroundings(TextWriter.Null, error) { Listen = () => broken.Token, ErrorIsTerminal = true };
        Assert.Equal(130, CommandLine.Run(["matrix", Bench, "--format", "jsonl", "-o", file], world));
        Assert.Equal("what was here before", File.ReadAllText(file));
        Assert.Single(Directory.EnumerateFiles(folder));
    }

    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("jsonl")]
    [InlineData("csv")]
    public void A_full_disk_is_an_error_of_one_line(string format)
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "no /dev/full here");
        var (exit, output, error) = Run(["matrix", Bench, "--format", format, "-o", "/dev/full"]);
        Assert.Equal((2, ""), (exit, output));
        Assert.StartsWith("circuits: error output: cannot write /dev/full: ", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Progress_shows_on_a_terminal_where_no_rows_go_and_is_taken_back()
    {
        var shown = Progress("jsonl", outIsTerminal: false);
        Assert.StartsWith("\r100 % of 24 assemblies", shown, StringComparison.Ordinal);
        Assert.EndsWith("\r" + new string(' ', "100 % of 24 assemblies".Length) + "\r", shown, StringComparison.Ordinal);
        Assert.Equal(shown, Progress("text", outIsTerminal: true));
        Assert.Equal("", Progress("jsonl", outIsTerminal: true));

        static string Progress(string format, bool outIsTerminal)
        {
            using var error = new StringWriter();
            var world = new Surroundings(TextWriter.Null, error) { OutIsTerminal = outIsTerminal, ErrorIsTerminal = true };
            Assert.Equal(0, CommandLine.Run(["matrix", Bench, "--format", format], world));
            return error.ToString();
        }
    }

    [Fact]
    public void Blocks_hold_whole_pieces_and_no_more_than_a_pipe_takes()
    {
        var blocks = new List<string>();
        var gather = new RowBlocks(blocks.Add);
        string[] pieces = [.. Enumerable.Range(0, 300).Select(i => new string('ä', i % 90) + "\n"), new string('x', 5000) + "\n", "last\n"];
        foreach (var piece in pieces) gather.Add(piece);
        gather.Flush();
        Assert.Equal(string.Concat(pieces), string.Concat(blocks));
        Assert.All(blocks, block => Assert.EndsWith("\n", block, StringComparison.Ordinal));
        Assert.Single(blocks, block => System.Text.Encoding.UTF8.GetByteCount(block) > RowBlocks.Size);
    }

    private string Shard(string format, int k, int n, params string[] more)
    {
        var file = At($"{Guid.NewGuid():N}.{format}");
        Assert.Equal((0, "", ""), Run(["matrix", Bench, "--format", format, "--shard", $"{k}/{n}", "-o", file, .. more]));
        return file;
    }

    private string At(string name) => Path.Combine(folder, name);

    private static (int Exit, string Out, string Error) Run(params IReadOnlyList<string> args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var exit = CommandLine.Run([.. args], new Surroundings(output, error));
        return (exit, output.ToString(), error.ToString());
    }

    /// <summary>Breaks the command off as soon as something is written.</summary>
    private sealed class InterruptingWriter(CancellationTokenSource broken) : StringWriter
    {
        public override void Write(string? value)
        {
            base.Write(value);
            broken.Cancel();
        }
    }
}
