using Circuits.Model;

namespace Circuits.Judging.Changes;

/// <summary>What a change of gear asks of the clutches.</summary>
public enum ShiftKind
{
    /// <summary>From no drive into a gear, or into the other direction.</summary>
    Engagement,

    /// <summary>Into a gear in which the engine turns slower.</summary>
    Upshift,

    /// <summary>Into a gear in which the engine turns faster: between the two it runs up by itself.</summary>
    Downshift,

    /// <summary>Out of a gear into no drive.</summary>
    Release,
}

/// <summary>A change of gear to be timed.</summary>
/// <param name="From">The gear that it leaves.</param>
/// <param name="To">The gear that it enters.</param>
/// <param name="Kind">What it asks of the clutches.</param>
/// <param name="Profile">What the file says of it, or null: then everything changes at once.</param>
public sealed record ShiftPlan(GearState From, GearState To, ShiftKind Kind, ShiftProfile? Profile)
{
    /// <summary>Its name: <c>2-3</c>.</summary>
    public string Name => $"{From.Name}-{To.Name}";
}
