using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>Where a file's numbers come from.</summary>
public enum DataOrigin
{
    /// <summary>Made up.</summary>
    Invented,

    /// <summary>Measured on parts.</summary>
    Measured,

    /// <summary>Taken from a publication.</summary>
    Published,
}

/// <summary>The complete hydraulic control of one transmission, as its file describes it. Immutable.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Data">Where the numbers come from.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Unit(string Name, DataOrigin Data, Place Place)
{
    /// <summary>The oil, or null.</summary>
    public Fluid? Fluid { get; init; }

    /// <summary>The joints between castings.</summary>
    public ImmutableArray<Joint> Joints { get; init; } = [];

    /// <summary>The pump, or null for a unit that is fed by signals alone.</summary>
    public Pump? Pump { get; init; }

    /// <summary>The parts, in the order of the file.</summary>
    public ImmutableArray<Part> Parts { get; init; } = [];

    /// <summary>The assemblies that the maker released together.</summary>
    public ImmutableArray<MatchedSet> Matched { get; init; } = [];

    /// <summary>Clutches and brakes.</summary>
    public ImmutableArray<Clutch> Clutches { get; init; } = [];

    /// <summary>Gear states, in shift order.</summary>
    public ImmutableArray<GearState> Gears { get; init; } = [];

    /// <summary>Timed shifts.</summary>
    public ImmutableArray<ShiftProfile> Shifts { get; init; } = [];

    /// <summary>The gear train, or null.</summary>
    public GearSet? GearSet { get; init; }

    /// <summary>Gauge ports.</summary>
    public ImmutableArray<Tap> Taps { get; init; } = [];

    /// <summary>The conditions under which it has to work.</summary>
    public ImmutableArray<Condition> Conditions { get; init; } = Condition.Defaults;

    /// <summary>What it needs besides clutches; empty where what the matched set gives is the measure.</summary>
    public ImmutableArray<Need> Needs { get; init; } = [];

    /// <summary>What the file's author expects of named assemblies.</summary>
    public ImmutableArray<Expectation> Expectations { get; init; } = [];

    /// <summary>When a clutch counts as applied or weak.</summary>
    public Thresholds Thresholds { get; init; } = Thresholds.Default;

    /// <summary>How likely faults are, and how bad.</summary>
    public FaultSettings Faults { get; init; } = FaultSettings.Default;

    /// <summary>What tests cost.</summary>
    public TestCosts TestCosts { get; init; } = TestCosts.Default;

    /// <summary>The part of that name, or null.</summary>
    /// <param name="name">The part's name.</param>
    public Part? FindPart(string name) => Parts.FirstOrDefault(part => part.Name == name);

    /// <summary>The gear of that name, or null.</summary>
    /// <param name="name">The gear's name.</param>
    public GearState? FindGear(string name) => Gears.FirstOrDefault(gear => gear.Name == name);
}

/// <summary>The oil.</summary>
/// <param name="Grade">ISO viscosity grade, or null.</param>
/// <param name="Temperature">Working temperature, or null.</param>
/// <param name="Viscosities">Two given points of viscosity, or empty.</param>
/// <param name="Density">Density at 15 degC, or null.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Fluid(
    int? Grade, Temperature? Temperature, ImmutableArray<ViscosityPoint> Viscosities, Density? Density, Place Place)
{
    /// <summary>Viscosity index (ASTM D2270), which makes a curve of the grade; null when not given.</summary>
    public double? ViscosityIndex { get; init; }
}

/// <summary>A viscosity at a temperature.</summary>
/// <param name="Temperature">The temperature.</param>
/// <param name="Viscosity">The kinematic viscosity there.</param>
public readonly record struct ViscosityPoint(Temperature Temperature, Viscosity Viscosity);

/// <summary>The pump.</summary>
/// <param name="Into">The passage that it feeds.</param>
/// <param name="Displacement">Displacement, or null.</param>
/// <param name="Speeds">Named speeds (<c>idle</c>, <c>road</c>).</param>
/// <param name="Efficiency">Volumetric efficiency, 0 to 1, or null.</param>
/// <param name="Relief">Highest pressure it can make when nothing regulates it, or null.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Pump(
    PassageUse Into, Displacement? Displacement, ImmutableArray<KeyValuePair<string, Speed>> Speeds,
    double? Efficiency, Pressure? Relief, Place Place)
{
    /// <summary>The conditions under which the efficiency was measured; null where it counts as the same at every pressure.</summary>
    public PumpTest? MeasuredAt { get; init; }
}

/// <summary>Conditions under which a pump's efficiency was measured.</summary>
/// <param name="Pressure">Outlet pressure.</param>
/// <param name="Speed">Speed.</param>
/// <param name="Temperature">Temperature of the oil; the unit's own when null.</param>
public sealed record PumpTest(Pressure Pressure, Speed Speed, Temperature? Temperature);

/// <summary>An assembly that its maker released together.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Revisions">A revision of every part, in the order of the unit's parts.</param>
/// <param name="Place">Where it is written.</param>
public sealed record MatchedSet(string Name, ImmutableArray<KeyValuePair<string, string>> Revisions, Place Place);

/// <summary>What a gear sets from outside, and which clutches it needs.</summary>
/// <param name="Name">The gear's name.</param>
/// <param name="Apply">The clutches that the chart applies.</param>
/// <param name="Place">Where it is written.</param>
public sealed record GearState(string Name, ImmutableArray<NameUse> Apply, Place Place)
{
    /// <summary>The manual valve's position, or null for a unit without one.</summary>
    public NameUse? Lever { get; init; }

    /// <summary>Energized solenoids.</summary>
    public ImmutableArray<NameUse> Energize { get; init; } = [];

