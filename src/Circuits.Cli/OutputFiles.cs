using System.Text;

namespace Circuits.Cli;

/// <summary>Writes several files, all or none of them.</summary>
internal static class OutputFiles
{
    /// <summary>
    /// Puts all contents beside their files first; only when every one of them stands are they put in their files' places. What was there
    /// before comes back when anything goes wrong.
    /// </summary>
    /// <param name="files">Paths, and what goes there.</param>
    /// <exception cref="UserError">A file cannot be written.</exception>
    public static void Write(IReadOnlyList<(string Path, string Text)> files)
    {
        var done = new List<(string Path, byte[]? Before)>();
        try
        {
            // What stands in the way of any of them shows before the first is touched.
            foreach (var (path, _) in files) OutputFile.Check(path);
            foreach (var (path, text) in files)
            {
                var before = File.Exists(path) ? File.ReadAllBytes(path) : null;
                OutputFile.Write(path, text);
                done.Add((path, before));
            }
        }
        catch
        {
            foreach (var (path, before) in done)
            {
                if (before is null) File.Delete(path);
                else OutputFile.Write(path, stream => stream.Write(before));
            }

            throw;
        }
    }

    /// <summary>The file of one of several drawings: <c>circuit.svg</c> and <c>R</c> make <c>circuit-R.svg</c>.</summary>
    /// <param name="path">The file that the user named.</param>
    /// <param name="names">What each drawing is of; letters, digits, dots and hyphens are kept, all else becomes <c>_</c>.</param>
    public static IReadOnlyList<string> Name(string path, IReadOnlyList<string> names)
    {
        var stem = Path.Combine(Path.GetDirectoryName(path) ?? "", Path.GetFileNameWithoutExtension(path));
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var paths = new List<string>();
        foreach (var name in names)
        {
            var safe = new StringBuilder();
            foreach (var letter in name.Length > 60 ? name[..60] : name) safe.Append(char.IsAsciiLetterOrDigit(letter) || letter is '-' or '.' ? letter : '_');
            var wanted = $"{stem}-{safe}{Path.GetExtension(path)}";
            for (var i = 2; !taken.Add(wanted); i++) wanted = FormattableString.Invariant($"{stem}-{safe}-{i}{Path.GetExtension(path)}");
            paths.Add(wanted);
        }

        return paths;
    }
}
