using System.Collections.Immutable;
using System.ComponentModel;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Advice;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Faults;

namespace Circuits.Rendering.Json;

[Description("What may be wrong with a unit, from what was observed, and which test to make next.")]
internal sealed class DiagnoseDocument : VerdictDocument
{
    private const int MostTests = 20;

    private readonly DiagnosisReport report;
    private readonly TestAdvice? advice;
    private readonly int depth;
    private readonly ImmutableArray<string> codes;

    internal DiagnoseDocument(DiagnosisReport report, TestAdvice? advice, int depth) : base("diagnose", report.Assembly, NearestOf(report.Assembly), report.Mode)
    {
        (this.report, this.advice, this.depth) = (report, advice, depth);
        codes = advice is null ? []
            : [.. advice.Candidates.Select(candidate => candidate.Mechanical ?? string.Join(" + ", candidate.Faults.Select(fault => fault.Code)))];
    }

    [Description("What was observed.")] public IEnumerable<EvidenceFields> Evidence => report.Evidence.Select(item => new EvidenceFields(item, report));

    [Description("What of it cannot all be true; when there is any, nothing else was looked at.")]
    public IEnumerable<ContradictionFields> Contradictions => report.Contradictions.Select(pair => new ContradictionFields(pair));

    [Description("Whether the assembly does all of it without any fault; then nothing else was looked at.")] public bool SoundExplains => report.SoundExplains;
    [Bounds(0), Description("Single faults that were looked at.")] public int Faults => report.Faults;
    [Bounds(0), Description("Pairs of faults that were solved.")] public int Pairs => report.Pairs;
    [Description("Whether every pair that may explain everything was solved.")] public bool PairsComplete => report.PairsComplete;

    [Description("What explains everything, likeliest first.")]
    public IEnumerable<CandidateClassFields> Explaining => report.Explaining.Select(known => new CandidateClassFields(known, report));

    [Description("Single faults that explain most, when nothing explains everything.")]
    public IEnumerable<CandidateClassFields> Near => report.Near.Select(known => new CandidateClassFields(known, report));

    [Description("When nothing explains everything: a smallest set of what was told that no single fault explains together.")]
    public IEnumerable<string> Conflict => report.Conflict.Select(item => item.Text);

    [Description("Whether readings under a condition were worked out with oil flowing, for the likeliest candidates.")] public bool Flowing => report.Flowing;

    [Description("Tests, those that tell most for their cost first.")]
    public IEnumerable<TestFields> Tests => advice is null ? [] : advice.Best().Take(MostTests).Select(test => new TestFields(test, codes, []));

    [Description("The tests step by step, or null when none was asked for.")]
    public StepFields? Plan => advice is null || depth <= 0 || report.Explaining.IsEmpty ? null : StepFields.Of(advice.Plan(depth), codes);

    [Description("What is no fault of the hydraulics and looks the same.")] public IEnumerable<Phrase> LookAlikes => report.LookAlikes;
    [Description("Codes of faults that no driver and no gauge notices.")] public IEnumerable<string> Silent => report.Silent.Select(fault => fault.Code);
    public IEnumerable<FindingFields> Findings => FindingFields.Of(DiagnosisFindings.Of(report));
    public IEnumerable<string> Cautions => [Rendering.Cautions.Measuring, Rendering.Cautions.WhoDecides];

    private static ImmutableArray<string> NearestOf(Assembly assembly) =>
        [.. assembly.NearestOf(assembly.Unit.Matched, set => Model.Assembly.Of(assembly.Unit, set)).Select(set => set.Name)];
}

internal sealed class EvidenceFields
{
    private readonly Evidence item;
    private readonly DiagnosisReport report;

    internal EvidenceFields(Evidence item, DiagnosisReport report) => (this.item, this.report) = (item, report);

    [Description("As it was told.")] public string Text => item.Text;
    [Description("What was understood.")] public Phrase Meaning => item.Meaning;
    [Description("Whether the assembly does this without any fault.")] public bool AsItShould => item.Degree([], report.Sound) > 0;
}

internal sealed class ContradictionFields
{
    private readonly Contradiction pair;

    internal ContradictionFields(Contradiction pair) => this.pair = pair;

    public string First => pair.First.Text;
    public string Second => pair.Second.Text;
    public Phrase Why => pair.Why;
}

internal sealed class CandidateClassFields
{
    private readonly CandidateClass known;
    private readonly DiagnosisReport report;

    internal CandidateClassFields(CandidateClass known, DiagnosisReport report) => (this.known, this.report) = (known, report);

    [Description("Its share of all that explains everything.")] public double Share => Fields.Rounded(known.Share, 4);

    [Description("What no gauge and no drive tells apart, likeliest first.")]
    public IEnumerable<CandidateFields> Candidates => known.Members.Select(candidate => new CandidateFields(candidate, report));
}

internal sealed class CandidateFields
{
    private readonly Candidate candidate;
    private readonly DiagnosisReport report;

    internal CandidateFields(Candidate candidate, DiagnosisReport report) => (this.candidate, this.report) = (candidate, report);

    [Bounds(1, 2), Description("One fault or two.")] public IEnumerable<FaultFields> Faults => candidate.Faults.Select(fault => new FaultFields(fault));
    [Description("The higher the likelier; a natural logarithm.")] public double Score => Fields.Rounded(candidate.Score, 4);
    [Description("What is out of the ordinary and it explains.")] public IEnumerable<string> Explains => CandidateWords.Explains(candidate, report);
    [Description("What it lets expect besides.")] public IEnumerable<Phrase> NotTold => CandidateWords.Expects(candidate, report);
    [Description("What contradicts it.")] public IEnumerable<Phrase> Against => CandidateWords.Contradicts(candidate, report);

    [Description("Root mean square distance from the readings; null without readings.")]
    public double? KilopascalsOffReadings => Fields.Rounded(candidate.FromReadings(report.Evidence), 1);
}

internal sealed class FaultFields : Placed
{
    private readonly Fault fault;

    internal FaultFields(Fault fault) : base(fault.Place) => this.fault = fault;

    [Description("Its code, as options and files write it.")] public string Code => fault.Code;
    public string Kind => FaultKinds.Of(fault.Kind).Word;
    public string Element => fault.Element;
    [Description("Its plain name.")] public Phrase Name => fault.Name;
    [Description("How likely it is against others.")] public double Weight => Fields.Rounded(fault.Weight, 6);
}
