using System.Collections.Immutable;
using System.CommandLine;
using System.Security.Cryptography;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Rendering.Html;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Drawing;
using Circuits.Studies.JobSheets;
using Circuits.Studies.Remedies;
using Circuits.Studies.Shifts;

namespace Circuits.Cli;

/// <summary><c>report</c>: what goes with the vehicle, as a sheet to hand over.</summary>
internal sealed class ReportVerb
{
    private const string Job = "job";
    private const string PageForm = "page";
    private const int Digits = 12;
    private const int MostConnections = 6;
    private static readonly ImmutableArray<string> Forms = [PageForm, Job];

    private readonly ChangeOptions changes;

    private readonly Option<string?> form = new("--form") { HelpName = string.Join(" | ", Forms), Description = "The form: page (unless given), one HTML file to hand over, with every gear drawn, every shift plotted, and the checks to make; or job, a job sheet with complaint, cause and correction." };

    private readonly Option<string?> job = new("--job") { HelpName = "text", Description = "The ticket, the vehicle: what names the job, as it is to stand on the sheet." };

    private readonly EvidenceOptions observed;

    private readonly Option<string[]> note = new("--note") { HelpName = "text", Description = "Anything else that belongs on the sheet. May be repeated." };

    private ReportVerb(CommonOptions options) => (changes, observed) = (new ChangeOptions(options), new EvidenceOptions(options));

    public static Verb Create(CommonOptions options)
    {
        var verb = new ReportVerb(options);
        Completes.With(verb.form, [.. Forms]);
        return new Verb(
            "report", "What to hand over, on a page with pictures: verdict, gears, causes, shifts, corrections, checks and cautions; or as a job sheet with complaint, cause and correction.",
            [
                options.Files, verb.form, verb.job, .. verb.observed.All, verb.note, .. verb.changes.All,
                new FormatOption(OutputFormat.Text, OutputFormat.Markdown, OutputFormat.Html), options.Quick, options.Output, options.Units,
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
        if (session.Parsed.GetValue(form) is { } word && !Forms.Contains(word)) throw UserError.Unknown("form", word, [.. Forms]);
        var isPage = IsPage(session);
        if (isPage && session.Files.Length > 1) throw new UserError(UserError.Usage, "a page is of one unit, and several files are named", "Make one page a file, with -o.");
        if (isPage && session.Format == OutputFormat.Markdown) throw new UserError(UserError.Usage, "a page is written as HTML, not as Markdown", "Leave --format out, or add --form job.");
        if (isPage && (session.Plain || (FormatOption.IsGiven(session.Parsed) && session.Format == OutputFormat.Text)))
            throw new UserError(UserError.Usage, "a page is written as HTML, not as text", "Leave the format out, or add --form job.");
        if (!isPage && session.Format == OutputFormat.Html) throw new UserError(UserError.Usage, "a job sheet is not written as HTML", "Leave --form out for the page.");
        var asked = changes.Read(session);
        return PerUnit.Run(session, (unit, file) => Ask(session, unit, file, asked));
    }

    private UnitAnswer Ask(Session session, Unit unit, string file, ChangeSet asked)
    {
        var judge = new UnitJudge(unit, session.Mode);
        var given = new JobGiven(
            session.Parsed.GetValue(job) ?? asked.Job, observed.Complaints(session), [.. session.Parsed.GetValue(note) ?? []], Marks(session, unit, file));
        var assembly = ChangeOptions.After(unit, asked);
        given = Understood(session, judge, assembly, given);
        using var progress = session.SearchProgress("assemblies solved");
        var sheet = JobSheet.Of(judge, assembly, given, new RemedyOptions { Progress = progress.Show }, session.Interrupted);
        if (IsPage(session))
        {
            var content = Content(session, judge, sheet);
            return new UnitAnswer(() => ReportPage.Of(content, session.Text.Units), null, [.. judge.GearsetFaults, .. sheet.Found.Findings]);
        }

        return new UnitAnswer(
            () => session.Format == OutputFormat.Markdown
                ? JobSheetContent.Markdown(sheet, session.Text.Units)
                : JobSheetContent.Text(sheet, session.Text),
            null,
            [.. judge.GearsetFaults, .. sheet.Found.Findings]);
    }

    /// <summary>What of it can be diagnosed. A complaint may be in anyone's words; a reading or a gear that is wrong is a slip.</summary>
    private JobGiven Understood(Session session, UnitJudge judge, Assembly assembly, JobGiven given)
    {
        var reader = new EvidenceReader(judge);
        var complaints = given.Complaints.Zip(observed.ReadComplaints(session, reader)).ToList();
        return given with
        {
            Evidence = [.. complaints.Select(pair => pair.Second.Evidence).OfType<Evidence>(), .. EvidenceOptions.Understood(observed.ReadOthers(session, reader, assembly))],
            NotUnderstood = [.. complaints.Where(pair => pair.Second.Evidence is null).Select(pair => pair.First)],
        };
    }

    private bool IsPage(Session session) => session.Parsed.GetValue(form) is null or PageForm;

    /// <summary>What the page shows besides the sheet.</summary>
    private static ReportContent Content(Session session, UnitJudge judge, JobSheet sheet)
    {
        var assembly = sheet.Found.Assembly;
        var unit = assembly.Unit;
        session.StopIfInterrupted();
        var views = AssemblyViews.Of(judge, assembly);
        var plans = ShiftPlans.Of(unit);
        session.StopIfInterrupted();
        var shifts = plans.IsEmpty ? null : ShiftStudy.Run(assembly, null, ShiftStudy.ConditionsOf(unit), plans);
        var air = AirStudy.Run(assembly, null, MostConnections, session.Interrupted);
        var command = string.Join(' ', session.Parsed.Tokens.Select(token => ShellWord.Of(token.Value)).Prepend("circuits"));
        return new ReportContent(sheet, views, shifts, air, command, ProgramVersion.Number);
    }

    /// <summary>The unit's file and those of its parts, so that the sheet says of which content it speaks.</summary>
    private static ImmutableArray<FileMark> Marks(Session session, Unit unit, string file) =>
    [
        .. unit.Parts.SelectMany(part => part.Revisions).Select(revision => revision.Place.File).Where(name => name.Length > 0).Prepend(file).Distinct()
            .Select(name => new FileMark(name, Fingerprint(session, name))),
    ];

    private static string Fingerprint(Session session, string file)
    {
        try
        {
            using var stream = session.Inputs.Open(file);
            return Convert.ToHexStringLower(SHA256.HashData(stream))[..Digits];
        }
        catch (Exception fault) when (fault is FileReadException or IOException)
        {
            throw new UserError(UserError.Usage, $"{file} can no longer be read");
        }
    }
}
