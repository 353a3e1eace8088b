using Circuits.Studies.AirCheck;

namespace Circuits.Rendering;

/// <summary>What is noticed at the bench, in the words of the sheet.</summary>
public static class AirSignWords
{
    /// <summary>A sign: <c>direct does not move</c>.</summary>
    /// <param name="sign">The sign.</param>
    public static string Of(AirSign sign) => sign.Kind switch
    {
        AirSignKind.Stays => $"{sign.At} does not move",
        AirSignKind.Moves => $"{sign.At} moves",
        AirSignKind.Hisses => $"hiss: {sign.At}",
        _ => $"no hiss: {sign.At}",
    };
}
