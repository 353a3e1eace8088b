using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Solving.Flow;

namespace Circuits.Judging.Conditions;

/// <summary>What oil and pump are like while pressures and flows are worked out.</summary>
/// <param name="Name">The condition's name (<c>idle-hot</c>), that of a speed in the file (<c>idle</c>), or empty.</param>
/// <param name="Celsius">Oil temperature, degC.</param>
/// <param name="RevolutionsPerMinute">Pump speed, rpm; 0 or more.</param>
public sealed record OperatingPoint(string Name, double Celsius, double RevolutionsPerMinute) : INamed
{
    /// <inheritdoc/>
    public string InWords => Name;

    /// <summary>Its name with what it stands for: <c>idle-hot (700 rpm, 110 degC)</c>.</summary>
    public Phrase InFull => Name.Length > 0
        ? Phrase.Of($"{Name} ({new Speed(RevolutionsPerMinute)}, {new Temperature(Celsius)})")
        : Phrase.Of($"{new Speed(RevolutionsPerMinute)}, {new Temperature(Celsius)}");

    /// <summary>What a condition of a unit comes to.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="condition">The condition.</param>
    public static OperatingPoint Of(Unit unit, Condition condition) => new(
        condition.Name, condition.Temperature.DegreesCelsius,
        condition.Pump switch
        {
            PumpSpeed.Given given => given.Speed.RevolutionsPerMinute,
            PumpSpeed.Named { Name: var name } => SpeedsOf(unit).First(speed => speed.Key == name).Value,
            _ => throw new InvalidOperationException(),
        });

    /// <summary>The pump's speeds by name, rpm: idle and road, with those assumed that the file does not give.</summary>
    /// <param name="unit">The unit.</param>
    public static ImmutableArray<KeyValuePair<string, double>> SpeedsOf(Unit unit)
    {
        return [Speed("idle", FlowDefaults.IdleSpeed), Speed("road", FlowDefaults.RoadSpeed)];

        KeyValuePair<string, double> Speed(string name, double otherwise)
        {
            foreach (var given in unit.Pump?.Speeds ?? [])
            {
                if (given.Key == name) return KeyValuePair.Create(name, given.Value.RevolutionsPerMinute);
            }

            return KeyValuePair.Create(name, otherwise);
        }
    }
}
