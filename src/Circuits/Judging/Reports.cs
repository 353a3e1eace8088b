using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Changes;
using Circuits.Judging.Conditions;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>Everything found about one assembly: every gear, and every finding.</summary>
/// <param name="Assembly">The assembly.</param>
/// <param name="NearestMatched">The matched sets that share most parts with it; several when they tie.</param>
/// <param name="Gears">The gears, in the order of the file.</param>
/// <param name="Assumptions">Every size that was assumed, each once.</param>
/// <param name="Findings">What was found, in the order of gears, then places.</param>
public sealed record AssemblyReport(
    Assembly Assembly, ImmutableArray<string> NearestMatched, ImmutableArray<GearReport> Gears,
    ImmutableArray<Assumption> Assumptions, ImmutableArray<Finding> Findings)
{
    /// <summary>What the verdicts rest on.</summary>
    public JudgeMode Mode { get; init; }

    /// <summary>Changes of gear, each at every condition that judges it; empty where they were not timed.</summary>
    public ImmutableArray<ChangeReport> Changes { get; init; } = [];

    /// <summary>What the worst change of gear comes to that the nearest matched set does better; good where there is none.</summary>
    public ShiftVerdict WorstChange => Changes.Where(change => !change.SharedByMatched).Select(change => change.Verdict).DefaultIfEmpty(ShiftVerdict.Good).Max();

    /// <summary>The conditions at which gears were judged; empty where the verdicts rest on the static answer.</summary>
    public ImmutableArray<OperatingPoint> Points { get; init; } = [];

    /// <summary>The worst gear's verdict.</summary>
    public Verdict Verdict => Gears.IsEmpty ? Verdict.AsCharted : Gears.Max(gear => gear.Verdict);
}

/// <summary>One gear of one assembly.</summary>
/// <param name="Gear">The gear's name.</param>
/// <param name="Verdict">The worst of its clutches, or never settles.</param>
/// <param name="Settled">Whether positions and pressures came to agree.</param>
/// <param name="DependsOnHistory">Whether another start leads to another state.</param>
/// <param name="LineKilopascals">Line pressure.</param>
/// <param name="Clutches">Every clutch, in the order of the file.</param>
/// <param name="CrossFeeds">Foreign oil, and where it comes in.</param>
/// <param name="Drive">What the gear train does, or null when the file gives no gear train.</param>
public sealed record GearReport(
    string Gear, Verdict Verdict, bool Settled, bool DependsOnHistory, double LineKilopascals,
    ImmutableArray<ClutchReport> Clutches, ImmutableArray<CrossFeed> CrossFeeds, DriveReport? Drive)
{
    private readonly Lazy<ImmutableArray<PositionReport>>? positions;
    private readonly Lazy<ImmutableArray<PassagePressure>>? pressures;

    /// <summary>Every spool, ball, regulator and solenoid, and what it does.</summary>
    public ImmutableArray<PositionReport> Positions
    {
        get => positions?.Value ?? [];
        init => positions = new(value);
    }

    /// <summary>The pressure of every passage, in the order of the network.</summary>
    public ImmutableArray<PassagePressure> Pressures
    {
        get => pressures?.Value ?? [];
        init => pressures = new(value);
    }

    /// <summary>Works out <see cref="Positions"/> when they are asked for, which takes its time and is not always done.</summary>
    internal Func<ImmutableArray<PositionReport>> PositionsLater
    {
        init => positions = new(value);
    }

    /// <summary>Works out <see cref="Pressures"/> when they are asked for.</summary>
    internal Func<ImmutableArray<PassagePressure>> PressuresLater
    {
        init => pressures = new(value);
    }

    /// <summary>The gear at each condition that judges gears; empty where the static answer alone was asked for.</summary>
    public ImmutableArray<ConditionReport> Conditions { get; init; } = [];

    /// <summary>The condition that decides the verdict: the first with the worst; its pressures are those told. Null where there are none.</summary>
    public ConditionReport? DecidedAt { get; init; }

    /// <summary>When the state does not settle: what goes on and off in turn. Empty otherwise.</summary>
    public ImmutableArray<string> Cycle { get; init; } = [];

    /// <summary>When the state depends on history: what differs, as a sentence each. Empty otherwise.</summary>
    public ImmutableArray<Phrase> Histories { get; init; } = [];
}

