using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>What reading a circuit file gave.</summary>
/// <param name="Unit">The unit; null when any finding is an error.</param>
/// <param name="Findings">What was found, by place.</param>
public sealed record ReadResult(Unit? Unit, ImmutableArray<Finding> Findings)
{
    /// <summary>
    /// The files that the unit is made of: its own, then those of parts in the order that it names them, as far as reading came;
    /// one that is missing too. Named like places in findings.
    /// </summary>
    public ImmutableArray<string> Files { get; init; } = [];
}

/// <summary>Reads circuit files. Never throws for what a file holds; every fault is a finding.</summary>
public static class CircuitReader
{
    /// <summary>Reads a circuit file and its part files.</summary>
    /// <param name="path">The file's path; findings name the file as it is given here.</param>
    /// <param name="rules">Lists the names of the rules that expectations may name; without it those names are not checked.</param>
    /// <param name="draw">Where sizes come out within their tolerances; as written when there is none.</param>
    /// <param name="files">Where the files come from; the disk when there is none.</param>
    public static ReadResult ReadFile(string path, Func<IEnumerable<string>>? rules = null, SizeDraw? draw = null, ITextSource? files = null)
    {
        var findings = new FindingList();
        files ??= new InputFiles();
        return TextFile.Read(path, path, files, findings) is { } text
            ? Read(text, path, findings, rules, draw, files)
            : new ReadResult(null, findings.InOrder()) { Files = [path] };
    }

    /// <summary>Reads a circuit file's text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">The file's name in findings; part files are looked for below its folder.</param>
    /// <param name="rules">Lists the names of the rules that expectations may name; without it those names are not checked.</param>
    /// <param name="draw">Where sizes come out within their tolerances; as written when there is none.</param>
    public static ReadResult ReadText(string text, string name, Func<IEnumerable<string>>? rules = null, SizeDraw? draw = null) =>
        Read(text, name, new FindingList(), rules, draw, new InputFiles());

    private static ReadResult Read(string text, string name, FindingList findings, Func<IEnumerable<string>>? rules, SizeDraw? draw, ITextSource files)
    {
        Unit? unit = null;
        var folder = new PartFolder(name, files) { Draw = draw };
        try
        {
            if (YamlTree.Read(text, name, findings) is { } root) unit = new UnitReader(folder.Drawn(root), folder, findings) { Rules = rules }.Read();
        }
        catch (ReadingStopped)
        {
            // What was found so far says why.
        }

        return new ReadResult(findings.HasErrors ? null : unit, findings.InOrder()) { Files = [name, .. folder.Named] };
    }
}
