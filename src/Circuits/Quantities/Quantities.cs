namespace Circuits.Quantities;

/// <summary>A length. Positive for every size in a circuit file.</summary>
/// <param name="Millimetres">The length in millimetres.</param>
public readonly record struct Length(double Millimetres)
{
    /// <summary>The area of a round hole of this diameter.</summary>
    public Area HoleArea => new(Math.PI / 4 * Millimetres * Millimetres);
}

/// <summary>An area; infinite where an opening does not restrict at all.</summary>
/// <param name="SquareMillimetres">The area in square millimetres.</param>
public readonly record struct Area(double SquareMillimetres)
{
    /// <summary>An opening that does not restrict: a gasket that is open, two passages face to face.</summary>
    public static Area Unrestricted { get; } = new(double.PositiveInfinity);

    /// <summary>The diameter in millimetres of the round hole with this area.</summary>
    public double EquivalentDiameter => Math.Sqrt(4 * SquareMillimetres / Math.PI);
}

/// <summary>A gauge pressure (zero is sump).</summary>
/// <param name="Kilopascals">The pressure in kilopascals.</param>
public readonly record struct Pressure(double Kilopascals);

/// <summary>A force.</summary>
/// <param name="Newtons">The force in newtons.</param>
public readonly record struct Force(double Newtons);

/// <summary>A spring rate.</summary>
/// <param name="NewtonsPerMillimetre">The rate in newtons per millimetre of travel.</param>
public readonly record struct SpringRate(double NewtonsPerMillimetre);

/// <summary>A volume.</summary>
/// <param name="Millilitres">The volume in millilitres (cubic centimetres).</param>
public readonly record struct Volume(double Millilitres);

/// <summary>A pump's displacement.</summary>
/// <param name="MillilitresPerRevolution">The volume moved by one turn, in millilitres.</param>
public readonly record struct Displacement(double MillilitresPerRevolution);

/// <summary>A speed of rotation.</summary>
/// <param name="RevolutionsPerMinute">The speed in revolutions per minute.</param>
public readonly record struct Speed(double RevolutionsPerMinute);

/// <summary>A temperature.</summary>
/// <param name="DegreesCelsius">The temperature in degrees Celsius.</param>
public readonly record struct Temperature(double DegreesCelsius);

/// <summary>A torque.</summary>
/// <param name="NewtonMetres">The torque in newton metres.</param>
public readonly record struct Torque(double NewtonMetres);

/// <summary>A span of time.</summary>
/// <param name="Milliseconds">The time in milliseconds.</param>
public readonly record struct Duration(double Milliseconds);

/// <summary>An electric current.</summary>
/// <param name="Amperes">The current in amperes.</param>
public readonly record struct Current(double Amperes);

/// <summary>A kinematic viscosity.</summary>
/// <param name="SquareMillimetresPerSecond">The viscosity in square millimetres per second (centistokes).</param>
public readonly record struct Viscosity(double SquareMillimetresPerSecond);

/// <summary>A density.</summary>
/// <param name="KilogramsPerCubicMetre">The density in kilograms per cubic metre.</param>
public readonly record struct Density(double KilogramsPerCubicMetre);
