namespace Circuits.Rendering;

/// <summary>Writes words so that a shell takes each as one.</summary>
public static class ShellWord
{
    /// <summary>The word, in quotes where it needs them.</summary>
    /// <param name="word">Any word.</param>
    public static string Of(string word) =>
        word.Length > 0 && word.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '.' or '_' or '-' or '/' or '=' or ',' or '+' or ':')
            ? word : $"'{word.Replace("'", "'\\''", StringComparison.Ordinal)}'";
}