    /// <summary>Commands to pressure solenoids.</summary>
    public ImmutableArray<Command> Commands { get; init; } = [];

    /// <summary>Pressures fixed from outside.</summary>
    public ImmutableArray<FixedPressure> Signals { get; init; } = [];

    /// <summary>The gear that this state is reached from, where its history matters; null for a start at rest.</summary>
    public NameUse? After { get; init; }

    /// <summary>The ratio (input speed over output speed) that the gear must have; null when not given.</summary>
    public double? Ratio { get; init; }
}

/// <summary>A command to a pressure solenoid: a pressure, or a current read off the solenoid's table.</summary>
/// <param name="Solenoid">The solenoid, by its own name or as <c>part.name</c>.</param>
/// <param name="Pressure">The commanded pressure, or null when a current is given.</param>
/// <param name="Current">The commanded current, or null when a pressure is given.</param>
public readonly record struct Command(NameUse Solenoid, Pressure? Pressure, Current? Current);

/// <summary>A pressure fixed from outside.</summary>
/// <param name="At">The passage.</param>
/// <param name="Pressure">Its pressure.</param>
public readonly record struct FixedPressure(PassageUse At, Pressure Pressure);

/// <summary>A timed shift.</summary>
/// <param name="From">The gear that it leaves.</param>
/// <param name="To">The gear that it enters.</param>
/// <param name="Commands">Command profiles.</param>
/// <param name="InputTorque">Torque at the input, or null.</param>
/// <param name="Place">Where it is written.</param>
public sealed record ShiftProfile(
    NameUse From, NameUse To, ImmutableArray<CommandProfile> Commands, Torque? InputTorque, Place Place);

/// <summary>A command over time.</summary>
/// <param name="Solenoid">The solenoid.</param>
/// <param name="Points">Pressure against time, in rising order of time.</param>
public sealed record CommandProfile(NameUse Solenoid, ImmutableArray<ProfilePoint> Points);

/// <summary>One point of a command profile.</summary>
/// <param name="Time">Time since the shift began.</param>
/// <param name="Pressure">The commanded pressure.</param>
public readonly record struct ProfilePoint(Duration Time, Pressure Pressure);

/// <summary>A gauge port.</summary>
/// <param name="Name">Its name.</param>
/// <param name="At">The passage it reads.</param>
public sealed record Tap(string Name, PassageUse At);

/// <summary>What a gear, or a clutch in it, came to against the chart; from best to worst.</summary>
public enum Verdict
{
    /// <summary>As the chart says.</summary>
    AsCharted,

    /// <summary>Half or double a size that had to be assumed would make it another one.</summary>
    NotDecided,

    /// <summary>A charted clutch has too little pressure, or too little to carry its torque.</summary>
    Weak,

    /// <summary>What the unit needs besides clutches has more pressure than it stands.</summary>
    OverPressure,

    /// <summary>What the unit needs besides clutches has too little oil.</summary>
    Starved,

    /// <summary>A clutch that the chart does not name is applied or weak.</summary>
    Unwanted,

    /// <summary>A charted clutch is not applied.</summary>
    Lost,

    /// <summary>Flow comes to no answer.</summary>
    DidNotConverge,

    /// <summary>No state agrees with itself.</summary>
    NeverSettles,
}

/// <summary>What the file's author expects of an assembly in a gear.</summary>
/// <param name="Assembly">Part to revision; parts left out take the default matched set's revision.</param>
/// <param name="Gear">The gear, or null for the worst over all gears.</param>
/// <param name="Verdict">The verdict expected.</param>
/// <param name="Because">Why, in the author's words, or null.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Expectation(
    ImmutableArray<KeyValuePair<string, string>> Assembly, NameUse? Gear, Verdict Verdict, string? Because, Place Place)
{
    /// <summary>A matched set named instead of single parts, or null.</summary>
    public string? Matched { get; init; }

    /// <summary>Rules that must be found as well; empty when the verdict alone is expected.</summary>
    public ImmutableArray<NameUse> Finds { get; init; } = [];
}

/// <summary>When a clutch counts as applied or weak, as fractions of what the matched set gives it.</summary>
/// <param name="Applied">At least this fraction: applied.</param>
/// <param name="Weak">At least this fraction, but less than applied: weak.</param>
/// <param name="Floor">A clutch's reference is never taken below this fraction of line pressure.</param>
public sealed record Thresholds(double Applied, double Weak, double Floor)
{
    /// <summary>60 %, 20 % and 10 %.</summary>
    public static Thresholds Default { get; } = new(0.6, 0.2, 0.1);

    /// <summary>Line pressure that differs from the matched set's by more than this fraction is low or high. Judgement, no source.</summary>
    public double LineOff { get; init; } = 0.1;

    /// <summary>When a shift is no longer good.</summary>
    public ShiftLimits Shifts { get; init; } = ShiftLimits.Default;
}

/// <summary>When a shift is no longer good. Common practice, no source.</summary>
/// <param name="Flare">Longer than this with too little capacity is a flare, ms.</param>
/// <param name="Rise">The same where the engine has to run up to the lower gear's speed, ms.</param>
/// <param name="TieUp">Longer than this with clutches that work against each other is a tie-up, ms.</param>
/// <param name="Harsh">
/// A clutch that goes from touching to holding in less than this is harsh, ms. Null: in less than half of the time that it takes in the
/// matched set nearest to the assembly.
/// </param>
/// <param name="Delayed">A gear that takes longer than this to hold is delayed, ms.</param>
public sealed record ShiftLimits(double Flare, double Rise, double TieUp, double? Harsh, double Delayed)
{
    /// <summary>60, 400, 60 and 1200 ms; harsh against the matched set.</summary>
    public static ShiftLimits Default { get; } = new(60, 400, 60, null, 1200);
}
