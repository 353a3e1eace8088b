using Circuits.Model;
using Circuits.Quantities;
using Circuits.Solving.Oil;
using Circuits.Studies.Pressures;

namespace Circuits.Studies.Diagnosis;

/// <summary>What a gauge was read under.</summary>
/// <param name="Text">In words: <c>at idle, 40 degC</c>.</param>
/// <param name="RevolutionsPerMinute">The pump's speed, rpm.</param>
/// <param name="Celsius">The oil's temperature, degC.</param>
public sealed record ReadingCondition(string Text, double RevolutionsPerMinute, double Celsius)
{
    /// <summary>
    /// Understands a condition: a speed by its name in the file or in rpm, a temperature, or both. What of the two is not told is the file's first
    /// speed and its working temperature.
    /// </summary>
    /// <param name="unit">The unit.</param>
    /// <param name="words">The words; none give null.</param>
    /// <param name="problem">The word that is neither, or said twice; null when all is well.</param>
    public static ReadingCondition? Of(Unit unit, IReadOnlyList<string> words, out string? problem)
    {
        problem = null;
        if (words.Count == 0) return null;
        var speeds = PressureStudy.SpeedsOf(unit);
        double? turns = null;
        double? celsius = null;
        foreach (var word in words)
        {
            if (turns is null && speeds.Any(speed => speed.Key == word)) turns = speeds.First(speed => speed.Key == word).Value;
            else if (turns is null && Size(word, OilRanges.SpeedOrStill) is { } rpm) turns = rpm;
            else if (celsius is null && Size(word, OilRanges.Temperature) is { } degrees) celsius = degrees;
            else problem ??= word;
        }

        return new ReadingCondition($"at {string.Join(", ", words)}", turns ?? speeds[0].Value, celsius ?? OilOfUnit.Temperature(unit, []));
    }

    private static double? Size(string word, PlausibleRange range)
    {
        var read = QuantityText.Parse(word);
        return read.Problem == QuantityProblem.None && read.Unit!.Dimension == range.Dimension && range.IsPossible(read.Value) ? read.Value : null;
    }
}
