namespace Circuits.Tests;

/// <summary>Where the sources are.</summary>
internal static class Repository
{
    /// <summary>The top folder, found upwards from the compiled tests.</summary>
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Circuits.sln"))) return folder.FullName;
        }

        throw new DirectoryNotFoundException("The tests do not lie below the repository.");
    }
}
