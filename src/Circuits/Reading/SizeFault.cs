using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Reading;

/// <summary>Says what is wrong with a size as written.</summary>
internal static class SizeFault
{
    /// <summary>The finding.</summary>
    /// <param name="size">What was read.</param>
    /// <param name="text">The text.</param>
    /// <param name="place">Where it stands.</param>
    /// <param name="dimension">What was needed.</param>
    /// <param name="what">What it belongs to.</param>
    public static Finding Finding(QuantityText size, string text, Place place, Dimension dimension, What what)
    {
        var example = $"Write for example {dimension.Example()}.";
        switch (size.Problem)
        {
            case QuantityProblem.NoUnit:
                return SizeRules.NumberWithoutUnit.At(place, $"{what} is a number without a unit: {text}", $"Add the unit: {text} {DefaultUnit(dimension)}, say.");
            case QuantityProblem.UnknownUnit:
                var units = MeasureUnit.All.Where(unit => unit.Dimension == dimension).Select(unit => unit.Symbol).ToList();
                var meant = UnitHint.Find(size.UnitText, dimension);
                return SizeRules.UnknownUnit.At(
                    place, $"{what} has the unknown unit {Quote.Text(size.UnitText)}; expected {dimension.Name()}", Quote.Meant(meant, "unit", units));
            case QuantityProblem.UnknownDrill:
                return SizeRules.UnknownDrill.At(
                    place, $"{what}: there is no number drill {Quote.Text(text)}", $"Number drills run from #{NumberDrill.First} to #{NumberDrill.Last}.");
            case QuantityProblem.DecimalComma:
                return SizeRules.NotASize.At(place, $"{what} has a decimal comma: {Quote.Text(text)}", "Write a decimal point.");
            case QuantityProblem.NotFinite:
                return SizeRules.SizeOutOfRange.At(place, $"{what} must be a finite number, found {Quote.Text(text)}", example);
            default:
                return SizeRules.NotASize.At(place, $"{what} must be {dimension.Name()}, found {Quote.Text(text)}", example);
        }
    }

    private static string DefaultUnit(Dimension dimension) => MeasureUnit.All.First(unit => unit.Dimension == dimension).Symbol;
}
