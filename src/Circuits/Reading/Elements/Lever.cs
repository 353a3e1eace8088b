using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Lever(YamlMapping content) => revision = revision with { Lever = LeverReader.Read(content, part) };
}

internal sealed partial class Sections
{
    public void Lever(List<Section> all) => all.Add(new("lever", "ports") { DeclaresNames = true });
}

/// <summary>Reads the manual valve.</summary>
internal static class LeverReader
{
    /// <summary>The lever's positions, in the order of the file.</summary>
    public static ImmutableArray<LeverPosition> Read(YamlMapping content, PartContext part)
    {
        var label = $"lever of {part.Part.Name}";
        if (part.Section(content, "lever") is not { } node || Nodes.Mapping(node, new What(label), part.Findings) is not { } mapping) return [];
        var positions = ImmutableArray.CreateBuilder<LeverPosition>(mapping.Entries.Length);
        foreach (var (key, value) in mapping.Entries)
        {
            NameCheck.Other(key, "lever position", part.Findings);
            var what = new What(label, key.Text);
            if (value is YamlScalar { IsNull: true })
                part.Findings.Add(ShapeRules.EmptyValue.At(value.Place, $"{what} has no value", "Write [] for a position that joins nothing."));
            else
                positions.Add(new LeverPosition(key.Text, PortReader.Read(Nodes.List(value, what, part.Findings), what, part), key.Place));
        }

        return positions.ToImmutable();
    }
}
