using Circuits.Findings;

namespace Circuits.Studies.AirCheck;

/// <summary>What is done and noticed at the bench.</summary>
public static class AirWords
{
    /// <summary>How an outcome is told that is as it should be.</summary>
    public const string AsItShould = "as it should";

    /// <summary>The same, to be told.</summary>
    internal static Phrase Right { get; } = Phrase.Of($"as it should");

    /// <summary>What is other than it should be, all of it.</summary>
    /// <param name="should">The outcome that should be.</param>
    /// <param name="found">The one that is.</param>
    public static Phrase Between(AirOutcome should, AirOutcome found) =>
        !found.Settled && should.Settled ? Phrase.Of($"valves or balls flutter")
        : AirSign.Between(should, found) is { IsEmpty: false } signs ? Phrase.Join("; ", signs.Select(sign => Phrase.Of($"{sign}"))) : Right;

    /// <summary>Where a connection is made: <c>gauge port high</c>.</summary>
    /// <param name="port">The port.</param>
    public static string Of(AirPort port) => port.Kind switch
    {
        AirPortKind.Tap => $"gauge port {port.Name}",
        AirPortKind.Feed => $"feed {port.Name}",
        _ => $"{port.Passage} at {port.Joint} {port.Locations[0]}",
    };
}
