using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Studies.Hazards;

namespace Circuits.Rendering.Json;

[Description("A failure mode and effects table of an assembly.")]
internal sealed class HazardsDocument : VerdictDocument
{
    private readonly HazardReport report;

    internal HazardsDocument(HazardReport report) : base("hazards", report.Assembly, report.NearestMatched, report.Mode) => this.report = report;

    [Description("What was done to its parts, in words.")] public IEnumerable<Phrase> Changes => report.Assembly.Changes;
    [Description("Every gear of the file, then the states without current that were added.")] public IEnumerable<string> Gears => report.Gears;

    [Description("The scale of severity, worst first.")]
    public IEnumerable<SeverityFields> Scale => SeverityScale.Steps.Select(step => new SeverityFields(step));

    [Description("What the assembly comes to without any fault, worst first.")]
    public IEnumerable<HazardEffectFields> AsFitted => report.AsFitted.Select(effect => new HazardEffectFields(effect));

    [Description("The failure modes, worst first.")] public IEnumerable<HazardFields> Rows => report.Rows.Select(row => new HazardFields(row));
    [Description("What was assumed.")] public IEnumerable<Phrase> Assumptions => report.Assumptions;
    public IEnumerable<FindingFields> Findings => FindingFields.Of(report.Findings);
    [Description("What whoever reads the table must be told.")] public IEnumerable<string> Cautions => HazardsText.CautionsOf(report);
}

internal sealed class SeverityFields
{
    private readonly SeverityStep step;

    internal SeverityFields(SeverityStep step) => this.step = step;

    [Bounds(0, 7), Description("How bad it is, by the scale.")] public int Severity => (int)step.Severity;
    public string Word => step.Word;
    public string Meaning => step.Meaning;
    public bool MustNotBeDriven => step.Severity >= SeverityScale.MustNotBeDriven;
}

internal sealed class HazardFields : Placed
{
    private readonly HazardRow row;

    internal HazardFields(HazardRow row) : base(row.Place) => this.row = row;

    [Description("The failure mode, in words.")] public Phrase Mode => row.Mode;
    [Description("The fault's code, or the change as it was asked for.")] public string Code => row.Code;
    public string Item => row.Item;
    [Description("What the item is for.")] public string Function => row.Function;

    [JsonPropertyOrder(1), Bounds(0), Description("How likely it is against the others; null for what was asked for as a change.")]
    public double? Weight => Fields.Rounded(row.Weight, 4);

    [JsonPropertyOrder(1), Bounds(0, 7), Description("How bad it is, by the scale.")] public int Severity => (int)row.Severity;
    [JsonPropertyOrder(1), Description("The stop rule.")] public bool MustNotBeDriven => row.MustNotBeDriven;

    [JsonPropertyOrder(1), Description("Whether changes of gear were timed with it: in full mode, unless a gear alone already says that it must not be driven.")]
    public bool ChangesTimed => row.ChangesTimed;

    [JsonPropertyOrder(1), Description("What it comes to, worst first; gears in which nothing is felt are left out.")]
    public IEnumerable<HazardEffectFields> Effects => row.Effects.Select(effect => new HazardEffectFields(effect));

    [JsonPropertyOrder(1), Description("The gauge reading that shows it best; null where no gauge port does.")]
    public HazardReadingFields? DetectedBy => row.Reading is { } reading ? new HazardReadingFields(reading) : null;
}

internal sealed class HazardReadingFields
{
    private readonly HazardReading reading;

    internal HazardReadingFields(HazardReading reading) => this.reading = reading;

    public string Tap => reading.Tap;
    public string Gear => reading.Gear;
    public double RightKilopascals => Fields.Rounded(reading.Right, 1);
    public double FoundKilopascals => Fields.Rounded(reading.Found, 1);
}

internal sealed class HazardEffectFields
{
    private readonly HazardEffect effect;

    internal HazardEffectFields(HazardEffect effect) => this.effect = effect;

    public string Gear => effect.Gear;
    [Description("Whether it is a gear in which no solenoid has current.")] public bool NoCurrent => effect.NoCurrent;
    [Bounds(0, 7), Description("How bad it is, by the scale.")] public int Severity => (int)effect.Severity;
    [Description("What the driver feels: the end effect.")] public Feel Feels => effect.Feel;
    [Description("Which clutches are otherwise than they should be: the local effect.")] public IEnumerable<LocalEffect> Local => effect.Local;
}
