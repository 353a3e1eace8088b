using System.Collections.Immutable;
using System.Globalization;
using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>Finds what differs between revisions and yet shows nowhere: springs, lands, ports.</summary>
internal static class Unseen
{
    /// <summary>The elements that are not the same in all of these revisions, <c>regulator main</c>, in the order of the file.</summary>
    public static ImmutableArray<string> Between(Part part, ImmutableArray<Revision> revisions)
    {
        var byElement = new Dictionary<string, List<string>>();
        foreach (var revision in revisions)
        {
            foreach (var same in Elements(part.Name, revision).GroupBy(element => element.Name))
            {
                if (!byElement.TryGetValue(same.Key, out var texts)) byElement[same.Key] = texts = [];
                texts.Add(string.Join(';', same.Select(element => element.Text)));
            }
        }

        return [.. byElement.Where(element => element.Value.Count != revisions.Length || element.Value.Distinct().Count > 1).Select(element => element.Key)];
    }

    private static IEnumerable<(string Name, string Text)> Elements(string part, Revision revision)
    {
        foreach (var passage in revision.Passages.Where(passage => passage.Locations.IsEmpty))
            yield return ($"passage {passage.Name}, which opens nowhere", "");
        foreach (var opening in revision.Openings.Where(opening => opening.Shape is Shape.Cutout))
            yield return ($"opening {part}@{string.Join('-', opening.At.Select(at => at.Name))}", Of(opening.Shape));
        foreach (var ball in revision.Balls)
            yield return ($"ball {ball.Name}", Join([ball.Pocket.Name.ToString(), .. ball.Seats.Select(seat => Of(seat)), Of(ball.Lift?.Millimetres)]));
        foreach (var valve in revision.Valves)
            yield return ($"valve {valve.Name}", Join([Of(valve.Rest), Of(valve.Moved), Of(valve.MovedBy), Of(valve.HeldBy), Of(valve.Travel?.Millimetres), Of(valve.Overlap?.Millimetres)]));
        foreach (var regulator in revision.Regulators)
            yield return ($"regulator {regulator.Name}", Of(regulator));
        foreach (var solenoid in revision.Solenoids)
            yield return ($"solenoid {solenoid.Name}", Of(solenoid));
        foreach (var lever in revision.Lever)
            yield return ($"manual valve in {lever.Name}", Of(lever.Ports));
        foreach (var restriction in revision.Restrictions)
            yield return ($"hole {restriction.A.Name}~{restriction.B.Name}", Of(restriction.Shape));
        foreach (var leak in revision.Leaks)
            yield return ($"leak {leak.A.Name}~{leak.B.Name}", Of(leak.Shape));
        foreach (var accumulator in revision.Accumulators)
            yield return ($"accumulator {accumulator.Name}", Join([accumulator.At.Name.ToString(), accumulator.Back?.Name.ToString() ?? "", Of(accumulator.Area?.SquareMillimetres), Of(accumulator.Spring?.Newtons), Of(accumulator.Rate?.NewtonsPerMillimetre), Of(accumulator.Stroke?.Millimetres)]));
        foreach (var clutch in revision.Clutches)
            yield return ($"clutch {clutch.Name}", Of(clutch));
    }

    private static string Of(Seat seat) => seat switch
    {
        Seat.AtLocation at => $"{at.Joint}@{at.Location}",
        Seat.InCasting inside => $"{inside.To.Name} {Of(inside.Shape)}",
        _ => "",
    };

    private static string Of(ImmutableArray<Port> ports) =>
        Join(ports.Select(port => $"{string.Join('+', port.Passages.Select(passage => passage.Name))} {Of(port.Area?.SquareMillimetres)}"));

    private static string Of(ImmutableArray<SpoolForce> forces) => Join(forces.Select(force => force switch
    {
        SpoolForce.Signal signal => $"{signal.From.Name} {Of(signal.Area?.SquareMillimetres)}",
        SpoolForce.Spring spring => $"{Of(spring.Preload.Newtons)} {Of(spring.Rate?.NewtonsPerMillimetre)}",
        _ => "",
    }));

    private static string Of(Regulator regulator) => Join(
    [
        regulator switch
        {
            Regulator.Spilling spilling => $"{spilling.Holds.Name}>{Join(spilling.SpillsTo.Select(to => to.Name.ToString()))}",
            Regulator.Reducing reducing => $"{reducing.From.Name}>{reducing.Out.Name}>{reducing.To.Name}",
            _ => "",
        },
        Of(regulator.Spring?.Kilopascals), Of(regulator.PortArea?.SquareMillimetres),
        Join(regulator.SetBy.Select(signal => $"{signal.From.Name} {Of(signal.Ratio)}")),
        regulator.Spool is { } spool
            ? Join([Of(spool.Land.SquareMillimetres), Of(spool.Rate.NewtonsPerMillimetre), Of(spool.Travel.Millimetres), Of(spool.Overlap.Millimetres)])
            : "",
    ]);

    private static string Of(Solenoid solenoid) => Join(
    [
        $"{solenoid.Feed.Name}>{solenoid.Out.Name}>{solenoid.To.Name}", Of(solenoid.PortArea?.SquareMillimetres),
        Join(solenoid.Table.Select(point => $"{Of(point.Current.Amperes)} {Of(point.Pressure.Kilopascals)}")),
    ]);

    private static string Of(Clutch clutch) => Join(
    [
        clutch.At?.Name.ToString() ?? "", clutch.ReleaseAt?.Name.ToString() ?? "", Of(clutch.Area?.SquareMillimetres), Of(clutch.ReleaseArea?.SquareMillimetres),
        Of(clutch.ReturnSpring?.Newtons), Of(clutch.Rate?.NewtonsPerMillimetre), Of(clutch.Stroke?.Millimetres), Of(clutch.Fill?.Millilitres),
        Of(clutch.PackRate?.NewtonsPerMillimetre), Of(clutch.Friction), Of(clutch.Radius?.Millimetres),
        clutch.Drum is { } drum ? Join([drum.Turns.Name, Of(drum.Oil.Millimetres), Of(drum.Inner.Millimetres), Of(drum.Outer.Millimetres)]) : "",
    ]);

    private static string Of(Shape shape) => shape switch
    {
        Shape.Hole { Depth: { } depth } => $"{Of(shape.Area?.SquareMillimetres)} {Of(depth.Millimetres)}",
        Shape.RoundGap gap => $"{Of(gap.Diameter.Millimetres)} {Of(gap.Height.Millimetres)} {Of(gap.Length.Millimetres)} {Of(gap.Eccentricity)}",
        Shape.FlatGap gap => $"{Of(gap.Across.Millimetres)} {Of(gap.Height.Millimetres)} {Of(gap.Length.Millimetres)}",
        _ => Of(shape.Area?.SquareMillimetres),
    };

    private static string Of(double? value) => value?.ToString("R", CultureInfo.InvariantCulture) ?? "";

    private static string Join(IEnumerable<string> texts) => string.Join('|', texts);
}
