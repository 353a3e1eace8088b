using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Studies.Faults;
using Circuits.Studies.Hazards;

namespace Circuits.Cli;

/// <summary><c>hazards</c>: what every single fault comes to, worst first.</summary>
internal sealed class HazardsVerb
{
    private readonly Option<string[]> fault = new("--fault")
    {
        HelpName = "fault",
        Description = "Only this: a fault by its code, its kind or its element (ball-left-out, body.select), or a change as what-if takes it: \"stick select=moved\", "
            + "\"plug plate@22\". May be repeated.",
    };

    private readonly Option<string?> severity = new("--severity")
    {
        HelpName = "0 to 7",
        Description = "The least severity that text shows; 3, from which on the vehicle must not be driven, unless given; 0 with --fault.",
    };

    public static Verb Create(CommonOptions options)
    {
        var verb = new HazardsVerb();
        Completes.FromUnit(verb.fault, options.Files, unit => FaultKinds.All.Select(kind => kind.Word).Concat(FaultLibrary.Of(Assembly.DefaultOf(unit)).Select(each => each.Code)));
        return new Verb(
            "hazards", "What every single fault does in every gear and without current, worst first: a failure mode and effects table, and what must not be driven.",
            [
                options.Files, options.Fit, verb.fault, verb.severity,
                new FormatOption(OutputFormat.Text, OutputFormat.Json, OutputFormat.Csv, OutputFormat.Sarif, OutputFormat.JUnit, OutputFormat.Annotations),
                options.Quick, options.Output, options.Units,
            ],
            ["circuits hazards unit.yaml", "circuits hazards unit.yaml --fit late --fault solenoid-reversed --format csv", "circuits hazards unit.yaml --fault \"stick select=moved\""],
            verb.Run);
    }

    private int Run(Session session)
    {
        if (session.Format == OutputFormat.Csv && session.Files.Length > 1)
            throw new UserError(UserError.Usage, "--format csv takes one circuit file at a time", "A table has one head.");
        return PerUnit.Run(session, (unit, file) => Ask(session, unit, file));
    }

    private UnitAnswer Ask(Session session, Unit unit, string file)
    {
        var assembly = FittedParts.Of(unit, file, session.Fit);
        var words = session.Parsed.GetValue(fault) ?? [];
        var least = Least(session, words.Length > 0);
        using var progress = session.SearchProgress("faults timed");
        var report = HazardStudy.Run(
            assembly, words.Length == 0 ? null : sound => Modes(sound, words, file), Environment.ProcessorCount, session.Mode, progress.Show, session.Interrupted);
        return new UnitAnswer(
            () => session.Format == OutputFormat.Csv ? HazardsCsv.Of(report) : HazardsText.Of(report, least, session.Text),
            () => Documents.Of(report),
            report.Findings);
    }

    private static ImmutableArray<HazardMode> Modes(Assembly assembly, string[] words, string file)
    {
        var library = FaultLibrary.Of(assembly);
        var modes = new List<HazardMode>();
        foreach (var word in words)
        {
            var named = library.Where(each => each.Code == word || each.Element == word || FaultKinds.Of(each.Kind).Word == word).ToList();
            if (named.Count > 0) modes.AddRange(named.Select(each => HazardMode.Of(assembly, each)));
            else modes.Add(Change(assembly, library, word, file));
        }

        return [.. modes.DistinctBy(mode => mode.Code)];
    }

    private static HazardMode Change(Assembly assembly, ImmutableArray<Fault> library, string word, string file)
    {
        var at = word.IndexOf(' ', StringComparison.Ordinal);
        var kind = at < 0 ? word : word[..at];
        if (at < 0 || !ChangeWords.Kinds.Contains(kind))
        {
            throw UserError.Unknown(
                "fault", word, [.. library.Select(each => FaultKinds.Of(each.Kind).Word).Distinct(), .. library.Select(each => each.Code), .. library.Select(each => each.Element).Distinct()], $" in {file}");
        }

        var read = ChangeWords.Read([(kind, $"--fault {kind}", word[(at + 1)..].Trim())]);
        if (read.Set is not { } set) throw UserError.Of(read.Findings);
        return HazardMode.Of(assembly, word, ChangeOptions.Resolve(assembly, set.Changes).Changes);
    }

    private HazardSeverity Least(Session session, bool asked)
    {
        if (session.Parsed.GetValue(severity) is not { } text) return asked ? HazardSeverity.None : SeverityScale.MustNotBeDriven;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var step) && step <= (int)HazardSeverity.Destroys
            ? (HazardSeverity)step
            : throw new UserError(UserError.Usage, $"--severity must be a whole number from 0 to 7, found '{text}'");
    }
}
