using System.Text;

namespace Circuits.Cli;

/// <summary>Names the files of several drawings.</summary>
internal static class FileNames
{
    /// <summary>The file of one of several drawings: <c>circuit.svg</c> and <c>R</c> make <c>circuit-R.svg</c>.</summary>
    /// <param name="path">The file that the user named.</param>
    /// <param name="names">What each drawing is of; letters, digits, dots and hyphens are kept, all else becomes <c>_</c>.</param>
    public static IReadOnlyList<string> Of(string path, IReadOnlyList<string> names)
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
