using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Clutches(YamlMapping content) => revision = revision with { Clutches = part.Named(content, "clutches", "clutch", (key, fields) => ClutchReader.Change(key, fields, part)) };
}

internal sealed partial class Sections
{
    public void Clutches(List<Section> all) => all.Add(new("clutches", "clutch"));
}

/// <summary>Reads clutches: whole ones at the top of the file, and what part revisions change of them.</summary>
internal static class ClutchReader
{
    /// <summary>What a revision changes of a clutch, or null with a finding when the unit has no such clutch.</summary>
    public static Clutch? Change(YamlScalar key, Fields fields, PartContext part)
    {
        var clutch = Read(key, fields, part.Passages);
        return NameLookup.Known(key, part.Names.Clutches, "clutch", new What($"part {part.Part.Name}", "clutches"), part.Findings) ? clutch : null;
    }

    /// <summary>A clutch, or a change of one; every key may be missing.</summary>
    public static Clutch Read(YamlScalar key, Fields fields, PassageScope passages)
    {
        var clutch = new Clutch(key.Text, key.Place)
        {
            At = fields.Find("at") is { } at ? passages.Find(at, fields.What("at")) : null,
            Area = fields.Area("area", ClutchRanges.Area),
            ReleaseAt = fields.Find("release") is { } release ? passages.Find(release, fields.What("release")) : null,
            ReleaseArea = fields.Area("release-area", ClutchRanges.Area),
            ReturnSpring = fields.Force("return-spring", ClutchRanges.ReturnSpring),
            Rate = fields.SpringRate("rate", ClutchRanges.Rate),
            Stroke = fields.Length("stroke", ClutchRanges.Stroke),
            Fill = fields.Volume("fill", ClutchRanges.Fill),
            PackRate = fields.SpringRate("pack-rate", ClutchRanges.PackRate),
            Plates = fields.Count("plates", ClutchRanges.Plates),
            Friction = fields.Number("friction", ClutchRanges.Friction),
            Radius = fields.Length("radius", ClutchRanges.Radius),
            Drum = DrumReader.Read(fields),
        };
        if (clutch is { At: { } apply, ReleaseAt: { } off } && apply.Name == off.Name)
            fields.Findings.Add(NameRules.NamedTwice.At(off.Place, $"{fields.Element} applies and releases by {off.Name}", "Name two passages."));
        return clutch;
    }
}
