using System.Collections.Immutable;
using System.Text;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Rendering.Json;

namespace Circuits.Cli;

/// <summary>What a verb found out about one unit.</summary>
/// <param name="Text">Makes the page for people.</param>
/// <param name="Json">Makes the document for programs; null where the verb has none.</param>
/// <param name="Findings">What was found; a verb whose format is <see cref="CommonOptions.FindingsFormat"/> has every form of them by this alone.</param>
internal sealed record UnitAnswer(Func<string> Text, Func<Document>? Json, ImmutableArray<Finding> Findings)
{
    /// <summary>What was looked at, for forms that also tell what is right; by default, what the findings name.</summary>
    public ImmutableArray<TestedCase> Cases { get; init; } = [];

    /// <summary>Whether any finding is of error level.</summary>
    public bool HasErrors => Findings.Any(finding => finding.Severity == Severity.Error);
}

/// <summary>Runs a verb over each file named, in order.</summary>
internal static class PerUnit
{
    /// <summary>
    /// Reads each file and asks; then writes all answers. A file that cannot be read is diagnosed, the others are answered
    /// all the same, but nothing is put into an output file then.
    /// </summary>
    public static int Run(Session session, Func<Unit, string, UnitAnswer> ask)
    {
        session.CheckOutput();
        if (session.IsFindingsAlone) return RunForm(session, ask);
        var answers = new List<(string File, UnitAnswer Answer)>();
        var unread = false;
        foreach (var file in session.Files)
        {
            session.StopBetweenFiles(answers.Count);
            RefuseFolder(session, file);
            if (session.Read(file) is { } unit) answers.Add((file, ask(unit, file)));
            else unread = true;
        }

        if (answers.Count > 0 && !(unread && session.WritesFile)) Write(session, answers);
        if (unread) return ExitCode.CouldNotRun;
        return answers.Any(answer => answer.Answer.HasErrors) ? ExitCode.Findings : ExitCode.Fine;
    }

    // A form carries findings whatever they are about, so a file that cannot be read has its place in it.
    private static int RunForm(Session session, Func<Unit, string, UnitAnswer> ask)
    {
        var reports = new List<FindingReport>();
        foreach (var file in session.Files)
        {
            session.StopBetweenFiles(reports.Count);
            RefuseFolder(session, file);
            var read = session.ReadQuietly(file);
            var answer = read.Unit is { } unit ? ask(unit, file) : null;
            reports.Add(new FindingReport(file, read.Unit, [.. read.Findings, .. answer?.Findings ?? []]) { Cases = answer?.Cases ?? [] });
        }

        session.Finish(reports);
        if (reports.Any(report => report.Unit is null)) return ExitCode.CouldNotRun;
        return reports.Any(report => report.Findings.Any(finding => finding.Severity == Severity.Error)) ? ExitCode.Findings : ExitCode.Fine;
    }

    /// <summary>The gears named by <c>--gear</c>, in the order of the file; all when none is named.</summary>
    /// <exception cref="UserError">The unit has no such gear.</exception>
    public static ImmutableArray<string> Gears(Session session, Unit unit, string file)
    {
        var known = unit.Gears.Select(gear => gear.Name).ToImmutableArray();
        foreach (var gear in session.Gears)
        {
            if (!known.Contains(gear)) throw UserError.Unknown("gear", gear, known, $" in {file}");
        }

        return session.Gears.Length == 0 ? known : [.. known.Where(session.Gears.Contains)];
    }

    private static void Write(Session session, List<(string File, UnitAnswer Answer)> answers)
    {
        var several = session.Files.Length > 1;
        if (session.Format == OutputFormat.Json)
        {
            session.Finish([.. answers.Select(answer => answer.Answer.Json?.Invoke() ?? throw new InvalidOperationException("The verb has no JSON."))], array: several);
            return;
        }

        var text = new StringBuilder();
        foreach (var (file, answer) in answers)
        {
            if (text.Length > 0) text.Append('\n');
            if (several) text.Append("file ").Append(Rendering.Printable.Of(file)).Append('\n');
            text.Append(answer.Text());
        }

        session.Finish(text.ToString());
    }

    /// <summary>Refuses a folder where a circuit file is expected.</summary>
    /// <exception cref="UserError">It is one.</exception>
    public static void RefuseFolder(Session session, string folder)
    {
        if (!Directory.Exists(folder)) return;
        var units = UnitFiles.Below(folder, session.Inputs);
        throw new UserError(
            UserError.Usage, $"{folder} is a folder",
            units.Count == 0 ? "Name a circuit file." : $"Name one of its circuit files: {string.Join(", ", units.Take(8))}{(units.Count > 8 ? ", ..." : "")}");
    }
}
