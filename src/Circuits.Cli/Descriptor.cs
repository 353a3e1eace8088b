using Circuits.Reading;

namespace Circuits.Cli;

/// <summary>Paths that stand for what the caller has opened: <c>/dev/stdout</c>, <c>/dev/fd/3</c>.</summary>
internal static class Descriptor
{
    private const int MostLinks = 40;

    /// <summary>Whether a path, or a link on its way, lies in the folder that the system keeps for what a process has open.</summary>
    /// <param name="path">The path.</param>
    /// <exception cref="IOException">Links lead in a circle.</exception>
    public static bool IsOne(string path)
    {
        if (OperatingSystem.IsWindows()) return false;
        var at = Path.GetFullPath(path);
        for (var links = 0; links < MostLinks; links++)
        {
            var folder = RealPath.Of(Path.GetDirectoryName(at) ?? "/");
            if (folder == "/dev/fd" || (folder.StartsWith("/proc/", StringComparison.Ordinal) && folder.EndsWith("/fd", StringComparison.Ordinal))) return true;
            if (new FileInfo(at).LinkTarget is not { } target) return false;
            at = Path.GetFullPath(target, folder);
        }

        return false;
    }
}
