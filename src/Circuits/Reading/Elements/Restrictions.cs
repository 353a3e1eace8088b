using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Restrictions(YamlMapping content) => revision = revision with
    {
        Restrictions = part.Listed(content, "restrictions", item => RestrictionReader.Label("restriction", item, part), (item, fields) =>
            RestrictionReader.Read(fields, part) is var (a, b, shape) ? new Restriction(a, b, shape, item.Place) : null),
    };
}

internal sealed partial class Sections
{
    public void Restrictions(List<Section> all) =>
        all.Add(new("restrictions", "restriction") { MarksOf = RestrictionReader.PairOf, NotInherited = "no restriction" });
}

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

    /// <summary>The two passages of a restriction or leak as it is written, in the order of their names.</summary>
    public static ImmutableArray<string> PairOf(YamlNode item, string part)
    {
        if (item is not YamlMapping mapping || mapping.Find("between") is not YamlSequence { Items: [YamlScalar a, YamlScalar b] }) return [];
        var left = Local(a.Text, part);
        var right = Local(b.Text, part);
        return [string.CompareOrdinal(left, right) < 0 ? $"{left}~{right}" : $"{right}~{left}"];
    }

    private static string Local(string name, string part) =>
        name.StartsWith(part, StringComparison.Ordinal) && name.Length > part.Length && name[part.Length] == '.' ? name[(part.Length + 1)..] : name;
}
