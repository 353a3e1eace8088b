namespace Circuits.Studies.Identify;

/// <summary>What a trait is about.</summary>
public enum TraitKind
{
    /// <summary>A round hole of a sheet.</summary>
    Hole,

    /// <summary>A slot of a sheet.</summary>
    Slot,

    /// <summary>An opening of a sheet, whatever its shape.</summary>
    Opening,

    /// <summary>An orifice cup pressed into a sheet.</summary>
    Cup,

    /// <summary>Several holes of a sheet at one location.</summary>
    HoleCount,

    /// <summary>A gasket's cut-out where it is open without saying so.</summary>
    Window,

    /// <summary>A casting's cavity at a location; solid metal is its absence.</summary>
    Passage,

    /// <summary>A wall of a casting between two locations.</summary>
    Rib,

    /// <summary>A cavity of a casting that joins two locations.</summary>
    Track,

    /// <summary>A fixed hole between two passages, inside a part.</summary>
    Restriction,

    /// <summary>A ball's seat inside a casting.</summary>
    Seat,

    /// <summary>A ball in its pocket.</summary>
    Ball,

    /// <summary>How many balls a set has.</summary>
    BallCount,

    /// <summary>How many balls of a size a set has.</summary>
    BallCountOfSize,

    /// <summary>A spool valve.</summary>
    Valve,

    /// <summary>A regulator.</summary>
    Regulator,

    /// <summary>A solenoid.</summary>
    Solenoid,

    /// <summary>A solenoid whose outlet has its feed's pressure when dead.</summary>
    DeadHigh,

    /// <summary>A solenoid that holds a pressure instead of switching.</summary>
    HoldsPressure,

    /// <summary>An accumulator.</summary>
    Accumulator,

    /// <summary>A screen or filter.</summary>
    Screen,

    /// <summary>The bypass beside a screen's mesh.</summary>
    Bypass,

    /// <summary>How many friction faces a clutch has.</summary>
    FaceCount,

    /// <summary>A mark that the file's author wrote down.</summary>
    Mark,
}

/// <summary>How a person finds a trait out, from the easiest to the hardest.</summary>
public enum Means
{
    /// <summary>Looking at the clean part.</summary>
    Look,

    /// <summary>Counting.</summary>
    Count,

    /// <summary>Looking before the loose pieces are taken out.</summary>
    LookAsFound,

    /// <summary>Passing a wire from one face of the casting to another.</summary>
    Wire,

    /// <summary>The largest pin gauge or drill shank that goes in.</summary>
    PinGauge,

    /// <summary>A caliper or micrometer.</summary>
    Caliper,

    /// <summary>Blowing gently through the part.</summary>
    Air,

    /// <summary>A solenoid tester that shows pressure against current.</summary>
    Tester,
}

/// <summary>What makes two traits of a part the same trait.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Subject">Which one: locations, or an element's name.</param>
/// <param name="Sized">Whether its size is meant, not its presence.</param>
public readonly record struct TraitKey(TraitKind Kind, string Subject, bool Sized);

/// <summary>Something that a person at a bench can find out about a part.</summary>
/// <param name="Part">The part.</param>
/// <param name="Key">Which trait of the part it is.</param>
/// <param name="Phrase">What it is called, <c>slot at 22-23</c>; the same words are understood when they are typed in.</param>
/// <param name="Means">How it is found out.</param>
public sealed record Trait(string Part, TraitKey Key, string Phrase, Means Means)
{
    /// <summary>What helps to find it, or null: the passage that a location belongs to.</summary>
    public string? Detail { get; init; }

    /// <summary>Of what is counted: one of it, <c>ball of 6 mm</c>, as its phrase names several; else null.</summary>
    public string? One { get; init; }

    /// <summary>The size of the balls that are counted, or null.</summary>
    public BenchSize? Size { get; init; }

    /// <summary>Traits that a part cannot lack when it has this one.</summary>
    internal IEnumerable<TraitKey> Implied { get; init; } = [];

    /// <summary>Traits that a part cannot have when it has this one.</summary>
    internal IEnumerable<TraitKey> Excluded { get; init; } = [];
}
