using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Balls(YamlMapping content) => revision = revision with
    {
        Balls = Named(content, "balls", "ball", (key, fields) => BallReader.Read(key, fields, part), ball => (ball.Name, ball.Place)),
    };
}

internal sealed partial class Sections
{
    public void Balls(List<Section> all) => all.Add(new("balls", "ball"));
}

/// <summary>Reads balls.</summary>
internal static class BallReader
{
    /// <summary>The ball, or null with findings.</summary>
    public static Ball? Read(YamlScalar key, Fields fields, PartContext part)
    {
        var pocket = fields.Need("in", "the passage it lies in") is { } node ? part.Passages.Find(node, fields.What("in")) : null;
        var diameter = fields.Length("diameter", BallRanges.Diameter);
        var (seats, lift) = (Seats(fields, pocket, part), fields.Length("lift", BallRanges.Lift));
        return pocket is { } inside && seats.Length > 0 ? new Ball(key.Text, inside, seats, diameter, key.Place) { Lift = lift } : null;
    }

    private static ImmutableArray<Seat> Seats(Fields fields, PassageUse? pocket, PartContext part)
    {
        if (fields.Need("seats", "[11, 12], the locations it can close") is not { } node) return [];
        var items = Nodes.ListOrOne(node);
        if (items.Length is < 1 or > 2)
        {
            part.Findings.Add(ShapeRules.WrongType.At(
                node.Place, $"{fields.What("seats")} must be one seat or two, found {items.Length}", "A check ball has one seat, a two-way ball two."));
            return [];
        }

        ImmutableArray<Seat> seats = [.. items.Select(item => Seat(item, fields, pocket, part)).OfType<Seat>()];
        if (seats is [Model.Seat.AtLocation a, Model.Seat.AtLocation b] && (a.Joint, a.Location) == (b.Joint, b.Location))
            part.Findings.Add(NameRules.NamedTwice.At(b.Place, $"{fields.Element} has location {b.Location} as both its seats", "Name two locations, or one seat."));
        return seats;
    }

    private static Seat? Seat(YamlNode item, Fields ball, PassageUse? pocket, PartContext part)
    {
        if (item is YamlMapping)
        {
            var fields = new Fields((YamlMapping)item, $"seat of {ball.Element}", item.Place, part.Findings);
            Seat? seat = fields.Has("to") ? Inside(fields, item, part) : AtJoint(fields, item, pocket, ball.Element, part);
            fields.Close();
            return seat;
        }

        if (Nodes.Text(item, ball.What("seats"), "location numbers", part.Findings) is not { } id || !NameCheck.Location(id, part.Findings)) return null;
        if (pocket is { } inside) SeatCheck.Check(null, id, inside.Name, ball.Element, part.Names, part.Findings);
        return new Seat.AtLocation(null, id.Text, id.Place);
    }

    private static Seat.InCasting? Inside(Fields fields, YamlNode item, PartContext part)
    {
        var to = fields.Find("to") is { } node ? part.Passages.Find(node, fields.What("to"), sump: true) : null;
        var hole = ShapeReader.Hole(fields) ?? Shape.Unsized.Instance;
        return to is { } beyond ? new Seat.InCasting(beyond, hole, item.Place) : null;
    }

    private static Seat.AtLocation? AtJoint(Fields fields, YamlNode item, PassageUse? pocket, string ball, PartContext part)
    {
        var joint = fields.NeedText("joint");
        var at = fields.NeedText("at");
        fields.Has("to");
        if (joint is null || at is null || !NameCheck.Location(at, part.Findings)) return null;
        if (!NameLookup.Known(joint, part.Names.Joints, "joint", fields.What("joint"), part.Findings)) return null;
        if (pocket is { } inside) SeatCheck.Check(joint.Text, at, inside.Name, ball, part.Names, part.Findings);
        return new Seat.AtLocation(joint.Text, at.Text, item.Place);
    }
}
