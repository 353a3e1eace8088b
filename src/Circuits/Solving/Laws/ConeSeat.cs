namespace Circuits.Solving.Laws;

/// <summary>
/// A cone poppet lifted off a sharp round seat: A = pi h sin a (d - h sin a cos a), at most the hole.
/// Source: from memory of fluid-power textbooks; it is the frustum square to the cone.
/// </summary>
internal static class ConeSeat
{
    /// <summary>Open area by lift.</summary>
    /// <param name="lift">m; zero or less is shut.</param>
    /// <param name="seatDiameter">m, above zero.</param>
    /// <param name="halfAngle">Half the cone's angle, rad, above 0 and below pi / 2.</param>
    public static OpenArea Open(double lift, double seatDiameter, double halfAngle)
    {
        if (!(lift > 0)) return default;
        var (sin, cos) = Math.SinCos(halfAngle);
        var hole = Math.PI / 4 * seatDiameter * seatDiameter;
        // Beyond this lift the formula turns down again; the hole has bounded it before that.
        if (2 * lift * sin * cos >= seatDiameter) return new OpenArea(hole, 0);
        return new OpenArea(
            Math.PI * lift * sin * (seatDiameter - (lift * sin * cos)), Math.PI * sin * (seatDiameter - (2 * lift * sin * cos))).AtMost(hole);
    }
}
