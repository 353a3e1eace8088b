using System.CommandLine;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Circuits.Judging;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Rendering.Html;
using Circuits.Rendering.Json;
using Circuits.Rendering.Matrix;
using Circuits.Rendering.Plots;
using Circuits.Studies.Matrix;

namespace Circuits.Cli;

/// <summary><c>matrix</c>: every combination of revisions, grouped by what it does.</summary>
internal static class MatrixVerb
{
    /// <summary>Most assemblies in one JSON document.</summary>
    private const long MostInDocument = 100_000;

    private const int MostThreads = 256;

    /// <summary>Longest run that starts without being asked twice.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    public static Verb Create(CommonOptions options)
    {
        var asked = new Options();
        Completes.FromUnit(asked.Fit, options.Files, unit => TargetWords.Of(unit, "fit"));
        return new Verb(
            "matrix", "Every combination of the parts' revisions, or of those that --fit leaves free: what it does in every gear, "
                + "and which combinations do the same.",
            [options.Files, asked.Fit, options.Gear, options.Quick, asked.Format, options.Output, options.Units, asked.Shard, asked.Merge, asked.Threads, asked.Yes, asked.Plot],
            ["circuits matrix unit.yaml", "circuits matrix unit.yaml --fit body=2,plate=1,plate=2", "circuits matrix unit.yaml --format jsonl --shard 1/4 -o 1.jsonl",
                "circuits matrix --merge 1.jsonl 2.jsonl 3.jsonl 4.jsonl -o all.jsonl"],
            session => session.Parsed.GetValue(asked.Merge) ? MatrixMerging.Run(session, asked) : Run(session, asked));
    }

    private static int Run(Session session, Options asked)
    {
        session.CheckOutput();
        if (session.Files is not [var file])
            throw new UserError(UserError.Usage, "matrix takes one circuit file at a time", "To put shards together: circuits matrix --merge FILE...");
        var threads = Threads(session.Parsed.GetValue(asked.Threads));
        var shard = Shard(session.Parsed.GetValue(asked.Shard));
        var form = FormOf(session.Format);
        var picture = asked.Plot.Check(session);
        if (picture is not null && form is not null)
            throw new UserError(UserError.Usage, "--plot needs all rows at once, not one by one", "Leave --format jsonl or csv out.");
        if (shard is not null && form is null)
            throw new UserError(UserError.Usage, $"--shard needs rows that can be put together again, not {session.Format.ToString().ToLowerInvariant()}", "Add --format jsonl or --format csv.");
        PerUnit.RefuseFolder(session, file);
        var read = session.ReadQuietly(file);
        session.Diagnose(read.Findings);
        if (read.Unit is not { } unit) return ExitCode.CouldNotRun;

        var gears = PerUnit.Gears(session, unit, file);
        var choices = FreeParts.Of(unit, file, OptionWords.Items(session.Parsed.GetValue(asked.Fit)));
        var space = MatrixSpace.Of(unit, choices, [.. Enumerable.Range(0, unit.Gears.Length).Where(gear => gears.Contains(unit.Gears[gear].Name))], session.Mode)
            ?? throw new UserError(UserError.Usage, "there are more assemblies than can be numbered", "Fix some parts: --fit part=revision.");
        session.Diagnose(new UnitJudge(unit, session.Mode).GearsetFaults);
        if (!session.Parsed.GetValue(asked.Yes)) RefuseLongRun(session, space, shard is var (number, all) ? MatrixSpace.Shard(space.Count, number, all) : (0, space.Count), threads);
        if (form is not null)
            WriteRows(session, space, form, shard is var (k, n) ? new MatrixShard(k, n, space.Count, Inputs(session, space, read.Files)) : null, threads);
        else if (session.Format == OutputFormat.Json)
            WriteDocument(session, space, threads, picture);
        else
            WritePage(session, space, threads, picture);
        return ExitCode.Fine;
    }

