namespace Circuits.Quantities;

/// <summary>A quantity of any kind.</summary>
public interface IQuantity
{
    /// <summary>The quantity with its dimension.</summary>
    Quantity Quantity { get; }
}

/// <summary>A number with its dimension, for whoever treats all quantities alike.</summary>
/// <param name="Dimension">What it measures.</param>
/// <param name="Value">How much, in the dimension's base unit.</param>
public readonly record struct Quantity(Dimension Dimension, double Value)
{
    /// <summary>How many steps it is, rounded.</summary>
    public double Steps => Math.Round(Value / Step);

    /// <summary>Whether messages in SI units tell it as they tell another.</summary>
    /// <param name="other">The other.</param>
    public bool LooksLike(Quantity other) => Dimension == other.Dimension && Step.Equals(other.Step) && Steps.Equals(other.Steps);

    /// <summary>
    /// The step that messages tell it in, base units: what a gauge, a caliper or a stop watch tells apart. Small ones are told more finely.
    /// </summary>
    public double Step => Dimension switch
    {
        Dimension.Length => Math.Abs(Value) < 0.1 ? 0.001 : 0.01,
        Dimension.Area => Math.Abs(Value) < 0.1 ? 0.0001 : Math.Abs(Value) < 1 ? 0.001 : 0.01,
        Dimension.Duration => Math.Abs(Value) < 10 ? 0.1 : 1,
        Dimension.Flow => 0.01,
        Dimension.Pressure or Dimension.Speed or Dimension.Torque => 1,
        Dimension.Fraction or Dimension.Current or Dimension.Density or Dimension.Ratio => 0.001,
        _ => 0.1,
    };
}
