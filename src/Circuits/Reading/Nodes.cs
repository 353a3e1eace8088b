using System.Collections.Immutable;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Takes nodes apart: a list where a list belongs, text where text belongs, or a finding.</summary>
internal static class Nodes
{
    /// <summary>The node as a mapping, or null with a finding.</summary>
    public static YamlMapping? Mapping(YamlNode node, What what, FindingList findings)
    {
        if (node is YamlMapping mapping) return mapping;
        Wrong(node, what, "keys with values", "Write key: value lines below it, or {} for none.", findings);
        return null;
    }

    /// <summary>The node's items, or nothing with a finding.</summary>
    public static ImmutableArray<YamlNode> List(YamlNode node, What what, FindingList findings)
    {
        if (node is YamlSequence list) return list.Items;
        Wrong(node, what, "a list", "Put it in brackets: [ ... ].", findings);
        return [];
    }

    /// <summary>The node's items; a single value stands for a list of one.</summary>
    public static ImmutableArray<YamlNode> ListOrOne(YamlNode node) => node is YamlSequence list ? list.Items : [node];

    /// <summary>The texts among the node's items; a single value stands for a list of one.</summary>
    public static ImmutableArray<string> Texts(YamlNode node)
    {
        var items = ListOrOne(node);
        var texts = ImmutableArray.CreateBuilder<string>(items.Length);
        foreach (var item in items)
        {
            if (item is YamlScalar scalar) texts.Add(scalar.Text);
        }

        return texts.DrainToImmutable();
    }

    /// <summary>The node as text that is not empty, or null with a finding.</summary>
    public static YamlScalar? Text(YamlNode node, What what, string expected, FindingList findings, string? help = null)
    {
        if (node is YamlScalar { IsNull: false, Text.Length: > 0 } scalar) return scalar;
        Wrong(node, what, expected, help, findings);
        return null;
    }

    /// <summary>Reports a node of the wrong kind.</summary>
    public static void Wrong(YamlNode node, What what, string expected, string? help, FindingList findings)
    {
        if (node is YamlScalar { IsNull: true })
            findings.Add(ShapeRules.EmptyValue.At(node.Place, $"{what} has no value; expected {expected}", help ?? "Give a value, or delete the key."));
        else
            findings.Add(ShapeRules.WrongType.At(node.Place, $"{what} must be {expected}, found {node.Describe()}", help));
    }
}
