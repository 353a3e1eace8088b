using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Model;

/// <summary>A planetary set.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Sun">Teeth of the sun.</param>
/// <param name="Ring">Teeth of the ring.</param>
/// <param name="DoublePinions">Whether pairs of pinions mesh between sun and ring.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Planetary(string Name, int Sun, int Ring, bool DoublePinions, Place Place);

/// <summary>
/// Names a shaft: a member of a planetary (<c>front.sun</c>, <c>front.carrier</c>, <c>front.ring</c>), a loose shaft,
/// <c>input</c>, <c>output</c>, or the fixed <c>case</c>.
/// </summary>
/// <param name="Name">The name as written.</param>
/// <param name="Place">Where it is written.</param>
public readonly record struct Member(string Name, Place Place);

/// <summary>Two members that a clutch, a one-way clutch or a joint ties together.</summary>
/// <param name="Name">The clutch's name; empty for a permanent joint.</param>
/// <param name="A">One member.</param>
/// <param name="B">The other.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Coupling(string Name, Member A, Member B, Place Place);

/// <summary>The gear train.</summary>
/// <param name="Planetaries">Its planetary sets.</param>
/// <param name="Joined">Members that turn together always.</param>
/// <param name="Input">The input member; null for a loose input shaft that clutches alone connect.</param>
/// <param name="Output">The output member.</param>
/// <param name="Clutches">What each clutch or brake ties together.</param>
/// <param name="OneWay">One-way clutches: the first member cannot turn backwards against the second.</param>
/// <param name="Place">Where it is written.</param>
public sealed record GearSet(
    ImmutableArray<Planetary> Planetaries, ImmutableArray<Coupling> Joined, Member? Input, Member Output,
    ImmutableArray<Coupling> Clutches, ImmutableArray<Coupling> OneWay, Place Place);
