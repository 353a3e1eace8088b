using System.Globalization;
using Circuits.Studies.Matrix;

namespace Circuits.Rendering.Matrix;

/// <summary>Files that do not make one matrix, and why.</summary>
/// <param name="message">One sentence.</param>
/// <param name="help">What to do, or null.</param>
public sealed class MergeException(string message, string? help = null) : Exception(message)
{
    /// <summary>What to do, or null.</summary>
    public string? Help => help;
}

/// <summary>A file that may hold a shard.</summary>
/// <param name="Name">Its name in messages.</param>
/// <param name="Open">Opens it; called more than once.</param>
public sealed record ShardFile(string Name, Func<TextReader> Open);

/// <summary>The shards of a matrix, put together to what one run would have written.</summary>
public sealed class MatrixMerge
{
    private const string HowMade = "Shards are written with --shard k/n and --format jsonl or csv, from the same files and options.";

    private readonly List<(ShardFile File, MatrixShard Shard)> shards;

    private MatrixMerge(MatrixForm form, string head, List<(ShardFile, MatrixShard)> shards)
    {
        Form = form;
        Head = head;
        this.shards = shards;
    }

    /// <summary>How the rows are written.</summary>
    public MatrixForm Form { get; }

    /// <summary>What stands before the rows.</summary>
    public string Head { get; }

    /// <summary>Reads all files through, and makes sure that they are all shards of one run, each of them once and whole.</summary>
    /// <param name="files">The files, in any order.</param>
    /// <exception cref="MergeException">They are not.</exception>
    public static MatrixMerge Of(IReadOnlyList<ShardFile> files)
    {
        var heads = files.Select(file => (File: file, Found: HeadOf(file))).ToList();
        var (firstFile, first) = heads[0];
        foreach (var (file, found) in heads)
        {
            if (found.Form.GetType() != first.Form.GetType())
                throw new MergeException($"{firstFile.Name} and {file.Name} have different formats", HowMade);
            if (found.Head != first.Head || found.Shard with { Number = 1 } != first.Shard with { Number = 1 })
                throw new MergeException($"{firstFile.Name} and {file.Name} are shards of different runs", HowMade);
        }

        var ordered = heads.Select(head => (head.File, head.Found.Shard)).OrderBy(head => head.Shard.Number).ToList();
        for (var i = 1; i < ordered.Count; i++)
        {
            if (ordered[i].Shard.Number == ordered[i - 1].Shard.Number)
            {
                throw new MergeException(
                    $"{ordered[i - 1].File.Name} and {ordered[i].File.Name} are both shard {Words.ShardOf(ordered[i].Shard)}", "Name each shard once.");
            }
        }

        if (ordered.Count < first.Shard.Of)
        {
            var missing = Enumerable.Range(1, ordered.Count + 1).First(number => !ordered.Exists(head => head.Shard.Number == number));
            throw new MergeException(
                string.Create(CultureInfo.InvariantCulture, $"{first.Shard.Of - ordered.Count} of {first.Shard.Of} shards missing, shard {missing} among them"),
                string.Create(CultureInfo.InvariantCulture, $"Make it with --shard {missing}/{first.Shard.Of}."));
        }

        var merge = new MatrixMerge(first.Form, first.Head, ordered);
        foreach (var (file, shard) in ordered)
        {
            foreach (var _ in merge.RowsOf(file, shard))
            {
                // Reading checks each row.
            }
        }

        return merge;
    }

    /// <summary>Every row with its group, whole with its line end, in the order of the run.</summary>
    public IEnumerable<string> Rows()
    {
        var numbers = new GroupNumbers();
        foreach (var (file, shard) in shards)
        {
            foreach (var row in RowsOf(file, shard)) yield return Form.End(row.Text, numbers.Of(row.Behaviour));
        }
    }

    private IEnumerable<MatrixRow> RowsOf(ShardFile file, MatrixShard shard)
    {
        using var reader = file.Open();
        Line(reader, file);
        var (from, to) = shard.Range;
        for (var number = from; number < to; number++)
        {
            if (Line(reader, file) is not { } line)
            {
                throw new MergeException(
                    string.Create(CultureInfo.InvariantCulture, $"{file.Name} ends early: it has {number - from} of {to - from} rows"),
                    $"Make it again with --shard {shard.Number}/{shard.Of}.");
            }

            if (Form.ReadRow(line) is not { } row || row.Number != number)
            {
                throw new MergeException(
                    string.Create(CultureInfo.InvariantCulture, $"{file.Name} line {number - from + 2} is not the row that belongs there"), HowMade);
            }

            yield return row;
        }

        if (Line(reader, file) is not null) throw new MergeException($"{file.Name} goes on after its last row", HowMade);
    }

    private static string? Line(TextReader reader, ShardFile file)
    {
        try
        {
            return reader.ReadLine();
        }
        catch (IOException)
        {
            throw new MergeException($"{file.Name} cannot be read to its end");
        }
    }

    private static (MatrixForm Form, MatrixShard Shard, string Head) HeadOf(ShardFile file)
    {
        using var reader = file.Open();
        var line = Line(reader, file) ?? "";
        MatrixForm form = line.StartsWith('{') ? new JsonLinesForm() : new CsvForm();
        if (form.ReadHead(line) is not { } found || found.Shard.Number < 1 || found.Shard.Number > found.Shard.Of || found.Shard.Assemblies < 0)
            throw new MergeException($"{file.Name} is no shard of a matrix", HowMade);
        return (form, found.Shard, found.Head);
    }
}
