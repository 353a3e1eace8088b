using Circuits.Findings;

namespace Circuits.Tests.Reading;

/// <summary>Files that lie beside the tests in the source tree.</summary>
internal static class TestFiles
{
    /// <summary>The path of a file below the test project's folder.</summary>
    public static string Find(string relative)
    {
        for (var folder = AppContext.BaseDirectory; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (File.Exists(Path.Combine(folder, "Circuits.sln"))) return Path.Combine(folder, "tests", "Circuits.Tests", relative);
        }

        throw new DirectoryNotFoundException("The tests must run below the repository's root.");
    }

    /// <summary>The place of the | in a piece of a file's text that stands there once.</summary>
    public static Place PlaceOf(string file, string marked)
    {
        var text = File.ReadAllText(file);
        var piece = marked.Replace("|", "", StringComparison.Ordinal);
        var at = text.IndexOf(piece, StringComparison.Ordinal);
        if (at < 0 || text.IndexOf(piece, at + 1, StringComparison.Ordinal) >= 0) throw new ArgumentException($"Not there once: {piece}", nameof(marked));
        var before = text[..(at + marked.IndexOf('|', StringComparison.Ordinal))].Split('\n');
        return new Place(file, before.Length, before[^1].Length + 1);
    }
}
