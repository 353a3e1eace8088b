using Circuits.Judging;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Studies;

namespace Circuits.Cli;

/// <summary><c>check</c>: is a file sound, and do its matched sets and expectations hold.</summary>
internal static class CheckVerb
{
    public static Verb Create(CommonOptions options) => new(
        "check", "Checks circuit files like code: the language, every matched set in every gear against its chart, and the file's own "
            + "expectations. A folder stands for every unit file below it.",
        [options.Files, options.Format, options.Output, options.Units],
        ["circuits check unit.yaml", "circuits check circuits/ --format json -o report.json"],
        Run);

    private static int Run(Session session)
    {
        session.CheckOutput();
        var folders = session.Files.Any(Directory.Exists);
        var files = session.Files.SelectMany(UnitFilesOf).Distinct().ToList();
        var answers = new List<CheckedFile>();
        foreach (var file in files)
        {
            session.StopIfInterrupted();
            answers.Add(Check(file));
        }

        // What is wrong with a file is this verb's result, not a diagnostic, so that every format carries it.
        if (session.Format == OutputFormat.Json)
            session.Finish([.. answers.Select(answer => (Action<System.Text.Json.Utf8JsonWriter>)(json => CheckJson.Write(json, answer)))], array: folders || session.Files.Count > 1);
        else
            session.Finish(CheckText.Of(answers, session.Text.Units));
        if (answers.Any(answer => answer.Unit is null)) return ExitCode.CouldNotRun;
        return answers.All(answer => answer.Ok) ? ExitCode.Fine : ExitCode.Findings;
    }

    private static IReadOnlyList<string> UnitFilesOf(string path)
    {
        if (!Directory.Exists(path)) return [path];
        var files = UnitFiles.Below(path);
        return files.Count > 0 ? files
            : throw new UserError(UserError.Usage, $"there is no circuit file below {path}", "A circuit file ends in .yaml and begins with format: 1.");
    }

    private static CheckedFile Check(string file)
    {
        var read = CircuitReader.ReadFile(file);
        if (read.Unit is not { } unit) return new CheckedFile(file, null, [], 0, 0, read.Findings);
        var check = UnitCheck.Run(new UnitJudge(unit));
        return new CheckedFile(
            file, unit, check.Matched, check.ExpectationsHeld, check.ExpectationsTotal, [.. read.Findings, .. check.Findings]);
    }
}
