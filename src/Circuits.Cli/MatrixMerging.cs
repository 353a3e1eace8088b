using Circuits.Reading;
using Circuits.Rendering;
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
            return new StreamReader(session.Inputs.Open(file));
        }
        catch (FileReadException fault)
        {
            throw new MergeException($"{file} {fault.Reason}", fault.Help);
        }
    }
}
