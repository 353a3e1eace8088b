using System.Collections.Immutable;
using System.CommandLine;
using System.Security.Cryptography;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Rendering.Pages;
using Circuits.Studies.Drawing;
using Circuits.Studies.JobSheets;
using Circuits.Studies.Remedies;
using Circuits.Studies.Shifts;

namespace Circuits.Cli;

/// <summary><c>report</c>: what goes with the vehicle, as a sheet to hand over.</summary>
internal sealed class ReportVerb
{
    private const string Page = "page";
    private const string Job = "job";
    private const int Digits = 12;
    private static readonly ImmutableArray<string> Forms = [Page, Job];

    private readonly ChangeOptions changes;

    private readonly Option<string?> form = new("--form") { HelpName = string.Join(" | ", Forms), Description = "The form: page, one HTML file with drawings, unless given; or job, a job sheet with complaint, cause and correction." };

    private readonly Option<string?> job = new("--job") { HelpName = "text", Description = "The ticket, the vehicle: what names the job, as it is to stand on the sheet." };

    private readonly Option<string[]> complaint = new("--complaint") { HelpName = "text", Description = "What the driver complains of, as it is to stand on the sheet. May be repeated." };

    private readonly Option<string[]> note = new("--note") { HelpName = "text", Description = "Anything else that belongs on the sheet. May be repeated." };

    private ReportVerb(CommonOptions options) => changes = new ChangeOptions(options);

    public static Verb Create(CommonOptions options)
    {
        var verb = new ReportVerb(options);
        Completes.With(verb.form, [.. Forms]);
        return new Verb(
            "report", "A report to hand over, as one HTML file that opens anywhere, or as a job sheet: complaint, cause, correction, parts as found, evidence, assumptions, cautions.",
            [
                options.Files, verb.form, verb.job, verb.complaint, verb.note, .. verb.changes.All,
                new FormatOption(OutputFormat.Text, OutputFormat.Markdown), options.Output, options.Units,
            ],
            [
                "circuits report unit.yaml --fit plate=2 --complaint \"no reverse\" -o report.html",
                "circuits report unit.yaml --form job --job \"ticket 17\" --fit late,plate=1 --format markdown -o job.md",
            ],
            verb.Run);
    }

    private int Run(Session session)
    {
        session.CheckOutput([.. changes.Files(session)]);
        var word = session.Parsed.GetValue(form) ?? Page;
        if (!Forms.Contains(word)) throw UserError.Unknown("form", word, [.. Forms]);
        if (word == Page)
        {
            if (session.Format != OutputFormat.Text) throw new UserError(UserError.Usage, "a page is HTML and has no other format", "Leave out --format, or ask for --form job.");
            if (session.Files.Count > 1) throw new UserError(UserError.Usage, $"a page is of one unit, and {session.Files.Count} files are named", "Make one page a file, with -o.");
        }

        var asked = changes.Read(session);
        return PerUnit.Run(session, (unit, file) => Ask(session, unit, file, asked, word == Page));
    }

    private UnitAnswer Ask(Session session, Unit unit, string file, ChangeSet asked, bool page)
    {
        var judge = new UnitJudge(unit);
        var given = new JobGiven(
            session.Parsed.GetValue(job) ?? asked.Job, [.. session.Parsed.GetValue(complaint) ?? []], [.. session.Parsed.GetValue(note) ?? []], Marks(unit, file));
        using var progress = session.SearchProgress("assemblies solved");
        var sheet = JobSheet.Of(judge, ChangeOptions.After(unit, asked), given, new RemedyOptions { Progress = progress.Show }, session.Interrupted);
        return new UnitAnswer(
            () => page ? Html(session, judge, sheet) : session.Format == OutputFormat.Markdown
                ? JobSheetContent.Markdown(sheet, session.Text.Units)
                : JobSheetContent.Text(sheet, session.Text),
            _ => { },
            [.. judge.GearsetFaults, .. sheet.Found.Findings]);
    }

    private static string Html(Session session, UnitJudge judge, JobSheet sheet)
    {
        var (unit, assembly) = (judge.Unit, sheet.Found.Assembly);
        var plans = unit.Pump is null ? [] : ShiftPlans.Of(unit);
        var shifts = plans.IsEmpty ? null : ShiftStudy.Run(assembly, null, ShiftStudy.ConditionsOf(unit), plans);
        ImmutableArray<string> command = ["circuits", .. session.Parsed.Tokens.Select(token => token.Value)];
        using var text = new StringWriter { NewLine = "\n" };
        ReportPage.Write(text, new PageReport(sheet, AssemblyViews.Of(judge, assembly), shifts, command, ProgramVersion.Full), session.Text.Units);
        return text.ToString();
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
