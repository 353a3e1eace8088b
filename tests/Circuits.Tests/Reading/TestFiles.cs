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
}
