using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads part files, from below the unit file's folder only.</summary>
/// <param name="unitFile">The unit file's path as the user gave it.</param>
/// <param name="files">What is read goes through these.</param>
internal sealed class PartFolder(string unitFile, ITextSource files)
{
    private readonly string given = Path.GetDirectoryName(unitFile) ?? "";
    private readonly List<string> named = [];

    /// <summary>The part files named so far, each once; one that could not be read too.</summary>
    public IReadOnlyList<string> Named => named;

    /// <summary>Where sizes come out within their tolerances; null for as written.</summary>
    public SizeDraw? Draw { get; init; }

    /// <summary>A file's mapping with its sizes as they come out.</summary>
    public YamlMapping Drawn(YamlMapping root) => Draw is { } draw ? (YamlMapping)Tolerances.Drawn(root, draw) : root;

    /// <summary>The mapping in a part's file, or null with a finding.</summary>
    /// <param name="reference">The path as the unit file writes it.</param>
    /// <param name="part">What messages call the part.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public YamlMapping? Read(YamlScalar reference, string part, FindingList findings)
    {
        var path = reference.Text;
        if (path.Length == 0 || path.Contains('\0') || Path.IsPathRooted(path) || path.Contains('\\') || path.Contains(':')
            || path.Split('/').Contains("..") || !IsInside(path))
        {
            findings.Add(FileRules.PartFileOutside.At(
                reference.Place, $"{part}: file {Quote.Text(path)} does not lie below the unit file's folder", "Put it there, and write its path with / from that folder."));
            return null;
        }

        var name = given.Length == 0 ? path : $"{given.TrimEnd('/')}/{path}";
        if (!named.Contains(name)) named.Add(name);
        var own = new FindingList();
        var text = TextFile.Read(name, name, files, own);
        if (text is null)
        {
            // A file that cannot be opened is mended where it is named.
            foreach (var finding in own.InOrder())
            {
                var moved = finding.Place.Line == 0 ? reference.Place : finding.Place;
                findings.Add(finding with { Place = moved, Message = Phrase.Of($"{part}: {finding.Message}") });
            }

            return null;
        }

        return YamlTree.Read(text, name, findings) is { } root ? Drawn(root) : null;
    }

    private bool IsInside(string path)
    {
        try
        {
            var root = RealPath.Of(Path.GetFullPath(given.Length == 0 ? "." : given));
            var target = RealPath.Of(Path.Combine(root, path));
            return target.StartsWith(root.TrimEnd(Path.DirectorySeparatorChar) + Path.DirectorySeparatorChar, StringComparison.Ordinal);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // A circle of links, or a folder that may not be looked into: it cannot be shown to lie inside.
            return false;
        }
    }
}
