using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>A change that someone asks for, in the asker's own words: names are not looked up yet.</summary>
/// <param name="Place">Where it is asked for: a line of a file, or an option of the command line.</param>
public abstract record ChangeRequest(Place Place)
{
    /// <summary>Another revision of a part.</summary>
    /// <param name="Part">The part.</param>
    /// <param name="Revision">The revision.</param>
    /// <param name="Place">Where it is asked for.</param>
    public sealed record Fit(string Part, string Revision, Place Place) : ChangeRequest(Place);

    /// <summary>Every part of a matched set.</summary>
    /// <param name="Set">The set's name.</param>
    /// <param name="Place">Where it is asked for.</param>
    public sealed record FitSet(string Set, Place Place) : ChangeRequest(Place);

    /// <summary>A round hole of that size at a location.</summary>
    /// <param name="Location">The location: <c>plate@21</c>, <c>front:21</c> or <c>21</c>.</param>
    /// <param name="Size">The hole.</param>
    /// <param name="Place">Where it is asked for.</param>
    public sealed record Hole(string Location, Shape.Hole Size, Place Place) : ChangeRequest(Place);

    /// <summary>No opening at a location.</summary>
    /// <param name="Location">The location: <c>plate@21</c>, <c>front:21</c> or <c>21</c>; a slot by its name, <c>plate@6-7</c>.</param>
    /// <param name="Place">Where it is asked for.</param>
    public sealed record Plug(string Location, Place Place) : ChangeRequest(Place);

    /// <summary>A ball left out.</summary>
    /// <param name="Name">The ball.</param>
    /// <param name="Place">Where it is asked for.</param>
    public sealed record Drop(string Name, Place Place) : ChangeRequest(Place);

    /// <summary>A ball of another size, or one in a pocket that has none.</summary>
    /// <param name="Target">The ball, or the pocket: <c>body.either</c>, with its seats <c>body.either@11+12</c>.</param>
    /// <param name="Diameter">The ball's diameter.</param>
    /// <param name="Place">Where it is asked for.</param>
    public sealed record Ball(string Target, Length Diameter, Place Place) : ChangeRequest(Place);

    /// <summary>A valve or regulator that has stuck.</summary>
    /// <param name="Element">The valve or regulator.</param>
    /// <param name="Position">How: <c>rest</c>, <c>moved</c>, <c>midway</c>, <c>midway-shut</c>; <c>open</c>, <c>shut</c>, <c>drained</c>.</param>
    /// <param name="Place">Where it is asked for.</param>
    public sealed record Stick(string Element, string Position, Place Place) : ChangeRequest(Place);

    /// <summary>A leak between two passages.</summary>
    /// <param name="A">A passage, a clutch (its chamber), or <c>exhaust</c>.</param>
    /// <param name="B">Another.</param>
    /// <param name="Area">Its area.</param>
    /// <param name="Place">Where it is asked for.</param>
    public sealed record Leak(string A, string B, Area Area, Place Place) : ChangeRequest(Place);

    /// <summary>A screen that is stopped up to a share.</summary>
    /// <param name="Name">The screen.</param>
    /// <param name="Share">The share of its mesh: 0 clean, 1 shut.</param>
    /// <param name="Place">Where it is asked for.</param>
    public sealed record Clog(string Name, double Share, Place Place) : ChangeRequest(Place);

    /// <summary>A faulty solenoid.</summary>
    /// <param name="Name">The solenoid.</param>
    /// <param name="Fault">How: <c>stuck-low</c>, <c>stuck-high</c>, <c>reversed</c> or <c>dead</c>.</param>
    /// <param name="Place">Where it is asked for.</param>
    public sealed record Solenoid(string Name, string Fault, Place Place) : ChangeRequest(Place);
}

/// <summary>A job: changes to one assembly, as a file describes them.</summary>
/// <param name="Changes">The changes, in the order of the file.</param>
public sealed record ChangeSet(ImmutableArray<ChangeRequest> Changes)
{
    /// <summary>What the job is about, in its author's words; null when the file does not say.</summary>
    public string? Job { get; init; }

    /// <summary>The assembly that the changes start from: a matched set, or revisions laid over the first one; empty when the file does not say.</summary>
    public ImmutableArray<ChangeRequest> From { get; init; } = [];
}
