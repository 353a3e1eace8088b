namespace Circuits.Reading;

/// <summary>Follows symbolic links.</summary>
public static class RealPath
{
    private const int MostLinks = 40;

    // What Linux calls it (ELOOP).
    private const int LinksInACircle = 40;

    /// <summary>The path with every link in it followed. A part of the path that does not exist stays as it is.</summary>
    /// <param name="path">An absolute path.</param>
    /// <exception cref="IOException">Links lead in a circle, or a folder cannot be looked into.</exception>
    public static string Of(string path)
    {
        var links = 0;
        var full = Path.GetFullPath(path);
        var root = Path.GetPathRoot(full)!;
        var rest = new Stack<string>(Names(full[root.Length..]).Reverse());
        var done = root;
        while (rest.TryPop(out var name))
        {
            var next = Path.GetFullPath(Path.Combine(done, name));
            if (new FileInfo(next).LinkTarget is not { } target)
            {
                done = next;
                continue;
            }

            if (++links > MostLinks) throw new IOException("Links lead in a circle.", LinksInACircle);
            if (Path.IsPathRooted(target)) done = Path.GetPathRoot(target)!;
            foreach (var part in Names(target).Reverse()) rest.Push(part);
        }

        return done;
    }

    private static string[] Names(string path) =>
        path.Split([Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar], StringSplitOptions.RemoveEmptyEntries);
}
