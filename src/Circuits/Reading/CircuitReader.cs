using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>What reading a circuit file gave.</summary>
/// <param name="Unit">The unit; null when any finding is an error.</param>
/// <param name="Findings">What was found, by place.</param>
public sealed record ReadResult(Unit? Unit, ImmutableArray<Finding> Findings);

/// <summary>Reads circuit files. Never throws for what a file holds; every fault is a finding.</summary>
public static class CircuitReader
{
    /// <summary>Reads a circuit file and its part files.</summary>
    /// <param name="path">The file's path; findings name the file as it is given here.</param>
    public static ReadResult ReadFile(string path)
    {
        var findings = new FindingList();
        return TextFile.Read(path, path, findings) is { } text ? Read(text, path, findings) : new ReadResult(null, findings.InOrder());
    }

    /// <summary>Reads a circuit file's text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">The file's name in findings; part files are looked for below its folder.</param>
    public static ReadResult ReadText(string text, string name) => Read(text, name, new FindingList());

    private static ReadResult Read(string text, string name, FindingList findings)
    {
        Unit? unit = null;
        try
        {
            if (YamlTree.Read(text, name, findings) is { } root) unit = new UnitReader(root, name, findings).Read();
        }
        catch (ReadingStopped)
        {
            // What was found so far says why.
        }

        return new ReadResult(findings.HasErrors ? null : unit, findings.InOrder());
    }
}
