using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Findings;
using Circuits.Studies.AirCheck;

namespace Circuits.Rendering.Json;

[Description("A plan to check an assembly with air.")]
internal sealed class AirCheckDocument : AssemblyDocument
{
    private readonly AirReport report;

    internal AirCheckDocument(AirReport report) : base("air-check", report.Assembly) => this.report = report;

    [Description("Where the manual valve stands; null for a unit without one.")] public string? Lever => report.Lever;
    [Bounds(0), Description("How many faults the assembly may have.")] public int Faults => report.Faults.Length;

    [Description("The connections, in the order in which they show most.")]
    public IEnumerable<ConnectionFields> Connections => report.Connections.Select(connection => new ConnectionFields(connection));

    [Description("Connections that are not part of the plan; adds counts what no connection of the plan shows.")]
    public IEnumerable<ConnectionFields> Others => report.Others.Select(connection => new ConnectionFields(connection));

    [Description("Codes of the faults that no connection of the plan shows.")] public IEnumerable<string> Blind => report.Blind.Select(fault => fault.Code);
    [Description("What was assumed of sizes that are not given.")] public IEnumerable<Phrase> Assumptions => report.Assumptions;
    [Description("What whoever lets air in must be told.")] public IEnumerable<string> Cautions => Rendering.Cautions.ForAir;
}

internal sealed class ConnectionFields : Placed
{
    private readonly AirConnection connection;

    internal ConnectionFields(AirConnection connection) : base(connection.Port.Place) => this.connection = connection;

    [Description("Its name; of one unit no two share it.")] public string Port => connection.Port.Name;
    [Description("A gauge port, a clutch's feed, or a passage on the open face of a joint.")] public AirPortKind Kind => connection.Port.Kind;
    [Description("The passage that air is let into.")] public string Passage => connection.Port.Passage.ToString();
    [Description("The joint that is open, or null while the unit is whole.")] public string? Joint => connection.Port.Joint;

    [Description("On a face, where the passage opens: air goes in at the first, the others are covered.")]
    public IEnumerable<string> Locations => connection.Port.Locations;

    [JsonPropertyOrder(1), Bounds(0), Description("How many faults show here.")] public int Shows => connection.Shows;
    [JsonPropertyOrder(1), Bounds(0), Description("How many of them show at no connection before it.")] public int Adds => connection.Adds;

    [JsonPropertyOrder(1), Bounds(0, 1), Description("The part of the weight of all faults that shows here or at a connection before it.")]
    public double Share => Fields.Rounded(connection.Share, 4);

    [JsonPropertyOrder(1), Description("Whether valves and balls come to rest; nothing else counts when they do not.")]
    public bool Settled => connection.Right.Settled;

    [JsonPropertyOrder(1)]
    public IEnumerable<ClutchMoveFields> Clutches => connection.Right.Clutches.Select(clutch => new ClutchMoveFields(clutch.Key, clutch.Value));

    [JsonPropertyOrder(1), Description("Where air comes out, most first.")]
    public IEnumerable<HissFields> Hisses => connection.Right.Hisses.Select(hiss => new HissFields(hiss));

    [JsonPropertyOrder(1), Description("Stronger air than this makes a spring give way, and the outcome may be another one; null where no spring is met.")]
    public double? HoldsBelowKilopascals => connection.Right.GivesWay is null ? null : Fields.Rounded(connection.Right.HoldsBelow, 1);

    [JsonPropertyOrder(1), Description("What gives way then.")] public string? GivesWay => connection.Right.GivesWay;

    [JsonPropertyOrder(1), Description("What else may be noticed, most likely first, and what it would mean.")]
    public IEnumerable<SignFields> Otherwise => connection.Meanings.Select(meaning => new SignFields(meaning));
}

internal sealed class ClutchMoveFields
{
    private readonly string name;
    private readonly AirMove move;

    internal ClutchMoveFields(string name, AirMove move) => (this.name, this.move) = (name, move);

    public string Clutch => name;
    public AirMove Move => move;
}

internal sealed class HissFields : Placed
{
    private readonly AirHiss hiss;

    internal HissFields(AirHiss hiss) : base(hiss.Place) => this.hiss = hiss;

    [Description("Where, in words.")] public string At => hiss.At;
    [Description("Whether it is heard beside what else comes out.")] public bool Heard => hiss.Heard;

    [Bounds(0), Description("The hole that would let out as much at the full pressure of the air.")]
    public double SquareMillimetres => Fields.Rounded(hiss.SquareMillimetres, 3);
}

internal sealed class SignFields
{
    private readonly AirMeaning meaning;

    internal SignFields(AirMeaning meaning) => this.meaning = meaning;

    [Description("A clutch stays or moves against the rule; air comes out, or does not.")] public AirSignKind Sign => meaning.Sign.Kind;
    [Description("The clutch, or where air comes out.")] public string At => meaning.Sign.At;
    [Description("Codes of the faults that show so, likeliest first.")] public IEnumerable<string> Faults => meaning.Faults.Select(fault => fault.Code);
}
