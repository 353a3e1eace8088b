using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Studies.Advice;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Faults;
using Circuits.Studies.Identify;

namespace Circuits.Cli;

/// <summary><c>diagnose</c>: from what is observed back to what may be wrong.</summary>
internal sealed class DiagnoseVerb
{
    private const int DeepestPlan = 8;

    private readonly EvidenceOptions observed;

    private readonly Option<string[]> cleared = Make("--cleared", "element", "What was checked and is right: plate@13, body.two-way, or a fault's code; several go with commas.");

    private readonly Option<string[]> seen = Make("--seen", "phrase", "What was seen of a part, as for identify: \"plate: slot at 6-7\".");

    private readonly Option<string[]> notSeen = Make("--not-seen", "phrase", "What was looked for on a part and is not there.");

    private readonly Option<string[]> measured = Make("--measured", "what=size", "What was measured of a part, as for identify: plate@13=3.0mm.");

    private readonly Option<bool> singles = new("--singles") { Description = "Single faults alone; without it, pairs of faults too." };

    private readonly Option<string?> plan = new("--plan")
    {
        HelpName = "depth",
        Description = $"Shows the tests step by step, that many deep, at most {DeepestPlan}.",
    };

    private DiagnoseVerb(CommonOptions options) => observed = new EvidenceOptions(options);

    public static Verb Create(CommonOptions options)
    {
        var it = new DiagnoseVerb(options);
        return new Verb(
            "diagnose", "From complaints, gauge readings and what was found, back to the faults that explain all of it, likeliest first; and the test "
                + "that tells most for its cost.",
            [
                options.Files, .. it.observed.All, it.cleared, it.seen, it.notSeen, it.measured, options.Fit, it.singles, it.plan, options.Quick, options.FindingsFormat,
                options.Output, options.Units,
            ],
            [
                "circuits diagnose unit.yaml --complaint \"no reverse\" --healthy 1,2", "circuits diagnose unit.yaml --complaint \"flare 2-3\" --reading direct@3=310kPa --plan 3",
                "circuits diagnose unit.yaml --complaint \"no 3\" --air \"direct=direct does not move; hiss: clutch direct\"",
            ],
            session => PerUnit.Run(session, (unit, file) => it.Ask(session, unit, file)));
    }

    private UnitAnswer Ask(Session session, Unit unit, string file)
    {
        var assembly = FittedParts.Of(unit, file, session.Fit);
        var depth = Depth(session);
        var judge = new UnitJudge(unit, session.Mode);
        var evidence = Evidence(session, judge, assembly);
        if (evidence.IsEmpty)
        {
            throw new UserError(
                UserError.Usage, "diagnose needs something that was observed",
                "Tell what is wrong with --complaint \"no reverse\" --reading tap@gear=pressure or --air port=noticed; what is right, too, with --healthy.");
        }

        var solver = new EffectSolver(judge, assembly);
        var report = DiagnosisStudy.Run(
            solver, evidence, new DiagnosisOptions { Pairs = !session.Parsed.GetValue(singles), Threads = Environment.ProcessorCount }, session.Interrupted);
        var advice = report.Explaining.IsEmpty ? null : TestAdvice.For(solver, report);
        return new UnitAnswer(
            () => DiagnoseText.Of(report, advice, depth, session.Text),
            () => Documents.Of(report, advice, depth),
            [.. judge.GearsetFaults, .. DiagnosisFindings.Of(report)]);
    }

    private ImmutableArray<Evidence> Evidence(Session session, UnitJudge judge, Assembly assembly)
    {
        var reader = new EvidenceReader(judge);
        var faults = new Lazy<ImmutableArray<Fault>>(() => FaultLibrary.Of(assembly));
        var read = observed.ReadComplaints(session, reader).Concat(observed.ReadOthers(session, reader, assembly))
            .Concat(OptionWords.Items(Values(cleared)).Select(text => EvidenceReader.Cleared(text, faults.Value)));
        return [.. EvidenceOptions.Understood(read), .. Parts(judge.Unit, assembly, Values(seen), Values(notSeen), Values(measured))];

        string[] Values(Option<string[]> option) => session.Parsed.GetValue(option) ?? [];
    }

    /// <summary>What was found of parts, as identify understands it: which revisions each may be.</summary>
    private static IEnumerable<Evidence> Parts(Unit unit, Assembly assembly, string[] seen, string[] notSeen, string[] measured)
    {
        if (seen.Length + notSeen.Length + measured.Length == 0) yield break;
        ImmutableArray<PartTraits> traits = [.. unit.Parts.Select(part => PartTraits.Of(unit, part))];
        var reader = new ObservationReader(traits);
        IEnumerable<ObservationReading> readings =
        [
            .. seen.Select(text => reader.Look(text, seen: true)), .. notSeen.Select(text => reader.Look(text, seen: false)), .. measured.Select(reader.Measured),
        ];
        foreach (var read in readings)
        {
            if (read.Observation is not { } observation) throw new UserError(UserError.Usage, read.Problem!, read.Help);
            var part = unit.FindPart(observation.Part)!;
            ImmutableArray<string> may =
                [.. part.Revisions.Where((_, index) => observation.Admits(index, Identification.DefaultTolerance)).Select(revision => revision.Name)];
            yield return new Evidence.PartIs(
                observation.Text, Phrase.Of($"{part.Name}: {observation.Meaning} ({(may.IsEmpty ? Phrase.Of($"no revision that is known") : Phrase.Of($"revision {string.Join(" or ", may)}"))})"), part.Name, may,
                assembly.Revisions[unit.Parts.IndexOf(part)].Name);
        }
    }

    private int Depth(Session session)
    {
        if (session.Parsed.GetValue(plan) is not { } text) return 0;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var depth) && depth is >= 1 and <= DeepestPlan
            ? depth
            : throw new UserError(UserError.Usage, $"--plan must be a whole number from 1 to {DeepestPlan}, found '{text}'");
    }

    private static Option<string[]> Make(string name, string value, string description) => new(name) { HelpName = value, Description = description + " May be repeated." };
}
