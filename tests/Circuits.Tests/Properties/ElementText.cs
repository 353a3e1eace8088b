using System.Collections.Immutable;
using System.Globalization;

namespace Circuits.Tests.Properties;

/// <summary>One element of a spec as the keys and values of a circuit file.</summary>
internal static class ElementText
{
    public static string Number(double value) => value.ToString("0.############", CultureInfo.InvariantCulture);

    public static string Name(Ref passage, string part) => passage.Part == part ? passage.Passage : passage.ToString();

    public static string Flow(IEnumerable<(string Key, string Value)> entries) =>
        $"{{{string.Join(", ", entries.Select(entry => $"{entry.Key}: {entry.Value}"))}}}";

    public static string List(IEnumerable<string> items) => $"[{string.Join(", ", items)}]";

    public static (string Key, string Value) Size(SizeSpec size)
    {
        if (size.IsHole) return ("hole", $"{Number(size.Width)} mm");
        return size.Cut > 0 ? ("area", $"{Number(size.Cut)} mm2") : ("slot", $"{Number(size.Width)} x {Number(size.Length)} mm");
    }

    public static IEnumerable<(string Key, string Value)> Passage(PassageSpec passage)
    {
        foreach (var joint in passage.At.GroupBy(use => use.Joint))
            yield return (joint.Key, List(joint.Select(use => use.Location)));
        if (passage.Circuit is { } circuit) yield return ("circuit", circuit);
    }

    public static IEnumerable<(string Key, string Value)> Opening(OpeningSpec opening) =>
        [("at", opening.At.Length == 1 ? opening.At[0] : List(opening.At)), Size(opening.Size)];

    public static IEnumerable<(string Key, string Value)> Ball(BallSpec ball, string part)
    {
        yield return ("in", Name(ball.Pocket, part));
        yield return ("seats", List(ball.Seats.Select(seat => Seat(seat, part))));
        if (ball.Diameter is { } diameter) yield return ("diameter", $"{Number(diameter)} mm");
    }

    private static string Seat(SeatSpec seat, string part)
    {
        if (seat.To is { } to) return Flow([("to", Name(to, part)), ("hole", $"{Number(seat.Hole)} mm")]);
        return seat.Joint is null ? seat.Location! : Flow([("joint", seat.Joint), ("at", seat.Location!)]);
    }

    public static IEnumerable<(string Key, string Value)> Valve(ValveSpec valve, string part) =>
    [
        ("rest", Ports(valve.Rest, part)), ("moved", Ports(valve.Moved, part)),
        ("moved-by", List(valve.MovedBy.Select(force => Force(force, part)))), ("held-by", List(valve.HeldBy.Select(force => Force(force, part)))),
    ];

    public static string Ports(ImmutableArray<PortSpec> ports, string part) => List(ports.Select(port =>
    {
        var names = List(port.Passages.Select(passage => Name(passage, part)));
        return port.Area is { } area ? Flow([("join", names), ("area", $"{Number(area)} mm2")]) : names;
    }));

    private static string Force(ForceSpec force, string part)
    {
        if (force.From is not { } from) return Flow([("spring", $"{Number(force.Spring)} N")]);
        return force.Area is { } area
            ? Flow([("pressure", Name(from, part)), ("area", $"{Number(area)} mm2")])
            : Flow([("pressure", Name(from, part))]);
    }

    public static IEnumerable<(string Key, string Value)> Regulator(RegulatorSpec regulator, string part)
    {
        if (regulator.Holds is { } holds)
        {
            yield return ("holds", Name(holds, part));
            yield return ("spills-to", List(regulator.SpillsTo.Select(outlet => Name(outlet, part))));
        }
        else
        {
            yield return ("from", Name(regulator.From!.Value, part));
            yield return ("out", Name(regulator.Out!.Value, part));
            if (regulator.To is { } to) yield return ("to", Name(to, part));
        }

        yield return ("spring", $"{Number(regulator.Spring)} kPa");
        if (!regulator.SetBy.IsEmpty)
        {
            yield return (regulator.Holds is null ? "set-by" : "boost", List(regulator.SetBy.Select(signal =>
                Flow([("pressure", Name(signal.From, part)), ("ratio", Number(signal.Ratio))]))));
        }

        if (regulator.Port is { } port) yield return ("port", $"{Number(port)} mm2");
    }

    public static IEnumerable<(string Key, string Value)> Solenoid(SolenoidSpec solenoid, string part)
    {
        yield return ("feed", Name(solenoid.Feed, part));
        yield return ("out", Name(solenoid.Out, part));
        if (solenoid.To is { } to) yield return ("to", Name(to, part));
        yield return ("kind", solenoid.IsPressure ? "pressure" : "switching");
        yield return ("at-rest", solenoid.AtRestHigh ? "high" : "low");
        if (solenoid.Port is { } port) yield return ("port", $"{Number(port)} mm2");
    }

    public static IEnumerable<(string Key, string Value)> Hole(HoleSpec hole, string part) =>
        [("between", List([Name(hole.A, part), Name(hole.B, part)])), Size(hole.Size)];
}
