namespace Circuits.Reading.Yaml;

/// <summary>
/// Characters that nobody sees and that change how a terminal shows what follows: controls, and marks that turn the
/// direction of writing. YAML escapes can bring them in where the file's bytes have none.
/// </summary>
internal static class HiddenCharacters
{
    /// <summary>The first such character, or null.</summary>
    public static char? First(string text)
    {
        foreach (var character in text)
        {
            if (IsHidden(character)) return character;
        }

        return null;
    }

    private static bool IsHidden(char character) => character switch
    {
        '\n' or '\t' => false,
        < ' ' or (>= '\u007F' and <= '\u009F') or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') => true,
        _ => false,
    };
}
