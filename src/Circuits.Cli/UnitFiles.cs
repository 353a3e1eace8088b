using System.Text;
using Circuits.Reading;

namespace Circuits.Cli;

/// <summary>Finds the unit files of a folder.</summary>
internal static class UnitFiles
{
    private const int LongestLook = 1 << 20;

    /// <summary>
    /// Every YAML file below the folder that describes a unit, in order of name. A file that describes a part alone is read
    /// with the unit that it belongs to. Hidden files and links are passed over, and so is what is no file: a pipe, a device, a socket.
    /// </summary>
    /// <param name="folder">The folder.</param>
    /// <param name="files">What is read goes through these.</param>
    /// <exception cref="UserError">The folder, or one below it, may not be read.</exception>
    public static IReadOnlyList<string> Below(string folder, InputFiles files)
    {
        var everywhere = new EnumerationOptions
        {
            RecurseSubdirectories = true,
            IgnoreInaccessible = false,
            AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
        };
        try
        {
            return [.. Directory.EnumerateFiles(folder, "*", everywhere)
                .Where(file => Path.GetExtension(file) is ".yaml" or ".yml")
                .Where(file => FileStatus.Of(file).Kind is FileKind.Regular or FileKind.Unknown)
                .Where(file => DescribesUnit(file, files))
                .Order(StringComparer.Ordinal)];
        }
        catch (Exception fault) when (fault is UnauthorizedAccessException or IOException)
        {
            throw new UserError(UserError.Usage, $"{folder}, or a folder below it, may not be read", "Check who may read it, or name the files.");
        }
    }

    // A file with neither key is no circuit file; one that lost its key `unit` in an edit must not be passed over, hence `format`.
    private static bool DescribesUnit(string file, InputFiles files)
    {
        bool unit = false, format = false, kind = false;
        try
        {
            foreach (var line in Encoding.UTF8.GetString(files.Head(file, LongestLook)).AsSpan().TrimStart('\uFEFF').EnumerateLines())
            {
                unit |= HasKey(line, "unit");
                format |= HasKey(line, "format");
                kind |= HasKey(line, "kind");
            }
        }
        catch (FileReadException)
        {
            // The reader says what is wrong with it.
            return true;
        }

        return unit || (format && !kind);
    }

    private static bool HasKey(ReadOnlySpan<char> line, string key) =>
        line.StartsWith(key, StringComparison.Ordinal) && line[key.Length..].TrimStart().StartsWith(":");
}
