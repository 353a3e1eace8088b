using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Completions;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Studies;

namespace Circuits.Cli;

/// <summary><c>check</c>: is a file sound, and do its matched sets and expectations hold.</summary>
internal static class CheckVerb
{
    public static Verb Create(CommonOptions options)
    {
        var changedOnly = new Option<string?>("--changed-only")
        {
            HelpName = "BASE",
            Description = "Only units that git says changed since this branch, tag or commit was left: their file or a part's, committed or not.",
        };
        changedOnly.CompletionSources.Add(_ => ChangedFiles.Branches(".").Select(name => new CompletionItem(name)));
        return new Verb(
            "check", "Checks circuit files like code: the language, every matched set in every gear against its chart, and the file's own "
                + "expectations. A folder stands for every unit file below it.",
            [options.Files, changedOnly, options.Quick, options.FindingsFormat, options.Output, options.Units],
            ["circuits check unit.yaml", "circuits check circuits/ --format json -o report.json", "circuits check circuits/ --changed-only main"],
            session => Run(session, session.Parsed.GetValue(changedOnly)));
    }

    private static int Run(Session session, string? since)
    {
        session.CheckOutput();
        var several = session.Files.Length > 1 || session.Files.Any(Directory.Exists) || since is not null;
        var changed = since is null ? null : new ChangedFiles(since, session.Inputs);
        var before = changed is null ? null : new FormerFiles(changed);
        var answers = new List<CheckedFile>();
        var done = 0;
        foreach (var file in UnitFilesOf(session.Files, session.Inputs))
        {
            session.StopBetweenFiles(done++);
            var read = session.ReadQuietly(file);

            // A file that was named and is not there is a mistake, whatever git says.
            if (changed is null || !File.Exists(file) || read.Files.Any(changed.Has)) answers.Add(Check(file, read, session.Mode, before is null ? null : (since!, before)));
        }

        // What is wrong with a file is this verb's result, not a diagnostic, so that every format carries it.
        if (session.IsFindingsAlone)
            session.Finish([.. answers.Select(answer => new FindingReport(answer.File, answer.Unit, answer.Findings) { Cases = TestedCases.Of(answer) })]);
        else if (session.Format == OutputFormat.Json)
            session.Finish([.. answers.Select(Documents.Of)], array: several);
        else if (answers.Count == 0)
            session.Finish($"no circuit file changed since {Printable.Of(since!)}\n");
        else
            session.Finish(CheckText.Of(answers, session.Text.Units));
        if (answers.Exists(answer => answer.Unit is null)) return ExitCode.CouldNotRun;
        return answers.TrueForAll(answer => answer.Ok) ? ExitCode.Fine : ExitCode.Findings;
    }

    private static ImmutableArray<string> UnitFilesOf(ImmutableArray<string> paths, InputFiles inputs)
    {
        var files = new List<string>();
        foreach (var path in paths) files.AddRange(UnitFilesOf(path, inputs));
        return OptionWords.EachOnce(files);
    }

    private static ImmutableArray<string> UnitFilesOf(string path, InputFiles inputs)
    {
        if (!Directory.Exists(path)) return [path];
        var files = UnitFiles.Below(path, inputs);
        return files.Count > 0 ? [.. files]
            : throw new UserError(UserError.Usage, $"there is no circuit file below {path}", "A circuit file ends in .yaml and begins with format: 1.");
    }

    private static CheckedFile Check(string file, ReadResult read, JudgeMode mode, (string Since, FormerFiles Files)? before)
    {
        if (read.Unit is not { } unit) return new CheckedFile(file, null, [], 0, 0, read.Findings);
        var check = UnitCheck.Run(new UnitJudge(unit, mode));
        var edit = before is var (since, files) ? Compare(file, unit, check, mode, since, files) : null;
        return new CheckedFile(
            file, unit, check.Matched, check.ExpectationsHeld, check.ExpectationsTotal, [.. read.Findings, .. check.Findings, .. edit?.Findings ?? []])
        {
            Expectations = check.Expectations,
            Mode = mode,
            Edit = edit,
        };
    }

    private static EditReport Compare(string file, Unit unit, CheckReport now, JudgeMode mode, string since, FormerFiles files)
    {
        var read = Session.Read(file, files);
        if (read.Unit is { } former) return EditReport.Of(since, VerdictChanges.Of(unit, UnitCheck.Run(new UnitJudge(former, mode)), now, since));
        return EditReport.NotCompared(since, unit, read.Findings.First(finding => finding.Severity == Severity.Error));
    }
}
