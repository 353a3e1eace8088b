using System.Globalization;
using System.Text;
using Circuits.Model;

namespace Circuits.Tests.Outside;

/// <summary>
/// What a circuit file says, as facts for the answer-set program <c>reach.lp</c>. Written from the model alone: nothing here
/// has seen the library's stacking, network or solver. The program's head says what each unit of measure is.
/// </summary>
internal sealed class ClingoFacts
{
    private readonly StringBuilder text = new();

    private ClingoFacts()
    {
    }

    public static string Of(Unit unit)
    {
        var facts = new ClingoFacts();
        facts.AddJoints(unit);
        foreach (var part in unit.Parts)
        {
            foreach (var revision in part.Revisions) facts.AddRevision(part, revision);
        }

        if (unit.Pump is { } pump) facts.Fact("pump", Q(pump.Into.Name));
        facts.Fact("most", Pascals(unit.Pump?.Relief?.Kilopascals ?? 2000));
        foreach (var gear in unit.Gears) facts.AddGear(gear);
        return facts.text.ToString();
    }

    /// <summary>A name as the program writes it.</summary>
    public static string Q(object name) => $"\"{name}\"";

    /// <summary>A revision as the program knows it.</summary>
    public static string Id(Part part, Revision revision) => Q($"{part.Name}={revision.Name}");

    public static string Pascals(double kilopascals) => Whole(kilopascals * 1000);

    private static string Whole(double value) => ((int)Math.Round(value)).ToString(CultureInfo.InvariantCulture);

    private static string Micrometres(double millimetres) => Whole(millimetres * 1000);

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string ShapeOf(Shape shape) => shape switch
    {
        Shape.Hole hole => $"hole({Micrometres(hole.Diameter.Millimetres)})",
        Shape.Slot slot => $"slot({Micrometres(slot.Width.Millimetres)})",
        Shape.Cutout => "cutout",
        _ => "unsized",
    };

    private void Fact(string name, params string[] arguments) =>
        text.Append(name).Append('(').AppendJoin(',', arguments).AppendLine(").");

    private void AddJoints(Unit unit)
    {
        foreach (var joint in unit.Joints)
        {
            Fact("joint", Q(joint.Name), Q(joint.Upper.Name), Q(joint.Lower.Name), Number(joint.Sheets.Length));
            for (var i = 0; i < joint.Sheets.Length; i++)
                Fact("sheet", Q(joint.Name), Number(i + 1), Q(joint.Sheets[i].Name));
            AddNames(unit, joint);
        }
    }

    /// <summary>What reports call a place where nothing but a gasket's window, or nothing at all, lies between two castings.</summary>
    private void AddNames(Unit unit, Joint joint)
    {
        var locations = unit.Parts.SelectMany(part => part.Revisions).SelectMany(revision => revision.Passages)
            .SelectMany(passage => passage.Locations).Where(use => use.Joint == joint.Name).Select(use => use.Location).Distinct().ToList();
        foreach (var location in locations)
        {
            if (joint.Sheets.IsEmpty) Fact("facing", Q(joint.Name), Q(location), Q($"{joint.Name}@{location}"));
            foreach (var sheet in joint.Sheets)
            {
                var part = unit.FindPart(sheet.Name)!;
                foreach (var revision in part.Revisions.Where(revision => revision.OpenElsewhere))
                    Fact("windowname", Id(part, revision), Q(location), Q($"{part.Name}@{location}"));
            }
        }
    }

    private void AddRevision(Part part, Revision revision)
    {
        var id = Id(part, revision);
        string Full(string name) => Q($"{part.Name}.{name}");
        Fact("revision", Q(part.Name), id);
        foreach (var passage in revision.Passages)
        {
            Fact("passage", id, Full(passage.Name), Q(passage.Circuit));
            foreach (var use in passage.Locations) Fact("opens", id, Full(passage.Name), Q(use.Joint), Q(use.Location));
        }

        AddSheet(part, revision, id);
        foreach (var ball in revision.Balls) AddBall(part, ball, id, Full(ball.Name));
        foreach (var valve in revision.Valves) AddValve(valve, id, Full(valve.Name));
        foreach (var regulator in revision.Regulators) AddRegulator(regulator, id, Full(regulator.Name));
        foreach (var solenoid in revision.Solenoids) AddSolenoid(solenoid, id, Full(solenoid.Name));
        foreach (var position in revision.Lever)
        {
            for (var i = 0; i < position.Ports.Length; i++)
            {
                foreach (var use in position.Ports[i].Passages)
                    Fact("lever", id, Full("lever"), Q(position.Name), Number(i), Q(use.Name));
            }
        }

        // Which pressures open a bypass, the program does not ask: a screen passes oil unless nothing in it does.
        foreach (var screen in revision.Screens.Where(screen => screen.LetsThrough))
            Fact("drilled", id, Q(screen.From.Name), Q(screen.To.Name), Full(screen.Name));
        foreach (var (a, b) in revision.Restrictions.Select(item => (item.A, item.B)).Concat(revision.Leaks.Select(item => (item.A, item.B))))
            Fact("drilled", id, Q(a.Name), Q(b.Name), Q($"{part.Name}:{Short(part, a)}~{Short(part, b)}"));
    }

    private static string Short(Part part, PassageUse use) => use.Name.Part == part.Name ? use.Name.Passage : use.Name.ToString();

