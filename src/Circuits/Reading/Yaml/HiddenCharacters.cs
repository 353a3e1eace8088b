using System.Buffers;

namespace Circuits.Reading.Yaml;

/// <summary>
/// Characters that nobody sees and that change how a terminal shows what follows: controls, and marks that turn the
/// direction of writing. YAML escapes can bring them in where the file's bytes have none.
/// </summary>
internal static class HiddenCharacters
{
    private static readonly SearchValues<char> Hidden = SearchValues.Create(
        [.. Enumerable.Range(0, 0x20).Where(code => code is not ('\n' or '\t')).Concat(Enumerable.Range(0x7F, 0x21)).Concat(Enumerable.Range(0x202A, 5)).Concat(Enumerable.Range(0x2066, 4)).Select(code => (char)code)]);

    /// <summary>The first such character, or null.</summary>
    public static char? First(string text) => text.AsSpan().IndexOfAny(Hidden) is >= 0 and var at ? text[at] : null;
}
