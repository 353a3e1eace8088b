namespace Circuits.Tests.Properties;

/// <summary>The same unit with each plain hole of a sheet made two of the same area together; holes that are seats stay.</summary>
internal static class Doubling
{
    public static UnitSpec Of(UnitSpec unit)
    {
        var seats = unit.Parts.SelectMany(part => part.Revisions).SelectMany(revision => revision.Balls)
            .SelectMany(ball => ball.Seats).Select(seat => seat.Location).OfType<string>().ToHashSet();
        return unit with
        {
            Parts = [.. unit.Parts.Select(part => part with
            {
                Revisions = [.. part.Revisions.Select(revision => revision with
                {
                    Openings = [.. revision.Openings.SelectMany(opening => Twice(opening, seats))],
                })],
            })],
        };
    }

    /// <summary>Diameters add as squares: a hole of d is one of 0.6 d and one of 0.8 d.</summary>
    private static IEnumerable<OpeningSpec> Twice(OpeningSpec opening, HashSet<string> seats)
    {
        if (!opening.Size.IsHole || opening.At.Length > 1 || opening.At.Any(seats.Contains)) return [opening];
        return [opening with { Size = SizeSpec.Hole(0.6 * opening.Size.Width) }, opening with { Size = SizeSpec.Hole(0.8 * opening.Size.Width) }];
    }
}
