using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>What can be found out about a part's balls, valves, solenoids and the like.</summary>
internal static class ElementTraits
{
    public static void Derive(Unit unit, Part part, TraitTable table)
    {
        for (var i = 0; i < part.Revisions.Length; i++)
        {
            var revision = part.Revisions[i];
            foreach (var ball in revision.Balls) DeriveBall(part, ball, i, table);
            if (part.Kind == PartKind.BallSet) CountBalls(part, i, table);
            foreach (var restriction in revision.Restrictions) DeriveHole(part, TraitKind.Restriction, restriction.A, restriction.B, restriction.Shape, i, table);
            foreach (var alike in revision.Restrictions.GroupBy(restriction => Between(part.Name, TraitKind.Restriction, restriction.A, restriction.B)))
                table.Count(HoleCount(part.Name, alike.Key), i, alike.Count(), listed: alike.Count() > 1);
            foreach (var valve in revision.Valves) table.Yes(Named(part.Name, TraitKind.Valve, valve.Name), i);
            foreach (var regulator in revision.Regulators) table.Yes(Named(part.Name, TraitKind.Regulator, regulator.Name), i);
            foreach (var solenoid in revision.Solenoids) DeriveSolenoid(part.Name, solenoid, i, table);
            foreach (var accumulator in revision.Accumulators) DeriveAccumulator(part.Name, accumulator, i, table);
            foreach (var clutch in unit.Clutches) CountFaces(part, clutch, i, table);
            foreach (var mark in revision.Marks) table.Yes(Mark(part.Name, mark.Name), i);
        }
    }

    /// <summary>A mark in the author's words.</summary>
    public static Trait Mark(string part, string text)
    {
        var words = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return new Trait(part, new TraitKey(TraitKind.Mark, words.ToUpperInvariant(), false), words, Means.Look);
    }

    /// <summary>A ball in the pocket of that name.</summary>
    public static Trait BallIn(string part, string pocket, bool sized = false) =>
        WithSize(part, TraitKind.Ball, pocket, $"ball in {pocket}", sized, Means.LookAsFound, Means.Caliper);

    /// <summary>How many balls of a size a set has.</summary>
    public static Trait BallsOf(string part, BenchSize size) =>
        new(part, new TraitKey(TraitKind.BallCountOfSize, BenchText.Of(size), false), $"balls of {BenchText.Of(size)}", Means.Count);

    /// <summary>How many balls of a size that no revision is known to have; one of a size that is not given may be of it.</summary>
    public static TraitRow OtherBalls(Part part, BenchSize size) => new(
        BallsOf(part.Name, size), [.. part.Revisions.Select(revision => revision.Balls.Any(ball => ball.Diameter is null) ? Answer.NotGiven : Answer.None)], IsListed: false);

    /// <summary>A pocket as phrases name it: by its own name within its part, else by its full name.</summary>
    public static string Local(string part, PassageName passage) => passage.Part == part ? passage.Passage : passage.ToString();

    private static Trait WithSize(string part, TraitKind kind, string subject, string phrase, bool sized, Means presence, Means size) =>
        new(part, new TraitKey(kind, subject, sized), phrase, sized ? size : presence) { Implied = sized ? [new TraitKey(kind, subject, false)] : [] };

    private static Trait Named(string part, TraitKind kind, string name) =>
        new(part, new TraitKey(kind, name, false), $"{Word(kind)} {name}", Means.Look);

    private static string Word(TraitKind kind) => kind switch
    {
        TraitKind.Valve => "valve",
        TraitKind.Regulator => "regulator",
        TraitKind.Solenoid => "solenoid",
        _ => "accumulator",
    };

    private static void DeriveBall(Part part, Ball ball, int revision, TraitTable table)
    {
        var pocket = Local(part.Name, ball.Pocket.Name);
        table.Yes(BallIn(part.Name, pocket), revision);
        table.Size(BallIn(part.Name, pocket, sized: true), revision, ball.Diameter is { } diameter ? new BenchSize(diameter.Millimetres, null) : null);
        foreach (var seat in ball.Seats.OfType<Seat.InCasting>()) DeriveHole(part, TraitKind.Seat, ball.Pocket, seat.To, seat.Shape, revision, table);
    }

