using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads the joints between castings.</summary>
internal sealed class JointReader(NameIndex names, FindingList findings)
{
    private readonly Dictionary<string, (string Joint, Place Place)> sheetIn = new(StringComparer.Ordinal);
    private bool someWrong;

    /// <summary>The joints by name, in the order of the file; null for one that could not be read.</summary>
    public OrderedDictionary<string, Joint?> Read(ImmutableArray<YamlEntry> entries)
    {
        var joints = new OrderedDictionary<string, Joint?>(StringComparer.Ordinal);
        foreach (var (key, value) in entries)
        {
            NameCheck.Joint(key, findings);
            if (Fields.Open(value, $"joint {key.Text}", key.Place, findings) is not { } fields)
            {
                joints[key.Text] = null;
                continue;
            }

            joints[key.Text] = Joint(key, fields);
            fields.Close();
        }

        if (names.Joints.Complete && !someWrong && !joints.ContainsValue(null)) ReportLooseSheets();
        return joints;
    }

    private Joint? Joint(YamlScalar key, Fields fields)
    {
        var what = fields.What("between");
        NameUse? upper = null, lower = null;
        if (fields.Need("between", "[upper casting, lower casting]") is { } between)
        {
            if (between is YamlSequence { Items: [var first, var second] })
            {
                upper = PartOf(first, PartKind.Casting, what);
                lower = PartOf(second, PartKind.Casting, what);
            }
            else
                Nodes.Wrong(between, what, "two castings", "Write between: [upper, lower].", findings);
        }

        var sheets = NameLookup.List(fields.List("sheets"), fields.What("sheets"), findings, item => PartOf(item, PartKind.Sheet, fields.What("sheets")));
        CountCheck.Check(sheets, CountLimits.Sheets, fields.What("sheets"), sheet => sheet.Place, findings);
        foreach (var sheet in sheets) Place(sheet, key.Text);
        var locations = Locations(fields);
        if (upper is not { } a || lower is not { } b) return null;
        if (a.Name == b.Name)
            findings.Add(NameRules.NamedTwice.At(b.Place, $"{what} names {b.Name} twice", "Name the two castings that meet there."));
        return new Joint(key.Text, a, b, sheets, locations, key.Place);
    }

    private NameUse? PartOf(YamlNode node, PartKind kind, What what)
    {
        if (NameLookup.Find(node, names.PartSet, "part", what, findings) is not { } name) return null;
        if (names.FindPart(name.Name)?.Kind is { } found && found != kind)
        {
            findings.Add(PartRules.WrongPartKind.At(
                name.Place, $"{what}: {name.Name} is not a {(kind == PartKind.Sheet ? "sheet" : "casting")}", "A joint is written between: [casting, casting], sheets: [sheet, ...]."));
            someWrong = true;
            return null;
        }

        return name;
    }

    private void Place(NameUse sheet, string joint)
    {
        if (sheetIn.TryAdd(sheet.Name, (joint, sheet.Place))) return;
        var (other, place) = sheetIn[sheet.Name];
        findings.Add(PartRules.SheetInTwoJoints.At(
            sheet.Place, $"Sheet {sheet.Name} lies in joint {other} and in joint {joint}", "Take it out of one of them.")
            with
        { Related = [new(place, $"in joint {other}")] });
    }

    private void ReportLooseSheets()
    {
        foreach (var part in names.Parts)
        {
            if (part.Kind != PartKind.Sheet || sheetIn.ContainsKey(part.Name)) continue;
            findings.Add(PartRules.SheetWithoutJoint.At(part.Place, $"Sheet {part.Name} lies in no joint", "Add it to the sheets of its joint."));
        }
    }

    private ImmutableArray<Location> Locations(Fields fields)
    {
        if (fields.Find("locations") is not { } node) return [];
        var what = fields.What("locations");
        var locations = ImmutableArray.CreateBuilder<Location>();
        if (node is not YamlMapping mapping)
        {
            var ids = NameLookup.List(Nodes.List(node, what, findings), what, findings, item =>
                Nodes.Text(item, what, "location numbers", findings) is { } id ? new NameUse(id.Text, id.Place) : null);
            return [.. ids.Select(id => new Location(id.Name, null, null, id.Place))];
        }

        foreach (var (key, value) in mapping.Entries)
        {
            if (!NameCheck.Location(key, findings)) continue;
            var own = fields.What($"location {key.Text}");
            double? right = null, up = null;
            if (value is YamlSequence { Items: [var x, var y] })
                (right, up) = (Sizes.Number(x, JointRanges.Coordinate, own, findings), Sizes.Number(y, JointRanges.Coordinate, own, findings));
            else
                Nodes.Wrong(value, own, "coordinates [x, y] in mm", "Write 1: [10.0, 12.5].", findings);
            locations.Add(new Location(key.Text, right, up, key.Place));
        }

        return locations.ToImmutable();
    }
}
