using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>
/// A clutch or brake, or what a part revision changes of it. Every property but the name may be missing;
/// the chamber is required once all changes are applied.
/// </summary>
/// <param name="Name">Its name in the whole unit.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Clutch(string Name, Place Place)
{
    /// <summary>The passage that is its apply chamber.</summary>
    public PassageUse? At { get; init; }

    /// <summary>Piston area.</summary>
    public Area? Area { get; init; }

    /// <summary>The chamber on a servo's release side, or null for a plain clutch.</summary>
    public PassageUse? ReleaseAt { get; init; }

    /// <summary>Area on which release oil acts; the piston area when missing.</summary>
    public Area? ReleaseArea { get; init; }

    /// <summary>Return spring force at the start of the stroke.</summary>
    public Force? ReturnSpring { get; init; }

    /// <summary>Return spring rate.</summary>
    public SpringRate? Rate { get; init; }

    /// <summary>Stroke until the plates touch.</summary>
    public Length? Stroke { get; init; }

    /// <summary>What its piston sweeps until the plates touch: area times stroke; null where the file does not give both.</summary>
    public Volume? Swept => this is { Area: { } area, Stroke: { } stroke } ? new Volume(area.SquareMillimetres * stroke.Millimetres / 1000) : null;

    /// <summary>Volumes closer than this are the same, as a fraction: files round them.</summary>
    public const double VolumeRounding = 0.02;

    /// <summary>Volume that fills the chamber until the plates touch.</summary>
    public Volume? Fill { get; init; }

    /// <summary>How stiff the plates are, cushion and drum with them, once they touch.</summary>
    public SpringRate? PackRate { get; init; }

    /// <summary>Number of friction faces.</summary>
    public int? Plates { get; init; }

    /// <summary>Coefficient of friction.</summary>
    public double? Friction { get; init; }

    /// <summary>Mean friction radius.</summary>
    public Length? Radius { get; init; }

    /// <summary>The drum that its piston turns with, or null for one that stands, or whose oil is balanced.</summary>
    public Drum? Drum { get; init; }

    /// <summary>This clutch of the unit with what the parts of an assembly change of it.</summary>
    /// <param name="assembly">The assembly.</param>
    public Clutch In(Assembly assembly)
    {
        var clutch = this;
        foreach (var revision in assembly.Revisions)
        {
            foreach (var change in revision.Clutches)
            {
                if (change.Name == Name) clutch = clutch.With(change);
            }
        }

        return clutch;
    }

    /// <summary>This clutch with what <paramref name="change"/> says laid over it.</summary>
    /// <param name="change">The change; what it leaves out stays.</param>
    public Clutch With(Clutch change) => this with
    {
        Place = change.Place,
        At = change.At ?? At,
        Area = change.Area ?? Area,
        ReleaseAt = change.ReleaseAt ?? ReleaseAt,
        ReleaseArea = change.ReleaseArea ?? ReleaseArea,
        ReturnSpring = change.ReturnSpring ?? ReturnSpring,
        Rate = change.Rate ?? Rate,
        Stroke = change.Stroke ?? Stroke,
        Fill = change.Fill ?? Fill,
        PackRate = change.PackRate ?? PackRate,
        Plates = change.Plates ?? Plates,
        Friction = change.Friction ?? Friction,
        Radius = change.Radius ?? Radius,
        Drum = change.Drum ?? Drum,
    };
}

/// <summary>A drum that turns with the oil in it.</summary>
/// <param name="Turns">The member of the gear train that it turns with.</param>
/// <param name="Oil">Radius down to which the oil stands: where it comes in.</param>
/// <param name="Inner">Inner radius of the piston.</param>
/// <param name="Outer">Outer radius of the piston.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Drum(Member Turns, Length Oil, Length Inner, Length Outer, Place Place);

public sealed partial record Revision
{
    /// <summary>What this revision changes of the unit's clutches.</summary>
    public ImmutableArray<Clutch> Clutches { get; init; } = [];
}
