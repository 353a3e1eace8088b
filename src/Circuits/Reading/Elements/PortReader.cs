using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads what a valve joins in one position.</summary>
internal static class PortReader
{
    /// <summary>The ports; those that cannot be built are left out.</summary>
    public static ImmutableArray<Port> Read(ImmutableArray<YamlNode> items, What what, PartContext part) =>
        items.Length > 0 && items.All(item => item is YamlScalar { IsNull: false })
            ? Flat(items, what, part)
            : [.. items.Select(item => Port(item, what, part)).OfType<Port>()];

    /// <summary>The slip that is made most: <c>rest: [a, b]</c> for <c>rest: [[a, b]]</c>.</summary>
    private static ImmutableArray<Port> Flat(ImmutableArray<YamlNode> items, What what, PartContext part)
    {
        var names = string.Join(", ", items.OfType<YamlScalar>().Select(item => item.Text));
        part.Findings.Add(ShapeRules.WrongType.At(
            items[0].Place, $"{what} must be a list of ports, each a list of its own, found {items[0].Describe()}", $"Write [[{names}]]."));
        return [];
    }

    private static Port? Port(YamlNode item, What what, PartContext part)
    {
        if (item is not YamlMapping) return Joined(item, what, part) is { IsEmpty: false } passages ? new Port(passages, null, item.Place) : null;
        var fields = new Fields((YamlMapping)item, $"port of {what}", item.Place, part.Findings);
        var area = fields.Area("area", SpoolRanges.Port);
        var joined = fields.Need("join") is { } node ? Joined(node, fields.What("join"), part) : [];
        fields.Close();
        return joined.IsEmpty ? null : new Port(joined, area, item.Place);
    }

    private static ImmutableArray<PassageUse> Joined(YamlNode node, What what, PartContext part)
    {
        if (node is not YamlSequence { Items.Length: > 1 } list)
        {
            Nodes.Wrong(node, what, "ports such as [a, b]", "A port joins two passages or more: [[a, b], [c, exhaust]].", part.Findings);
            return [];
        }

        var passages = ImmutableArray.CreateBuilder<PassageUse>(list.Items.Length);
        var seen = new HashSet<PassageName>();
        foreach (var item in list.Items)
        {
            if (part.Passages.Find(item, what, sump: true) is not { } passage) continue;
            if (!seen.Add(passage.Name))
                part.Findings.Add(NameRules.NamedTwice.At(passage.Place, $"{what}: a port joins {passage.Name} to itself", "Name another passage."));
            else
                passages.Add(passage);
        }

        return passages.Count > 1 ? passages.ToImmutable() : [];
    }
}
