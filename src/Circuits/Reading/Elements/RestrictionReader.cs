using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads restrictions and leaks, which are written alike.</summary>
internal static class RestrictionReader
{
    /// <summary>The two passages and the size, or null with findings.</summary>
    public static (PassageUse A, PassageUse B, Shape Shape)? Read(Fields fields, PartContext part)
    {
        var shape = ShapeReader.ReadInside(fields);
        if (fields.Need("between", "[a, b]") is not { } node) return null;
        var what = fields.What("between");
        if (node is not YamlSequence { Items: [var first, var second] })
        {
            Nodes.Wrong(node, what, "two passages", "Write between: [a, b].", part.Findings);
            return null;
        }

        var a = part.Passages.Find(first, what, sump: true);
        var b = part.Passages.Find(second, what, sump: true);
        if (a is not { } left || b is not { } right) return null;
        if (left.Name != right.Name) return (left, right, shape);
        part.Findings.Add(NameRules.NamedTwice.At(right.Place, $"{fields.Element} joins {right.Name} to itself", "Name two passages."));
        return null;
    }

    /// <summary>What messages call one: <c>restriction body:line~converter</c>.</summary>
    public static string Label(string kind, YamlNode item, PartContext part) =>
        item is YamlMapping mapping && mapping.Find("between") is YamlSequence { Items: [YamlScalar a, YamlScalar b] }
            ? $"{kind} {part.Part.Name}:{a.Text}~{b.Text}"
            : $"{kind} of {part.Part.Name}";
}
