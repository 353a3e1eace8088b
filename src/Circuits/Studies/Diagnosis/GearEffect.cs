using System.Collections.Immutable;
using Circuits.Judging;

namespace Circuits.Studies.Diagnosis;

/// <summary>What a driver feels and a gauge reads in one gear.</summary>
/// <param name="Feel">What is felt.</param>
/// <param name="Clutches">How strongly each clutch is on, in the order of the file.</param>
/// <param name="Taps">What each gauge port reads, kPa, in the order of the file; null where this assembly lacks the passage.</param>
public sealed record GearEffect(
    Feel Feel, ImmutableArray<ClutchState> Clutches, ImmutableArray<double?> Taps)
{
    /// <summary>What is felt, as one of a few kinds.</summary>
    public FeelKind Kind => Feel.Kind;

    /// <summary>For a wrong gear: the gear that it is like; else null.</summary>
    public string? Instead => Feel.Instead;

    /// <summary>Whether neither the driver nor a gauge can tell it from another.</summary>
    /// <param name="other">The other.</param>
    public bool IsLike(GearEffect other)
    {
        if (ReferenceEquals(this, other)) return true;
        if (Kind != other.Kind || Instead != other.Instead) return false;
        for (var i = 0; i < Taps.Length; i++)
        {
            if (!Gauge.Same(Taps[i] ?? 0, other.Taps[i] ?? 0)) return false;
        }

        return true;
    }
}

/// <summary>What a gauge in a workshop can tell apart.</summary>
public static class Gauge
{
    /// <summary>Readings closer than this, kPa, are one. Judgement, no source.</summary>
    public const double Kilopascals = 30;

    /// <summary>Readings closer than this share of the larger are one. Judgement, no source.</summary>
    public const double Share = 0.1;

    /// <summary>How far two readings may be apart, kPa, and still be one.</summary>
    /// <param name="a">One reading, kPa.</param>
    /// <param name="b">The other.</param>
    public static double Tolerance(double a, double b) => Math.Max(Kilopascals, Share * Math.Max(Math.Abs(a), Math.Abs(b)));

    /// <summary>Whether two readings are one.</summary>
    /// <param name="a">One reading, kPa.</param>
    /// <param name="b">The other.</param>
    public static bool Same(double a, double b) => Math.Abs(a - b) <= Tolerance(a, b);
}
