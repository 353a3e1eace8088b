using Circuits.Findings;

namespace Circuits.Judging;

/// <summary>What the driver feels in a gear, or on the way into it.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Gear">The gear.</param>
public sealed record Feel(FeelKind Kind, string Gear) : IWorded
{
    /// <summary>Nothing out of the ordinary; in whichever gear, it is the same.</summary>
    public static Feel AsItShould { get; } = new(FeelKind.AsItShould, "");

    /// <summary>The clutch that makes it so, or null.</summary>
    public string? Clutch { get; init; }

    /// <summary>For a wrong gear, the gear that it drives as; for no drive, the gear before, from which it flares; else null.</summary>
    public string? Other { get; init; }

    /// <summary>Whether the gear is meant to drive backward.</summary>
    public bool IsReverse { get; init; }

    /// <summary>For a wrong gear: the gear that it is like; else null.</summary>
    public string? Instead => Kind == FeelKind.WrongGear ? Other : null;

    /// <summary>Whether it is felt on the way into the gear, which its words name then.</summary>
    public bool IsOnTheWay => Kind is FeelKind.Undecided or FeelKind.Harsh or FeelKind.Delayed or FeelKind.LetsGoFast or FeelKind.LetsGoSlowly or FeelKind.Flares or FeelKind.TiesUpOnTheWay or FeelKind.NeverComes;

    /// <summary>The same for feels that are alike, whatever the gear.</summary>
    internal string Key => $"{Kind} {Clutch} {Other}";

    /// <inheritdoc/>
    public IEnumerable<string> About => ((string?[])[Kind.ToString(), Clutch, Other]).OfType<string>();
}
