namespace Circuits.Laws;

/// <summary>How far something is open, and how that changes with its lift, travel or pressure.</summary>
/// <param name="Area">Open area, m2, zero or more; or its share of the whole, where that is said.</param>
/// <param name="Slope">Change of area with what opens it: lift, m, unless said otherwise.</param>
internal readonly record struct OpenArea(double Area, double Slope)
{
    /// <summary>This area, or <paramref name="most"/> once it is larger: a seat opens no wider than its hole.</summary>
    /// <param name="most">m2.</param>
    public OpenArea AtMost(double most) => Area < most ? this : new OpenArea(most, 0);
}