    private static void RefuseLongRun(Session session, MatrixSpace space, (long From, long To) range, int threads)
    {
        var time = MatrixEstimate.Of(space, range, Math.Min(threads, Environment.ProcessorCount), TimeProvider.System, session.Interrupted);
        if (time <= Longest) return;
        var quick = space.Mode == JudgeMode.Full ? "--quick judges by the static answer alone, " : "";
        throw new UserError(
            UserError.Usage,
            string.Create(CultureInfo.InvariantCulture, $"{range.To - range.From} assemblies would take about {InWords(time)} here; more than {Longest.TotalMinutes:0} min are not begun unasked"),
            $"{quick}--fit fixes parts, --shard k/n shares the work; --yes begins all the same.");
    }

    private static string InWords(TimeSpan time) =>
        time.TotalHours < 2 ? FormattableString.Invariant($"{time.TotalMinutes:0} min")
        : time.TotalDays < 2 ? FormattableString.Invariant($"{time.TotalHours:0} h")
        : FormattableString.Invariant($"{time.TotalDays:0} days");

    private static void WriteRows(Session session, MatrixSpace space, MatrixForm form, MatrixShard? shard, int threads) => session.Stream(write =>
    {
        var range = shard?.Range ?? (0, space.Count);
        using var progress = session.Progress(range.To - range.From, "assemblies", streams: true);
        var numbers = new GroupNumbers();
        var done = 0L;
        write(form.Head(space, shard));
        MatrixRun.Run(space, range, threads, Renderer(space, form), piece =>
        {
            session.StopIfInterrupted();
            foreach (var (_, row) in piece) write(shard is null ? form.End(row.Text, numbers.Of(row.Behaviour)) : form.EndOfShard(row));
            progress.Show(done += piece.Length);
        }, session.Interrupted);
    });

    private static void WriteDocument(Session session, MatrixSpace space, int threads, string? picture)
    {
        if (space.Count > MostInDocument)
        {
            throw new UserError(
                UserError.Usage, string.Create(CultureInfo.InvariantCulture, $"one document cannot hold {space.Count} assemblies; it holds {MostInDocument} at most"),
                "--format jsonl writes a row at a time; --fit fixes parts.");
        }

        session.Stream(write =>
        {
            var form = new JsonLinesForm();
            var rows = new List<string>();
            var summary = Gather(session, space, threads, form, (entry, row, group) => rows.Add(form.End(row.Text, group)));
            PlotOption.Write(session, picture, () => MatrixPlot.Of(summary));
            write(JsonText.Of(Documents.Of(summary, rows)));
        });
    }

    private static void WritePage(Session session, MatrixSpace space, int threads, string? picture)
    {
        if (space.Count > MatrixSummary.MostAssemblies)
        {
            throw new UserError(
                UserError.Usage, string.Create(CultureInfo.InvariantCulture, $"one page cannot group {space.Count} assemblies"),
                "--format jsonl writes a row at a time; --fit fixes parts.");
        }

        session.Stream(write =>
        {
            var summary = Gather(session, space, threads, null, null);
            PlotOption.Write(session, picture, () => MatrixPlot.Of(summary));
            write(session.Format == OutputFormat.Html ? MatrixPage.Of(summary) : MatrixText.Of(summary, session.Text));
        });
    }

    private static MatrixSummary Gather(
        Session session, MatrixSpace space, int threads, MatrixForm? form, Action<MatrixEntry, MatrixRow, int>? take)
    {
        var summary = new MatrixSummary(space);
        using var progress = session.Progress(space.Count, "assemblies", streams: false);
        var done = 0L;
        MatrixRun.Run(space, (0, space.Count), threads, Renderer(space, form), piece =>
        {
            foreach (var (entry, row) in piece)
            {
                var group = summary.Add(entry);
                take?.Invoke(entry, row, group);
            }

            progress.Show(done += piece.Length);
        }, session.Interrupted);
        return summary;
    }

