using System.Collections.Immutable;

namespace Circuits.Reading.Yaml;

/// <summary>
/// Puts a number back together that a decimal comma tore apart. To YAML, <c>{diameter: 6,35 mm}</c> is a diameter of 6 and a
/// key <c>35 mm</c> without a value; the reader should see <c>6,35 mm</c>, and say what is wrong with it.
/// </summary>
internal static class DecimalComma
{
    /// <summary>The whole number when the key is its second half, else null.</summary>
    /// <param name="before">The entries before the key.</param>
    /// <param name="key">The key.</param>
    /// <param name="value">The key's value.</param>
    public static YamlScalar? Rejoined(ImmutableArray<YamlEntry>.Builder before, YamlScalar key, YamlNode value)
    {
        if (value is not YamlScalar { Text: "" } || before.Count == 0 || before[^1].Value is not YamlScalar { Text: var start } first) return null;
        if (start.Length == 0 || !start.All(char.IsAsciiDigit) || key.Text.Length == 0 || !char.IsAsciiDigit(key.Text[0])) return null;
        var touches = key.Place.Line == first.Place.Line && key.Place.Column == first.Place.Column + start.Length + 1;
        return touches ? new YamlScalar($"{start},{key.Text}", plain: true, first.Place) : null;
    }
}
