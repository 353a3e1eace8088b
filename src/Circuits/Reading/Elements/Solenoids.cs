using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Solenoids(YamlMapping content) => revision = revision with
    {
        Solenoids = Named(content, "solenoids", "solenoid", (key, fields) => SolenoidReader.Read(key, fields, part), solenoid => (solenoid.Name, solenoid.Place)),
    };
}

internal sealed partial class Sections
{
    public void Solenoids(List<Section> all) => all.Add(new("solenoids", "solenoid") { DeclaresNames = true });
}

/// <summary>Reads solenoids.</summary>
internal static class SolenoidReader
{
    private static readonly KeyValuePair<string, SolenoidKind>[] Kinds =
        [new("switching", SolenoidKind.Switching), new("pressure", SolenoidKind.Pressure)];

    private static readonly KeyValuePair<string, RestState>[] RestStates = [new("low", RestState.Low), new("high", RestState.High)];

    /// <summary>The solenoid, or null with findings.</summary>
    public static Solenoid? Read(YamlScalar key, Fields fields, PartContext part)
    {
        var feed = fields.Need("feed") is { } a ? part.Passages.Find(a, fields.What("feed")) : null;
        var outlet = fields.Need("out") is { } b ? part.Passages.Find(b, fields.What("out")) : null;
        var to = RegulatorReader.Drain(fields, part);
        var kind = fields.Word(fields.Need("kind", "switching or pressure"), "kind", Kinds);
        var rest = fields.Word(fields.Need("at-rest", "low or high"), "at-rest", RestStates);
        var port = fields.Area("port", SpoolRanges.Port);
        var table = Table(fields, part.Findings);
        if (kind == SolenoidKind.Switching && fields.Has("table"))
            part.Findings.Add(ShapeRules.MisplacedKey.At(fields.PlaceOf("table"), $"{fields.Element} is switching, so it cannot have a table", "Delete the table, or write kind: pressure."));
        if (feed is { } x && outlet is { } y && x.Name == y.Name)
            part.Findings.Add(NameRules.NamedTwice.At(y.Place, $"{fields.Element} feeds {y.Name} from itself", "Name two passages."));
        return feed is { } source && outlet is { } sink && to is { } drain && kind is { } does && rest is { } dead
            ? new Solenoid(key.Text, source, sink, drain, does, dead, port, table, key.Place)
            : null;
    }

    private static ImmutableArray<CurrentPoint> Table(Fields fields, FindingList findings) =>
    [
        .. PointTable.Read(fields, "table", SolenoidRanges.Current, SolenoidRanges.Pressure, findings)
            .Select(point => new CurrentPoint(new Current(point.First), new Pressure(point.Second))),
    ];
}