    private static Func<Func<IReadOnlyList<MatrixEntry>, (MatrixEntry Entry, MatrixRow Row)[]>> Renderer(MatrixSpace space, MatrixForm? form) => () =>
    {
        var rows = form?.Rows(space) ?? (_ => default);
        return entries => [.. entries.Select(entry => (entry, rows(entry)))];
    };

    private static MatrixForm? FormOf(OutputFormat format) => format switch
    {
        OutputFormat.Jsonl => new JsonLinesForm(),
        OutputFormat.Csv => new CsvForm(),
        _ => null,
    };

    private static int Threads(string? word)
    {
        if (word is null) return Math.Min(MostThreads, Environment.ProcessorCount);
        return int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var threads) && threads is >= 1 and <= MostThreads ? threads
            : throw new UserError(UserError.Usage, $"--threads {word} is no count of threads", $"Give a number from 1 to {MostThreads}.");
    }

    private static (int K, int N)? Shard(string? word)
    {
        if (word is null) return null;
        if (word.Split('/') is not [var first, var second]
            || !int.TryParse(first, NumberStyles.None, CultureInfo.InvariantCulture, out var k)
            || !int.TryParse(second, NumberStyles.None, CultureInfo.InvariantCulture, out var n))
        {
            throw new UserError(UserError.Usage, $"--shard {word} is no shard", "Write k/n: the second of four shards is 2/4.");
        }

        return n >= 1 && k >= 1 && k <= n ? (k, n)
            : throw new UserError(UserError.Usage, $"--shard {word}: there is no such shard", "Shards of n are counted from 1/n to n/n.");
    }

    /// <summary>A word for all that the rows depend on: the program, the files, the revisions tried, the gears.</summary>
    private static string Inputs(Session session, MatrixSpace space, IEnumerable<string> files)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in files) Add(session.Inputs.Whole(file, InputFiles.MostBytes));
        Add(Encoding.UTF8.GetBytes(ProgramVersion.Full));
        foreach (var revision in space.Choices.SelectMany(revisions => revisions.Select(revision => revision.Name).Append(""))) Add(Encoding.UTF8.GetBytes(revision));
        foreach (var gear in space.Gears) Add([(byte)gear]);
        Add([(byte)space.Mode]);
        return Convert.ToHexStringLower(hash.GetHashAndReset())[..32];

        void Add(ReadOnlySpan<byte> bytes)
        {
            hash.AppendData(BitConverter.GetBytes(bytes.Length));
            hash.AppendData(bytes);
        }
    }

    /// <summary>The options that no other verb has.</summary>
    internal sealed class Options
    {
        public Option<string[]> Fit { get; } = new("--fit")
        {
            HelpName = "part=revision | set",
            Description = "Fixes parts: to one revision, or, named several times, to those. A matched set's name fixes every part that is not "
                + "named singly. May be repeated; several go with commas.",
        };

        public FormatOption Format { get; } = new(OutputFormat.Text, OutputFormat.Json, OutputFormat.Jsonl, OutputFormat.Csv, OutputFormat.Html);

        public Option<string?> Shard { get; } = new("--shard")
        {
            HelpName = "k/n",
            Description = "Only the k-th of n equal shares of the rows, as jsonl or csv; --merge puts them together.",
        };

        public Option<bool> Merge { get; } = new("--merge")
        {
            Description = "The files named are all shards of one matrix: put them together to the rows of a single run.",
        };

        public Option<bool> Yes { get; } = new("--yes")
        {
            Description = "Begins even if it is going to take more than ten minutes.",
        };

        public PlotOption Plot { get; } = new("the groups as a heat map");

        public Option<string?> Threads { get; } = new("--threads")
        {
            HelpName = "n",
            Description = "How many threads work; as many as there are cores unless given. The result is the same.",
        };
    }
}
