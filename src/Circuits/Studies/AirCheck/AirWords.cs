namespace Circuits.Studies.AirCheck;

/// <summary>What is done and noticed at the bench, in the words of the sheet.</summary>
public static class AirWords
{
    /// <summary>What is told of an outcome that is as it should be.</summary>
    public const string AsItShould = "as it should";

    /// <summary>A sign: <c>direct does not move</c>.</summary>
    /// <param name="sign">The sign.</param>
    public static string Of(AirSign sign) => sign.Kind switch
    {
        AirSignKind.Stays => $"{sign.At} does not move",
        AirSignKind.Moves => $"{sign.At} moves",
        AirSignKind.Hisses => $"hiss: {sign.At}",
        _ => $"no hiss: {sign.At}",
    };

    /// <summary>What is other than it should be, all of it.</summary>
    /// <param name="should">The outcome that should be.</param>
    /// <param name="found">The one that is.</param>
    public static string Between(AirOutcome should, AirOutcome found) =>
        !found.Settled && should.Settled ? "valves or balls flutter"
        : AirSign.Between(should, found) is { IsEmpty: false } signs ? string.Join("; ", signs.Select(Of)) : AsItShould;

    /// <summary>Where a connection is made: <c>gauge port high</c>.</summary>
    /// <param name="port">The port.</param>
    public static string Of(AirPort port) => port.Kind switch
    {
        AirPortKind.Tap => $"gauge port {port.Name}",
        AirPortKind.Feed => $"feed {port.Name}",
        _ => $"{port.Passage} at {port.Joint} {port.Locations[0]}",
    };
}
