using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Circuits.Studies.Sensitivity;

namespace Circuits.Rendering;

/// <summary>Which missing sizes matter most to an answer, as part of a page and of a document.</summary>
internal static class MattersText
{
    private const int Shown = 3;

    /// <summary>The few that matter most.</summary>
    public static void Write(Page page, ImmutableArray<SizeEffect> effects, string unit)
    {
        if (effects.IsEmpty) return;
        page.Heading(effects.Length == 1 ? "Measure this size: it matters" : "Measure these sizes first: of those missing they matter most");
        foreach (var effect in effects.Take(Shown))
        {
            page.Item("-", $"{effect.Size} (assumed {effect.Assumed}): {effect.Of} is {Number(effect.AsAssumed)}; with {effect.Less} {Number(effect.WithLess)}, "
                + $"with {effect.More} {Number(effect.WithMore)}");
        }

        if (effects.Length > Shown) page.Item("-", string.Create(CultureInfo.InvariantCulture, $"{effects.Length - Shown} more"));

        string Number(double? value) => value is { } known ? string.Create(CultureInfo.InvariantCulture, $"{known:0.#} {unit}") : unit == "ms" ? "never" : "without an answer";
    }

    /// <summary>All of them, as the field <c>matters</c>.</summary>
    public static void Write(Utf8JsonWriter json, ImmutableArray<SizeEffect> effects)
    {
        json.WriteStartArray("matters");
        foreach (var effect in effects)
        {
            json.WriteStartObject();
            json.WriteString("size", effect.Size);
            json.WriteString("assumed", effect.Assumed);
            json.WriteString("less", effect.Less);
            json.WriteString("more", effect.More);
            json.WriteString("of", effect.Of);
            json.Rounded("asAssumed", effect.AsAssumed, 3);
            json.Rounded("withLess", effect.WithLess, 3);
            json.Rounded("withMore", effect.WithMore, 3);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
