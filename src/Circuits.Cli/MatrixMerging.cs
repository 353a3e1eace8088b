using Circuits.Rendering.Matrix;

namespace Circuits.Cli;

/// <summary><c>matrix --merge</c>: shards put together to the bytes of a single run.</summary>
internal static class MatrixMerging
{
    public static int Run(Session session, MatrixVerb.Options asked)
    {
        session.CheckOutput();
        Refuse(session, "--shard", session.Parsed.GetValue(asked.Shard) is not null);
        Refuse(session, "--fit", session.Parsed.GetValue(asked.Fit) is { Length: > 0 });
        Refuse(session, "--gear", session.Gears.Length > 0);
        try
        {
            var merge = MatrixMerge.Of([.. session.Files.Select(file => new ShardFile(file, () => Open(session, file)))]);
            var format = merge.Form is CsvForm ? OutputFormat.Csv : OutputFormat.Jsonl;
            if (session.Parsed.GetValue(asked.Format) is not null && session.Format != format)
            {
                throw new UserError(
                    UserError.Usage, $"the shards are {format.ToString().ToLowerInvariant()}, and merged rows have the format of their shards", "Leave --format out.");
            }

            session.Stream(write =>
            {
                write(merge.Head);
                foreach (var row in merge.Rows())
                {
                    session.StopIfInterrupted();
                    write(row);
                }
            });
        }
        catch (MergeException fault)
        {
            throw new UserError("merge", fault.Message, fault.Help);
        }

        return ExitCode.Fine;
    }

    private static void Refuse(Session session, string option, bool given)
    {
        if (given) throw new UserError(UserError.Usage, $"--merge and {option} exclude one another", "Shards keep the choices that they were made with.");
    }

    private static StreamReader Open(Session session, string file)
    {
        session.StopIfInterrupted();
        try
        {
            if (Directory.Exists(file)) throw new MergeException($"{file} is a folder", "Name the shards in it.");
            var stream = new FileStream(file, FileMode.Open, FileAccess.Read);
            return stream.CanSeek ? new StreamReader(stream)
                : throw new MergeException($"{file} is no ordinary file", "Shards are read twice, so they cannot come through a pipe.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new MergeException($"cannot read {file}: {(fault is FileNotFoundException or DirectoryNotFoundException ? "there is no such file" : fault.Message)}");
        }
    }
}