    private void AddSheet(Part part, Revision revision, string id)
    {
        for (var i = 0; i < revision.Openings.Length; i++)
        {
            var opening = revision.Openings[i];
            Fact("opening", id, Number(i), ShapeOf(opening.Shape), Whole((opening.Shape.Area?.SquareMillimetres ?? 20) * 1000));
            Fact("element", id, Number(i), Q($"{part.Name}@{string.Join('-', opening.At.Select(at => at.Name))}"));
            foreach (var at in opening.At) Fact("over", id, Number(i), Q(at.Name));
        }

        if (revision.OpenElsewhere) Fact("gasket", id);
        foreach (var except in revision.OpenExcept) Fact("paper", id, Q(except.Name));
    }

    private void AddBall(Part part, Ball ball, string id, string name)
    {
        Fact("ball", id, name, Q(ball.Pocket.Name), ball.Diameter is { } diameter ? Micrometres(diameter.Millimetres) : "none");
        for (var i = 0; i < ball.Seats.Length; i++)
        {
            switch (ball.Seats[i])
            {
                case Seat.AtLocation at:
                    Fact("seat", id, name, Number(i), $"at({(at.Joint is null ? "any" : Q(at.Joint))},{Q(at.Location)})");
                    break;
                case Seat.InCasting inside:
                    Fact("seat", id, name, Number(i), $"in({Q(inside.To.Name)},{ShapeOf(inside.Shape)})");
                    Fact("seatname", id, name, Number(i), Q(SeatElement(part, ball, inside)));
                    break;
            }
        }
    }

    /// <summary>The name of a seat inside a casting, as reports write it.</summary>
    public static string SeatElement(Part part, Ball ball, Seat.InCasting seat) =>
        $"{part.Name}:{ball.Pocket.Name.Passage}~{seat.To.Name.Passage}";

    private void AddValve(Valve valve, string id, string name)
    {
        var springs = valve.HeldBy.OfType<SpoolForce.Spring>().Sum(spring => spring.Preload.Newtons)
            - valve.MovedBy.OfType<SpoolForce.Spring>().Sum(spring => spring.Preload.Newtons);
        Fact("valve", id, name, Whole(springs * 100_000));
        foreach (var (position, ports) in new[] { ("rest", valve.Rest), ("moved", valve.Moved) })
        {
            for (var i = 0; i < ports.Length; i++)
            {
                foreach (var use in ports[i].Passages) Fact("port", id, name, position, Number(i), Q(use.Name));
            }
        }

        foreach (var (word, forces) in new[] { ("push", valve.MovedBy), ("hold", valve.HeldBy) })
        {
            for (var i = 0; i < forces.Length; i++)
            {
                // 100 mm2 is the documented default for a land without an area.
                if (forces[i] is SpoolForce.Signal signal)
                    Fact(word, id, name, Number(i), Q(signal.From.Name), Whole((signal.Area?.SquareMillimetres ?? 100) * 10));
            }
        }
    }

    private void AddRegulator(Regulator regulator, string id, string name)
    {
        var spring = Pascals(regulator.Spring?.Kilopascals ?? 0);
        if (regulator is Regulator.Reducing reducing)
            Fact("reducing", id, name, Q(reducing.From.Name), Q(reducing.Out.Name), Q(reducing.To.Name), spring);
        if (regulator is Regulator.Spilling spilling)
        {
            Fact("spilling", id, name, Q(spilling.Holds.Name), spring);
            for (var i = 0; i < spilling.SpillsTo.Length; i++) Fact("spills", id, name, Number(i), Q(spilling.SpillsTo[i].Name));
        }

        for (var i = 0; i < regulator.SetBy.Length; i++)
            Fact("setby", id, name, Number(i), Q(regulator.SetBy[i].From.Name), Whole(regulator.SetBy[i].Ratio * 1000));
    }

    private void AddSolenoid(Solenoid solenoid, string id, string name)
    {
        Fact(
            "solenoid", id, name, Q(solenoid.Name), Q(solenoid.Feed.Name), Q(solenoid.Out.Name), Q(solenoid.To.Name),
            solenoid.Kind == SolenoidKind.Switching ? "switching" : "pressure", solenoid.AtRest == RestState.Low ? "low" : "high");
        for (var i = 0; i < solenoid.Table.Length; i++)
        {
            Fact(
                "table", id, name, Number(i + 1), Whole(solenoid.Table[i].Current.Amperes * 1000),
                Pascals(solenoid.Table[i].Pressure.Kilopascals));
        }
    }

    private void AddGear(GearState gear)
    {
        var name = Q(gear.Name);
        Fact("gear", name);
        if (gear.Lever is { } lever) Fact("lever_at", name, Q(lever.Name));
        foreach (var solenoid in gear.Energize) Fact("energize", name, Q(solenoid.Name));
        foreach (var command in gear.Commands)
        {
            Fact(
                "command", name, Q(command.Solenoid.Name),
                command.Pressure is { } pressure ? $"pressure({Pascals(pressure.Kilopascals)})" : $"current({Whole(command.Current!.Value.Amperes * 1000)})");
        }

        foreach (var signal in gear.Signals) Fact("signal", name, Q(signal.At.Name), Pascals(signal.Pressure.Kilopascals));
    }
}
