using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Finds the passages that names stand for, seen from a part or from the top of the file.</summary>
/// <param name="names">Every name there is.</param>
/// <param name="part">The part that the names stand in, or null at the top.</param>
/// <param name="findings">Takes what is wrong.</param>
internal sealed class PassageScope(NameIndex names, PartNames? part, FindingList findings)
{
    private const string Sump = "exhaust";
    private const string Line = "line";

    /// <summary>The passage, or null with a finding.</summary>
    /// <param name="node">The name.</param>
    /// <param name="what">What it belongs to.</param>
    /// <param name="sump">Whether it may be the sump.</param>
    public PassageUse? Find(YamlNode node, What what, bool sump = false)
    {
        if (Nodes.Text(node, what, "a passage", findings) is not { } scalar) return null;
        if (scalar.Text == Sump)
        {
            if (sump) return new PassageUse(PassageName.Exhaust, node.Place);
            findings.Add(NameRules.ExhaustMisplaced.At(node.Place, $"{what} cannot be exhaust", "Name a passage that oil under pressure can reach."));
            return null;
        }

        var dot = scalar.Text.IndexOf('.', StringComparison.Ordinal);
        var name = dot >= 0 ? Across(scalar, dot, what) : part is not null ? Local(scalar, part, what) : Bare(scalar, what);
        return name is { } found ? new PassageUse(found, node.Place) : null;
    }

    private PassageName? Across(YamlScalar name, int dot, What what)
    {
        var owner = name.Text[..dot];
        var passage = name.Text[(dot + 1)..];
        if (owner == "pump" && passage == Line) return PumpLine(name, what);
        if (names.FindPart(owner) is not { } other)
        {
            if (!names.PartSet.Complete) return null;
            var parts = names.PartSet.All;
            return Unknown(name, $"{what}: there is no part {Quote.Text(owner)}", Quote.Meant(DidYouMean.Find(owner, parts), "part", parts));
        }

        if (other.Admits(passage)) return new PassageName(owner, passage);
        return NotIn(name, passage, other, what);
    }

    private PassageName? Local(YamlScalar name, PartNames here, What what)
    {
        if (here.Admits(name.Text)) return new PassageName(here.Name, name.Text);
        return name.Text == Line ? PumpLine(name, what) : NotIn(name, name.Text, here, what);
    }

    private PassageName? Bare(YamlScalar name, What what)
    {
        var owners = names.PassageOwners(name.Text);
        if (owners.Count == 1) return new PassageName(owners[0].Name, name.Text);
        if (name.Text == Line && names.HasPump) return PumpLine(name, what);
        if (owners.Count > 1)
        {
            findings.Add(NameRules.AmbiguousName.At(
                name.Place, $"{what}: several parts have a passage {name.Text}", $"Write {Quote.Any(owners.Select(owner => $"{owner.Name}.{name.Text}"))}."));
            return null;
        }

        if (names.AnyBroken) return null;
        var all = names.Parts.SelectMany(known => known.PassageList).Distinct();
        var close = DidYouMean.Find(name.Text, all);
        var full = close is null ? null : $"{names.PassageOwners(close)[0].Name}.{close}";
        return Unknown(name, $"{what}: no part has a passage {Quote.Text(name.Text)}", full is null ? "Write part.passage." : $"Did you mean {full}?");
    }

    private PassageName? PumpLine(YamlScalar name, What what)
    {
        if (names.Line is { } line) return line;
        if (names.HasPump) return null;
        return Unknown(name, $"{what}: {name.Text} is the pump's passage, and the unit has no pump", "Describe the pump at the top of the file, or name a passage.");
    }

    private PassageName? NotIn(YamlScalar name, string passage, PartNames owner, What what)
    {
        string help;
        var close = DidYouMean.Find(passage, owner.PassageList);
        var elsewhere = names.PassageOwners(passage) is [var first, ..] ? first.Name : null;
        if (elsewhere is not null)
            help = $"Did you mean {elsewhere}.{passage}?";
        else if (close is not null)
            help = $"Did you mean {(owner == part ? close : $"{owner.Name}.{close}")}?";
        else
            help = $"Passages of {owner.Name}: {(owner.PassageList.IsEmpty ? "none" : Quote.Any(owner.PassageList))}.";
        return Unknown(name, $"{what}: no revision of {owner.Name} has a passage {Quote.Text(passage)}", help);
    }

    private PassageName? Unknown(YamlScalar name, PhraseBuilder message, string help)
    {
        findings.Add(NameRules.UnknownName.At(name.Place, message, help));
        return null;
    }
}
