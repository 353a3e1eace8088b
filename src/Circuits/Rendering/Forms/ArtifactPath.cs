namespace Circuits.Rendering;

/// <summary>Names files the way programs on another machine find them: from the folder that the checkout lies in.</summary>
internal static class ArtifactPath
{
    /// <summary>The path from the root with forward slashes, or null when the file does not lie below the root.</summary>
    /// <param name="file">A path, absolute or from the root.</param>
    /// <param name="root">The root, absolute.</param>
    public static string? Below(string file, string root)
    {
        var relative = Path.GetRelativePath(root, Path.GetFullPath(file, root));
        var outside = relative == ".." || relative.StartsWith(".." + Path.DirectorySeparatorChar, StringComparison.Ordinal) || Path.IsPathRooted(relative);
        return outside ? null : relative.Replace(Path.DirectorySeparatorChar, '/');
    }

    /// <summary>The path from the root where the file lies below it, else its full path; with forward slashes.</summary>
    /// <param name="file">A path, absolute or from the root.</param>
    /// <param name="root">The root, absolute.</param>
    public static string Of(string file, string root) =>
        Below(file, root) ?? Path.GetFullPath(file, root).Replace(Path.DirectorySeparatorChar, '/');
}