/// <summary>Whether a clutch is on.</summary>
public enum ClutchState
{
    /// <summary>No pressure that matters.</summary>
    Released,

    /// <summary>Some pressure, too little to hold.</summary>
    Weak,

    /// <summary>Enough pressure.</summary>
    Applied,

    /// <summary>Joined to neither supply nor exhaust, and still under pressure.</summary>
    Trapped,
}

/// <summary>One clutch in one gear.</summary>
/// <param name="Clutch">Its name.</param>
/// <param name="Charted">Whether the chart applies it in this gear.</param>
/// <param name="State">Whether it is on.</param>
/// <param name="Verdict">State against chart.</param>
/// <param name="Level">Its net pressure as a fraction of line pressure.</param>
/// <param name="Kilopascals">Its net pressure: apply less what release oil takes off.</param>
public sealed record ClutchReport(
    string Clutch, bool Charted, ClutchState State, Verdict Verdict, double Level, double Kilopascals)
{
    /// <summary>Its net pressure.</summary>
    public Pressure Pressure => new(Kilopascals);

    /// <summary>How strongly it is on, trapped or not: applied, weak or released.</summary>
    public ClutchState Strength { get; init; } = State;

    /// <summary>This clutch as it is at a condition.</summary>
    /// <param name="at">What flow gives it there.</param>
    /// <param name="line">Line pressure there, kPa.</param>
    internal ClutchReport At(ClutchAtCondition at, double line) => this with
    {
        State = at.Strength == ClutchState.Released ? ClutchState.Released : State == ClutchState.Trapped ? ClutchState.Trapped : at.Strength,
        Strength = at.Strength,
        Verdict = at.Verdict,
        Kilopascals = at.Kilopascals,
        Level = line > 0 ? at.Kilopascals / line : 0,
    };

    /// <summary>The first place where its oil stops, when it is charted and has too little; else null.</summary>
    public Stop? StoppedAt { get; init; }

    /// <summary>The narrowest opening on its way from supply, or null when it has no supply.</summary>
    public Control? Apply { get; init; }

    /// <summary>The narrowest opening on its way to sump, or null when it has none.</summary>
    public Control? Release { get; init; }

    /// <summary>What its oil passes on its widest way from supply, element by element; empty when it has no supply or is not on.</summary>
    public ImmutableArray<string> SupplyWay { get; init; } = [];

    /// <summary>What its oil passes on its widest way to sump, element by element; empty when it has none or is on.</summary>
    public ImmutableArray<string> SumpWay { get; init; } = [];
}

/// <summary>What stops the oil.</summary>
/// <param name="Element">The element: <c>plate@22</c>, <c>body.select</c>.</param>
/// <param name="Reason">Why no oil passes, in a few words: <c>blanked</c>, <c>wall</c>, <c>valve at rest</c>.</param>
/// <param name="Place">The line to look at.</param>
public sealed record Stop(string Element, Phrase Reason, Place Place);

/// <summary>The narrowest opening on a path.</summary>
/// <param name="Element">The element: <c>plate@22</c>; parallel openings are named with <c>+</c>.</param>
/// <param name="SquareMillimetres">The area; of parallel openings, the sum.</param>
/// <param name="IsPort">Whether it is a valve's own port, so that no hole meters the path.</param>
/// <param name="Place">The line to look at.</param>
public sealed record Control(string Element, double SquareMillimetres, bool IsPort, Place Place)
{
    /// <summary>The diameter of the round hole of that area, in millimetres.</summary>
    public double Millimetres => Math.Sqrt(4 * SquareMillimetres / Math.PI);

