using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads what tests cost.</summary>
internal static class TestCostReader
{
    /// <summary>The costs; what the file leaves out has its default.</summary>
    public static TestCosts Read(YamlNode node, Place place, FindingList findings)
    {
        if (Fields.Open(node, "tests", place, findings) is not { } fields) return TestCosts.Default;
        var given = ImmutableArray.CreateBuilder<KeyValuePair<TestKind, double>>();
        foreach (var (kind, word, _) in TestCosts.Kinds)
        {
            if (fields.Number(word, FaultRanges.Cost) is { } cost) given.Add(KeyValuePair.Create(kind, cost));
        }

        fields.Close();
        return new TestCosts { Given = given.ToImmutable() };
    }
}
