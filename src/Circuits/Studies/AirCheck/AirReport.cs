using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Faults;

namespace Circuits.Studies.AirCheck;

/// <summary>Something that may be noticed at a port, and what it would mean.</summary>
/// <param name="Sign">What is noticed.</param>
/// <param name="Faults">The faults of the library that show so, likeliest first.</param>
public sealed record AirMeaning(AirSign Sign, ImmutableArray<Fault> Faults);

/// <summary>One connection of the check.</summary>
/// <param name="Port">Where air is let in.</param>
/// <param name="Right">What should happen.</param>
/// <param name="Meanings">What else may happen, most likely first.</param>
/// <param name="Shows">How many faults show here.</param>
/// <param name="Adds">How many of them show at no connection before it.</param>
/// <param name="Share">The part of all weight of faults, 0 to 1, that shows here or at a connection before it.</param>
public sealed record AirConnection(AirPort Port, AirOutcome Right, ImmutableArray<AirMeaning> Meanings, int Shows, int Adds, double Share);

/// <summary>A plan to check an assembly with air.</summary>
/// <param name="Assembly">The assembly.</param>
/// <param name="Lever">Where the lever is put; null for a unit without one.</param>
/// <param name="Connections">The connections: each time the one that shows most of what none before shows.</param>
/// <param name="Others">Connections that show nothing more, in the order of the file.</param>
/// <param name="Faults">The faults that the assembly may have.</param>
/// <param name="Blind">Those that no connection of <paramref name="Connections"/> shows, in the order of the library.</param>
public sealed record AirReport(
    Assembly Assembly, string? Lever, ImmutableArray<AirConnection> Connections, ImmutableArray<AirConnection> Others,
    ImmutableArray<Fault> Faults, ImmutableArray<Fault> Blind)
{
    /// <summary>What was assumed of sizes that are not given.</summary>
    public ImmutableArray<Phrase> Assumptions { get; init; } = [];
}
