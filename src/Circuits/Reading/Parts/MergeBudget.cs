using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Bounds what the revisions of a part come to once merged: many revisions of a long one multiply.</summary>
/// <param name="part">What messages call the part.</param>
/// <param name="findings">Takes what is wrong.</param>
internal sealed class MergeBudget(string part, FindingList findings)
{
    private int spent;

    /// <summary>Counts the entries of a merged mapping or list.</summary>
    /// <exception cref="ReadingStopped">They are too many.</exception>
    public void Spend(int entries, YamlNode at)
    {
        spent += entries;
        if (spent <= YamlLimits.Nodes) return;
        findings.Add(FileRules.FileTooBig.At(at.Place, $"The revisions of {part} come to more than {YamlLimits.Nodes} values", "Is this a circuit file?"));
        throw new ReadingStopped();
    }
}
