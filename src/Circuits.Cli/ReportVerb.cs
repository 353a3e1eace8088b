using System.Collections.Immutable;
using System.CommandLine;
using System.Security.Cryptography;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Studies.JobSheets;
using Circuits.Studies.Remedies;

namespace Circuits.Cli;

/// <summary><c>report</c>: what goes with the vehicle, as a sheet to hand over.</summary>
internal sealed class ReportVerb
{
    private const string Job = "job";
    private const int Digits = 12;
    private static readonly ImmutableArray<string> Forms = [Job];

    private readonly ChangeOptions changes;

    private readonly Option<string?> form = new("--form") { HelpName = string.Join(" | ", Forms), Description = "The form: job, a job sheet with complaint, cause and correction." };

    private readonly Option<string?> job = new("--job") { HelpName = "text", Description = "The ticket, the vehicle: what names the job, as it is to stand on the sheet." };

    private readonly Option<string[]> complaint = new("--complaint") { HelpName = "text", Description = "What the driver complains of, as it is to stand on the sheet. May be repeated." };

    private readonly Option<string[]> note = new("--note") { HelpName = "text", Description = "Anything else that belongs on the sheet. May be repeated." };

    private ReportVerb(CommonOptions options) => changes = new ChangeOptions(options);

    public static Verb Create(CommonOptions options)
    {
        var verb = new ReportVerb(options);
        Completes.With(verb.form, [.. Forms]);
        return new Verb(
            "report", "A job sheet to hand over: complaint, cause, correction, the parts as found, the evidence, assumptions and cautions.",
            [
                options.Files, verb.form, verb.job, verb.complaint, verb.note, .. verb.changes.All,
                new FormatOption(OutputFormat.Text, OutputFormat.Markdown), options.Output, options.Units,
            ],
            [
                "circuits report unit.yaml --form job --fit plate=2 --complaint \"no reverse\"",
                "circuits report unit.yaml --form job --job \"ticket 17\" --fit late,plate=1 --format markdown -o job.md",
            ],
            verb.Run);
    }

    private int Run(Session session)
    {
        session.CheckOutput([.. changes.Files(session)]);
        if (session.Parsed.GetValue(form) is { } word && !Forms.Contains(word)) throw UserError.Unknown("form", word, [.. Forms]);
        var asked = changes.Read(session);
        return PerUnit.Run(session, (unit, file) => Ask(session, unit, file, asked));
    }

    private UnitAnswer Ask(Session session, Unit unit, string file, ChangeSet asked)
    {
        var judge = new UnitJudge(unit);
        var given = new JobGiven(
            session.Parsed.GetValue(job) ?? asked.Job, [.. session.Parsed.GetValue(complaint) ?? []], [.. session.Parsed.GetValue(note) ?? []], Marks(unit, file));
        using var progress = session.SearchProgress("assemblies solved");
        var sheet = JobSheet.Of(judge, ChangeOptions.After(unit, asked), given, new RemedyOptions { Progress = progress.Show }, session.Interrupted);
        return new UnitAnswer(
            () => session.Format == OutputFormat.Markdown
                ? JobSheetContent.Markdown(sheet, session.Text.Units)
                : JobSheetContent.Text(sheet, session.Text),
            _ => { },
            [.. judge.GearsetFaults, .. sheet.Found.Findings]);
    }

    /// <summary>The unit's file and those of its parts, so that the sheet says of which content it speaks.</summary>
    private static ImmutableArray<FileMark> Marks(Unit unit, string file) =>
    [
        .. unit.Parts.SelectMany(part => part.Revisions).Select(revision => revision.Place.File).Where(name => name.Length > 0).Prepend(file).Distinct()
            .Select(name => new FileMark(name, Fingerprint(name))),
    ];

    private static string Fingerprint(string file)
    {
        try
        {
            using var stream = File.OpenRead(file);
            return Convert.ToHexStringLower(SHA256.HashData(stream))[..Digits];
        }
        catch (IOException)
        {
            throw new UserError(UserError.Usage, $"{file} can no longer be read");
        }
    }
}
