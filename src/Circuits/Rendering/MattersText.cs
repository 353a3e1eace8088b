using System.Collections.Immutable;
using System.Globalization;
using Circuits.Quantities;
using Circuits.Studies.Sensitivity;

namespace Circuits.Rendering;

/// <summary>Which missing sizes matter most to an answer, as part of a page and of a document.</summary>
internal static class MattersText
{
    private const int Shown = 3;

    /// <summary>The few that matter most.</summary>
    public static void Write(Page page, ImmutableArray<SizeEffect> effects, Dimension dimension)
    {
        if (effects.IsEmpty) return;
        page.Heading(effects.Length == 1 ? "Measure this size: it matters" : "Measure these sizes first: of those missing they matter most");
        foreach (var effect in effects.Take(Shown))
        {
            page.Item("-", $"{effect.Size} (assumed {page.Words(effect.Assumed)}): {page.Words(effect.Of)} is {Number(effect.AsAssumed)}; with {page.Words(effect.Less)} {Number(effect.WithLess)}, "
                + $"with {page.Words(effect.More)} {Number(effect.WithMore)}");
        }

        if (effects.Length > Shown) page.Item("-", string.Create(CultureInfo.InvariantCulture, $"{effects.Length - Shown} more"));

        string Number(double? value) => value is { } known ? Measures.Of(new Quantity(dimension, known), page.Options.Units) : dimension == Dimension.Duration ? "never" : "without an answer";
    }
}