    /// <summary>Loose balls do not show where they lay; how many there are of each size does.</summary>
    private static void CountBalls(Part part, int revision, TraitTable table)
    {
        table.Count(new Trait(part.Name, new TraitKey(TraitKind.BallCount, "", false), "balls", Means.Count), revision, part.Revisions[revision].Balls.Length);
        var sizes = part.Revisions.SelectMany(any => any.Balls).Select(ball => ball.Diameter).OfType<Quantities.Length>()
            .Select(diameter => new BenchSize(diameter.Millimetres, null)).Distinct().OrderBy(size => size.Width);
        var balls = part.Revisions[revision].Balls;
        foreach (var size in sizes)
        {
            var trait = BallsOf(part.Name, size);
            if (balls.Any(ball => ball.Diameter is null)) table.Maybe(trait, revision);
            else table.Count(trait, revision, balls.Count(ball => ball.Diameter!.Value.Millimetres == size.Width));
        }
    }

    private static void DeriveHole(Part part, TraitKind kind, PassageUse a, PassageUse b, Shape shape, int revision, TraitTable table)
    {
        var (one, two) = Between(part.Name, kind, a, b);
        var phrase = $"{(kind == TraitKind.Seat ? "seat" : "drilled hole")} between {one} and {two}";
        var subject = $"{one}~{two}";
        table.Yes(WithSize(part.Name, kind, subject, phrase, false, Means.Look, Means.PinGauge), revision);
        table.Size(WithSize(part.Name, kind, subject, phrase, true, Means.Look, Means.PinGauge), revision, BenchText.SizeOf(shape));
    }

    /// <summary>The passages that a hole joins; of a plain one, in the order of their names.</summary>
    private static (string One, string Two) Between(string part, TraitKind kind, PassageUse a, PassageUse b)
    {
        var (one, two) = (Local(part, a.Name), Local(part, b.Name));
        return string.CompareOrdinal(one, two) > 0 && kind == TraitKind.Restriction ? (two, one) : (one, two);
    }

    private static Trait HoleCount(string part, (string One, string Two) between) => new(
        part, new TraitKey(TraitKind.HoleCount, $"{between.One}~{between.Two}", false), $"drilled holes between {between.One} and {between.Two}", Means.Count);

    private static void DeriveSolenoid(string part, Solenoid solenoid, int revision, TraitTable table)
    {
        table.Yes(Named(part, TraitKind.Solenoid, solenoid.Name), revision);
        TraitKey there = new(TraitKind.Solenoid, solenoid.Name, false);
        // Dead, the outlet of one that rests high is open to its feed, that of one that rests low to its drain.
        var dead = new Trait(part, new TraitKey(TraitKind.DeadHigh, solenoid.Name, false), $"solenoid {solenoid.Name} passes air to its outlet when dead", Means.Air) { Implied = [there] };
        if (solenoid.AtRest == RestState.High) table.Yes(dead, revision);
        var holds = new Trait(part, new TraitKey(TraitKind.HoldsPressure, solenoid.Name, false), $"solenoid {solenoid.Name} holds a pressure between off and full", Means.Tester) { Implied = [there] };
        if (solenoid.Kind == SolenoidKind.Pressure) table.Yes(holds, revision);
    }

    private static void DeriveAccumulator(string part, Accumulator accumulator, int revision, TraitTable table)
    {
        table.Yes(WithSize(part, TraitKind.Accumulator, accumulator.Name, $"accumulator {accumulator.Name}", false, Means.Look, Means.Caliper), revision);
        table.Size(
            WithSize(part, TraitKind.Accumulator, accumulator.Name, $"accumulator {accumulator.Name}", true, Means.Look, Means.Caliper), revision,
            accumulator.Area is { } area ? new BenchSize(Math.Round(area.EquivalentDiameter, 2), null) : null);
    }

    private static void CountFaces(Part part, Clutch clutch, int revision, TraitTable table)
    {
        if (!part.Revisions.Any(any => any.Clutches.Any(change => change.Name == clutch.Name && change.Plates is not null))) return;
        var trait = new Trait(part.Name, new TraitKey(TraitKind.FaceCount, clutch.Name, false), $"friction faces of {clutch.Name}", Means.Count);
        var plates = part.Revisions[revision].Clutches.FirstOrDefault(change => change.Name == clutch.Name)?.Plates ?? clutch.Plates;
        if (plates is { } count) table.Count(trait, revision, count);
        else table.Maybe(trait, revision);
    }
}