    /// <summary>The diameter of the round hole of that area.</summary>
    public Length Diameter => new(Millimetres);
}

/// <summary>Oil of one circuit where, in the matched set and this gear, it does not come.</summary>
/// <param name="Into">The passage that it enters.</param>
/// <param name="From">The passage that it comes from.</param>
/// <param name="Through">The opening that it comes through: <c>plate@23</c>.</param>
/// <param name="Part">The part whose revision has that opening.</param>
/// <param name="Revision">That revision.</param>
/// <param name="Moves">What it moves.</param>
/// <param name="Place">The line to look at.</param>
public sealed record CrossFeed(
    string Into, string From, string Through, string Part, string Revision, ImmutableArray<Moved> Moves, Place Place)
{
    /// <summary>Whether the oil of the two circuits meets in the matched set too, by other ways, all of them together narrower.</summary>
    public bool IsBesideUsual { get; init; }

    /// <summary>Whether it changes nothing that counts: it moves nothing, hardly shifts the pressure of the passage, and takes hardly any oil.</summary>
    public bool IsHarmless { get; init; }
}

/// <summary>What kind of element a position belongs to.</summary>
public enum PositionKind
{
    /// <summary>A two-position spool.</summary>
    Valve,

    /// <summary>A ball.</summary>
    Ball,

    /// <summary>A regulator.</summary>
    Regulator,

    /// <summary>A solenoid.</summary>
    Solenoid,

    /// <summary>A screen, and its bypass.</summary>
    Screen,
}

/// <summary>Where an element stands in a gear.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Element">Its full name, <c>body.select</c>.</param>
/// <param name="Position">Where it stands.</param>
/// <param name="Reference">Where it stands in the matched set, or null when that has no such element.</param>
/// <param name="Place">The line to look at.</param>
public sealed record PositionReport(PositionKind Kind, string Element, Stand Position, Stand? Reference, Place Place);

/// <summary>A passage's pressure in a gear.</summary>
/// <param name="Passage">The passage's full name.</param>
/// <param name="State">What its oil is joined to.</param>
/// <param name="Kilopascals">Its gauge pressure.</param>
public sealed record PassagePressure(string Passage, OilState State, double Kilopascals);

/// <summary>What the gear train does in a gear.</summary>
/// <param name="Mobility">1: a ratio; more: no drive; 0: tie-up.</param>
/// <param name="Ratio">Input speed over output speed, negative for reverse; null without a ratio.</param>
/// <param name="Feel">What the driver feels.</param>
/// <param name="Expected">The ratio that the charted clutches give, or null.</param>
public sealed record DriveReport(int Mobility, double? Ratio, Feel Feel, double? Expected);

/// <summary>One line of the answer to "why": a fact, and the facts that it follows from.</summary>
/// <param name="Fact">The fact.</param>
/// <param name="Place">The line to look at, or null.</param>
/// <param name="Because">The facts that it follows from.</param>
public sealed record TraceFact(Phrase Fact, Place? Place, ImmutableArray<TraceFact> Because)
{
    /// <summary>Whether the last of the facts that it follows from is the next step of the oil's way, and the others are conditions of this step.</summary>
    public bool IsStep { get; init; }
}

/// <summary>Why a clutch or passage has, or lacks, pressure in a gear; and where its oil would leave.</summary>
/// <param name="Gear">The gear.</param>
/// <param name="Of">The clutch or passage.</param>
/// <param name="Apply">How supply reaches it, or where it stops.</param>
/// <param name="Release">How its oil reaches sump, or where that stops.</param>
public sealed record Trace(string Gear, string Of, TraceFact Apply, TraceFact Release)
{
    /// <summary>The condition whose pressures are told; null for those of the static answer.</summary>
    public OperatingPoint? At { get; init; }
}
