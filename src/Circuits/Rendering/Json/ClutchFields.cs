using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Rendering.Json;

/// <summary>What there is to say of a clutch in a gear, but for its name.</summary>
internal abstract class AnyClutchFields(ClutchReport clutch)
{
    [Description("Whether the apply chart names it in this gear.")] public bool Charted => clutch.Charted;
    public ClutchState State => clutch.State;
    public Verdict Verdict => clutch.Verdict;
    [Description("Net pressure as a fraction of the line pressure in that gear.")] public double? Level => Fields.Rounded(clutch.Level, 4);

    [Description("The first place where its oil stops, when it is charted and has too little.")]
    public StopFields? StoppedAt => clutch.StoppedAt is { } stop ? new StopFields(stop) : null;

    [Description("Net pressure: apply less what release oil takes off.")] public double? Kilopascals => Fields.Rounded(clutch.Kilopascals, 3);
    [Description("The narrowest opening on its way from supply.")] public OpeningFields? Apply => OpeningFields.Of(clutch.Apply);
    [Description("The narrowest opening on its way to sump.")] public OpeningFields? Release => OpeningFields.Of(clutch.Release);
}

internal sealed class ClutchFields : AnyClutchFields
{
    private readonly ClutchReport report;

    internal ClutchFields(ClutchReport report) : base(report) => this.report = report;

    [JsonPropertyOrder(-1)] public string Clutch => report.Clutch;
}

/// <summary>A clutch before or after changes, with the ways of its oil.</summary>
internal sealed class ClutchSideFields : AnyClutchFields
{
    private readonly ClutchReport report;

    internal ClutchSideFields(ClutchReport report) : base(report) => this.report = report;

    [JsonPropertyOrder(1), Description("What its oil passes on its widest way from supply, when it is on.")]
    public IEnumerable<string> SupplyWay => report.SupplyWay;

    [JsonPropertyOrder(1), Description("What its oil passes on its widest way to sump, when it is off.")] public IEnumerable<string> SumpWay => report.SumpWay;
}

internal sealed class StopFields : Placed
{
    private readonly Stop stop;

    internal StopFields(Stop stop) : base(stop.Place) => this.stop = stop;

    public string Element => stop.Element;
    public Phrase Reason => stop.Reason;
}

internal sealed class OpeningFields : Placed
{
    private readonly Control control;

    internal OpeningFields(Control control) : base(control.Place) => this.control = control;

    [Description("`plate@22`; parallel openings joined by +.")] public string Element => control.Element;
    [Description("Area; null where nothing restricts.")] public double? SquareMillimetres => Fields.Rounded(control.SquareMillimetres, 4);
    [Description("Diameter of the round hole of that area.")] public double? Millimetres => Fields.Rounded(control.Millimetres, 4);
    [Description("Whether it is a valve's own port: no hole meters the path.")] public bool ValvePort => control.IsPort;

    public static OpeningFields? Of(Control? control) => control is null ? null : new OpeningFields(control);
}

internal sealed class CrossFeedFields : Placed
{
    private readonly CrossFeed feed;

    internal CrossFeedFields(CrossFeed feed) : base(feed.Place) => this.feed = feed;

    [Description("The passage that foreign oil enters.")] public string Into => feed.Into;
    [Description("The passage it comes from.")] public string From => feed.From;
    [Description("The opening.")] public string Through => feed.Through;
    [JsonPropertyOrder(1), Description("The part whose revision has that opening.")] public string Part => feed.Part;
    [JsonPropertyOrder(1)] public string Revision => feed.Revision;
    [JsonPropertyOrder(1), Description("Whether it changes nothing that counts: it moves nothing, hardly shifts the pressure there, and takes hardly any oil.")] public bool Harmless => feed.IsHarmless;
    [JsonPropertyOrder(1), Description("What it moves.")] public IEnumerable<Phrase> Moves => feed.Moves.Select(moved => moved.Phrase);
}

internal sealed class DriveFields
{
    private readonly DriveReport drive;

    internal DriveFields(DriveReport drive) => this.drive = drive;

    [Bounds(0), Description("1: a ratio; more: no drive; 0: tie-up.")] public int Mobility => drive.Mobility;
    [Description("Input speed over output speed, negative for reverse.")] public double? Ratio => Fields.Rounded(drive.Ratio, 4);
    [Description("What the driver feels.")] public Feel Feels => drive.Feel;
    [Description("The ratio that the charted clutches give.")] public double? Expected => Fields.Rounded(drive.Expected, 4);

    public static DriveFields? Of(DriveReport? drive) => drive is null ? null : new DriveFields(drive);
}
