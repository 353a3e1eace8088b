namespace Circuits.Reading.Yaml;

/// <summary>How much of a file is read. Far above what a real unit needs; they keep a broken or hostile file from costing time or memory.</summary>
internal static class YamlLimits
{
    /// <summary>Longest file, in bytes.</summary>
    public const int Bytes = InputFiles.MostBytes;

    /// <summary>Deepest nesting of lists and mappings; the language itself needs about 10.</summary>
    public const int Depth = 32;

    /// <summary>How many nodes aliases may add to those that are written.</summary>
    public const int AliasNodes = 20_000;

    /// <summary>Longest single value, in characters.</summary>
    public const int Characters = 10_000;

    /// <summary>Longest chain of revisions based on one another.</summary>
    public const int BasedOn = 50;

    /// <summary>Most revisions of a part.</summary>
    public const int Revisions = 200;

    /// <summary>Most parts of a unit, and most matched sets.</summary>
    public const int Parts = 500;

    /// <summary>Most nodes in a file; also most entries that the revisions of a part come to once merged.</summary>
    public const int Nodes = 250_000;
}
