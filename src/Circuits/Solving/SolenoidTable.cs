using Circuits.Model;

namespace Circuits.Solving;

/// <summary>Reads a pressure solenoid's table.</summary>
public static class SolenoidTable
{
    /// <summary>
    /// The pressure at a current, in kPa: linear between the table's points, level beyond its ends. Without a table the
    /// solenoid is taken as fully on at any current above zero.
    /// </summary>
    /// <param name="solenoid">The solenoid.</param>
    /// <param name="amperes">The current, 0 or more.</param>
    public static double PressureAt(Solenoid solenoid, double amperes)
    {
        var table = solenoid.Table;
        if (table.IsEmpty)
            return amperes > 0 == (solenoid.AtRest == RestState.Low) ? double.PositiveInfinity : 0;
        if (amperes <= table[0].Current.Amperes) return table[0].Pressure.Kilopascals;
        for (var i = 1; i < table.Length; i++)
        {
            var (low, high) = (table[i - 1], table[i]);
            if (amperes > high.Current.Amperes) continue;
            var share = (amperes - low.Current.Amperes) / (high.Current.Amperes - low.Current.Amperes);
            return low.Pressure.Kilopascals + (share * (high.Pressure.Kilopascals - low.Pressure.Kilopascals));
        }

        return table[^1].Pressure.Kilopascals;
    }
}
