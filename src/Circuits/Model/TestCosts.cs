using System.Collections.Immutable;

namespace Circuits.Model;

/// <summary>How a fault is looked for.</summary>
public enum TestKind
{
    /// <summary>Engine off, lever in a range: push the vehicle.</summary>
    Roll,

    /// <summary>A scan tool works a solenoid.</summary>
    ScanTool,

    /// <summary>A drive in one gear.</summary>
    Drive,

    /// <summary>A gauge at a tap.</summary>
    Gauge,

    /// <summary>Air at a port, the pan off and the unit whole.</summary>
    Air,

    /// <summary>Air at a passage of a face, a joint open.</summary>
    AirOpen,

    /// <summary>A look at an element, the unit apart.</summary>
    Look,

    /// <summary>A pin gauge in a hole, the unit apart.</summary>
    Pin,
}

/// <summary>What a kind of test is called, and what it costs unless the file says otherwise.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Word">Its word in files.</param>
/// <param name="Minutes">Minutes of work. Judgement, no source.</param>
public readonly record struct TestKindInfo(TestKind Kind, string Word, double Minutes);

/// <summary>What tests cost, in minutes of work or any other measure that is the same for all.</summary>
public sealed record TestCosts
{
    /// <summary>Every kind of test, in the order of <see cref="TestKind"/>.</summary>
    public static ImmutableArray<TestKindInfo> Kinds { get; } =
    [
        new(TestKind.Roll, "roll", 3), new(TestKind.ScanTool, "scan-tool", 5), new(TestKind.Drive, "drive", 10), new(TestKind.Gauge, "gauge", 12),
        new(TestKind.Air, "air", 45), new(TestKind.AirOpen, "air-open", 80), new(TestKind.Look, "look", 90), new(TestKind.Pin, "pin", 95),
    ];

    /// <summary>Every cost at its default.</summary>
    public static TestCosts Default { get; } = new();

    /// <summary>Costs that are not the default.</summary>
    public ImmutableArray<KeyValuePair<TestKind, double>> Given { get; init; } = [];

    /// <summary>What a test costs.</summary>
    /// <param name="kind">Its kind.</param>
    public double Of(TestKind kind)
    {
        foreach (var (known, cost) in Given)
        {
            if (known == kind) return cost;
        }

        return Kinds[(int)kind].Minutes;
    }
}
