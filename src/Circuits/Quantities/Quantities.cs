using System.Globalization;

namespace Circuits.Quantities;

/// <summary>A length. Positive for every size in a circuit file.</summary>
/// <param name="Millimetres">The length in millimetres.</param>
public readonly record struct Length(double Millimetres) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Length, Millimetres);

    /// <summary>The area of a round hole of this diameter.</summary>
    public Area HoleArea => new(Math.PI / 4 * Millimetres * Millimetres);

    /// <summary>The length in mm; what a record prints of itself would go round between a length and its area.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Millimetres} mm");
}

/// <summary>An area; infinite where an opening does not restrict at all.</summary>
/// <param name="SquareMillimetres">The area in square millimetres.</param>
public readonly record struct Area(double SquareMillimetres) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Area, SquareMillimetres);

    /// <summary>An opening that does not restrict: a gasket that is open, two passages face to face.</summary>
    public static Area Unrestricted { get; } = new(double.PositiveInfinity);

    /// <summary>The diameter in millimetres of the round hole with this area.</summary>
    public double EquivalentDiameter => Math.Sqrt(4 * SquareMillimetres / Math.PI);

    /// <summary>The diameter of the round hole with this area.</summary>
    public Length HoleDiameter => new(EquivalentDiameter);

    /// <summary>The area in mm2.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{SquareMillimetres} mm2");
}

/// <summary>A gauge pressure (zero is sump).</summary>
/// <param name="Kilopascals">The pressure in kilopascals.</param>
public readonly record struct Pressure(double Kilopascals) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Pressure, Kilopascals);
}

/// <summary>A force.</summary>
/// <param name="Newtons">The force in newtons.</param>
public readonly record struct Force(double Newtons) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Force, Newtons);
}

/// <summary>A spring rate.</summary>
/// <param name="NewtonsPerMillimetre">The rate in newtons per millimetre of travel.</param>
public readonly record struct SpringRate(double NewtonsPerMillimetre) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.SpringRate, NewtonsPerMillimetre);
}

/// <summary>A volume.</summary>
/// <param name="Millilitres">The volume in millilitres (cubic centimetres).</param>
public readonly record struct Volume(double Millilitres) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Volume, Millilitres);
}

/// <summary>A pump's displacement.</summary>
/// <param name="MillilitresPerRevolution">The volume moved by one turn, in millilitres.</param>
public readonly record struct Displacement(double MillilitresPerRevolution) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Displacement, MillilitresPerRevolution);
}

/// <summary>A speed of rotation.</summary>
/// <param name="RevolutionsPerMinute">The speed in revolutions per minute.</param>
public readonly record struct Speed(double RevolutionsPerMinute) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Speed, RevolutionsPerMinute);
}

/// <summary>A temperature.</summary>
/// <param name="DegreesCelsius">The temperature in degrees Celsius.</param>
public readonly record struct Temperature(double DegreesCelsius) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Temperature, DegreesCelsius);
}

/// <summary>A torque.</summary>
/// <param name="NewtonMetres">The torque in newton metres.</param>
public readonly record struct Torque(double NewtonMetres) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Torque, NewtonMetres);
}

/// <summary>A span of time.</summary>
/// <param name="Milliseconds">The time in milliseconds.</param>
public readonly record struct Duration(double Milliseconds) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Duration, Milliseconds);
}

/// <summary>A flow.</summary>
/// <param name="LitresPerMinute">The flow in litres per minute.</param>
public readonly record struct Flow(double LitresPerMinute) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Flow, LitresPerMinute);
}

/// <summary>An electric current.</summary>
/// <param name="Amperes">The current in amperes.</param>
public readonly record struct Current(double Amperes) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Current, Amperes);
}

/// <summary>A kinematic viscosity.</summary>
/// <param name="SquareMillimetresPerSecond">The viscosity in square millimetres per second (centistokes).</param>
public readonly record struct Viscosity(double SquareMillimetresPerSecond) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Viscosity, SquareMillimetresPerSecond);
}

/// <summary>A density.</summary>
/// <param name="KilogramsPerCubicMetre">The density in kilograms per cubic metre.</param>
public readonly record struct Density(double KilogramsPerCubicMetre) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Density, KilogramsPerCubicMetre);
}

/// <summary>A share of a whole.</summary>
/// <param name="OfOne">The share; 1 is all of it.</param>
public readonly record struct Share(double OfOne) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Fraction, OfOne);
}

/// <summary>A number that has no unit: a ratio of speeds, a coefficient, an index.</summary>
/// <param name="Value">The number.</param>
public readonly record struct Ratio(double Value) : IQuantity
{
    /// <inheritdoc/>
    public Quantity Quantity => new(Dimension.Ratio, Value);
}
