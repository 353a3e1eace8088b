using System.Collections.Immutable;

namespace Circuits.Tests.Properties;

/// <summary>
/// A small unit as plain data, apart from the product's own model: <see cref="SpecText"/> writes it as a circuit file,
/// <c>BruteNetwork</c> turns it into a network of its own, and transformations are edits of records.
/// </summary>
/// <param name="Name">The unit's name.</param>
internal sealed record UnitSpec(string Name)
{
    public ImmutableArray<JointSpec> Joints { get; init; } = [];

    public PumpSpec? Pump { get; init; }

    public ImmutableArray<PartSpec> Parts { get; init; } = [];

    public ImmutableArray<MatchedSpec> Matched { get; init; } = [];

    public ImmutableArray<ClutchSpec> Clutches { get; init; } = [];

    public ImmutableArray<GearSpec> Gears { get; init; } = [];

    public PartSpec Part(string name) => Parts.First(part => part.Name == name);

    /// <summary>The first revision of every part.</summary>
    public ImmutableArray<string> FirstChoice => [.. Parts.Select(part => part.Revisions[0].Name)];

    /// <summary>Every choice of one revision of each part.</summary>
    public IEnumerable<ImmutableArray<string>> Choices =>
        Parts.Aggregate(
            new List<ImmutableArray<string>> { ImmutableArray<string>.Empty }.AsEnumerable(),
            (choices, part) => choices.SelectMany(choice => part.Revisions.Select(revision => choice.Add(revision.Name))));
}

/// <summary>A passage by part and name; the sump has no part.</summary>
internal readonly record struct Ref(string Part, string Passage)
{
    public static Ref Sump { get; } = new("", "exhaust");

    public bool IsSump => Part.Length == 0;

    public override string ToString() => IsSump ? Passage : $"{Part}.{Passage}";
}

internal sealed record JointSpec(string Name, string Upper, string Lower, ImmutableArray<string> Sheets);

internal sealed record PumpSpec(Ref Into, double? Relief);

internal sealed record MatchedSpec(string Name, ImmutableArray<string> Revisions);

internal sealed record ClutchSpec(string Name, Ref At, Ref? Release, double Area, double ReleaseArea);

internal sealed record GearSpec(string Name, ImmutableArray<string> Apply)
{
    public string? Lever { get; init; }

    public ImmutableArray<string> Energize { get; init; } = [];

    public ImmutableArray<(string Solenoid, double Kilopascals)> Commands { get; init; } = [];

    public ImmutableArray<(Ref At, double Kilopascals)> Signals { get; init; } = [];
}

/// <summary>A part. With <see cref="File"/> set it is written as a file of its own.</summary>
internal sealed record PartSpec(string Name, string Kind, ImmutableArray<RevisionSpec> Revisions)
{
    public string? File { get; init; }
}

internal sealed record RevisionSpec(string Name)
{
    public ImmutableArray<PassageSpec> Passages { get; init; } = [];

    public ImmutableArray<OpeningSpec> Openings { get; init; } = [];

    public bool IsGasket { get; init; }

    public ImmutableArray<string> OpenExcept { get; init; } = [];

    public ImmutableArray<BallSpec> Balls { get; init; } = [];

    public ImmutableArray<ValveSpec> Valves { get; init; } = [];

    public ImmutableArray<RegulatorSpec> Regulators { get; init; } = [];

    public ImmutableArray<SolenoidSpec> Solenoids { get; init; } = [];

    public ImmutableArray<(string Position, ImmutableArray<PortSpec> Ports)> Lever { get; init; } = [];

    public ImmutableArray<HoleSpec> Restrictions { get; init; } = [];

    public ImmutableArray<HoleSpec> Leaks { get; init; } = [];
}

internal sealed record PassageSpec(string Name, ImmutableArray<(string Joint, string Location)> At)
{
    public string? Circuit { get; init; }
}

/// <summary>The size of an opening: a hole (length 0), a slot, or an area.</summary>
internal readonly record struct SizeSpec(double Width, double Length, double Cut)
{
    public static SizeSpec Hole(double millimetres) => new(millimetres, 0, 0);

    public static SizeSpec Slot(double width, double length) => new(width, length, 0);

    public static SizeSpec Of(double squareMillimetres) => new(0, 0, squareMillimetres);

    public bool IsHole => Cut == 0 && Length == 0;

    public double Area => Cut > 0 ? Cut : Length > 0 ? Width * Length : Math.PI / 4 * Width * Width;
}

internal sealed record OpeningSpec(ImmutableArray<string> At, SizeSpec Size);

/// <summary>A seat: at a location of a joint, or in the casting when <paramref name="To"/> is set.</summary>
internal readonly record struct SeatSpec(string? Joint, string? Location, Ref? To, double Hole);

internal sealed record BallSpec(string Name, Ref Pocket, ImmutableArray<SeatSpec> Seats, double? Diameter);

internal sealed record PortSpec(ImmutableArray<Ref> Passages, double? Area);

internal sealed record ForceSpec(Ref? From, double? Area, double Spring);

internal sealed record ValveSpec(
    string Name, ImmutableArray<PortSpec> Rest, ImmutableArray<PortSpec> Moved, ImmutableArray<ForceSpec> MovedBy,
    ImmutableArray<ForceSpec> HeldBy);

/// <summary>A regulator: spilling when <paramref name="Holds"/> is set, else reducing.</summary>
internal sealed record RegulatorSpec(
    string Name, Ref? Holds, ImmutableArray<Ref> SpillsTo, Ref? From, Ref? Out, Ref? To, double Spring,
    ImmutableArray<(Ref From, double Ratio)> SetBy, double? Port);

internal sealed record SolenoidSpec(string Name, Ref Feed, Ref Out, Ref? To, bool IsPressure, bool AtRestHigh, double? Port);

internal sealed record HoleSpec(Ref A, Ref B, SizeSpec Size);
