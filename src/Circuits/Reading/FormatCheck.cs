using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Checks the <c>format</c> key.</summary>
internal static class FormatCheck
{
    /// <summary>Whether the file is written for this version of the language; if not, there is a finding and nothing else should be read.</summary>
    public static bool Holds(YamlNode node, FindingList findings)
    {
        if (node is YamlScalar { Text: "1" }) return true;
        findings.Add(FileRules.UnsupportedFormat.At(
            node.Place, $"This file has format {node.Describe()}; this program reads format 1", "Write format: 1, if the file keeps to it."));
        return false;
    }
}
