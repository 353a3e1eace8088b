using System.Collections.Immutable;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads tables of pairs, such as <c>[[0 A, 0 kPa], [1 A, 600 kPa]]</c>.</summary>
internal static class PointTable
{
    /// <summary>The points of a key's table in base units; none when it is not there or wrong.</summary>
    public static ImmutableArray<(double First, double Second)> Read(
        Fields fields, string key, PlausibleRange first, PlausibleRange second, FindingList findings) =>
        fields.Find(key) is { } node ? Read(node, fields.What(key), first, second, findings) : [];

    /// <summary>The points of a table in base units, in rising order of the first number; none, with findings, when it is wrong.</summary>
    public static ImmutableArray<(double First, double Second)> Read(
        YamlNode node, What what, PlausibleRange first, PlausibleRange second, FindingList findings)
    {
        var points = ImmutableArray.CreateBuilder<(double First, double Second)>();
        var whole = true;
        var last = "";
        var items = Nodes.List(node, what, findings);
        foreach (var item in items)
        {
            if (item is not YamlSequence { Items: [var left, var right] })
            {
                Nodes.Wrong(item, what, $"pairs of {first.Dimension!.Value.Name()} and {second.Dimension!.Value.Name()}", "Write [[a, b], [c, d]].", findings);
                whole = false;
                continue;
            }

            var a = Sizes.Read(left, first, what, findings);
            var b = Sizes.Read(right, second, what, findings);
            if (a is not { } x || b is not { } y)
                whole = false;
            else if (points.Count > 0 && x <= points[^1].First)
            {
                findings.Add(SizeRules.TableOrder.At(item.Place, $"{what} must rise, but {((YamlScalar)left).Text} comes after {last}", "Put the points in rising order, each once."));
                whole = false;
            }
            else
            {
                points.Add((x, y));
                last = ((YamlScalar)left).Text;
            }
        }

        if (node is YamlSequence && items.Length < 2)
            findings.Add(SizeRules.TableOrder.At(node.Place, $"{what} needs two points or more, found {items.Length}", "Add a point."));
        return whole ? points.ToImmutable() : [];
    }
}
