using Circuits.Tests.Properties;
using CsCheck;

namespace Circuits.Tests.Studies.Identify;

/// <summary>Random small units whose parts have up to six revisions, each a few changes away from another.</summary>
internal sealed class BenchGen : Gen<UnitSpec>
{
    public override UnitSpec Generate(PCG pcg, Size? min, out Size size)
    {
        var unit = new UnitGen(revisions: false).Generate(pcg, min, out size);
        var dice = new Dice(pcg);
        var counter = 0;
        return unit with { Parts = [.. unit.Parts.Select(part => Shaped(Grown(part, dice, unit, prefix => $"{prefix}z{++counter}")))], Matched = [] };
    }

    /// <summary>What an opening of no given shape may pass for is a matter of judgement; it has tests of its own.</summary>
    private static PartSpec Shaped(PartSpec part) => part with
    {
        Revisions = [.. part.Revisions.Select(revision => revision with
        {
            Openings = [.. revision.Openings.Select(opening => opening.Size.Cut > 0 ? opening with { Size = SizeSpec.Hole(Math.Round(Math.Sqrt(opening.Size.Cut), 3)) } : opening)],
        })],
    };

    private static PartSpec Grown(PartSpec part, Dice dice, UnitSpec unit, Func<string, string> name)
    {
        var revisions = part.Revisions;
        for (var count = dice.Between(1, 6); revisions.Length < count;)
        {
            var from = dice.Pick(revisions);
            var next = new Mutation(dice, unit).Second(part with { Revisions = [from] }, name).Revisions[1];
            // Sizes a little apart, so that a gauge takes some of them for one another.
            if (dice.Chance(30)) next = next with { Openings = [.. next.Openings.Select(opening => opening with { Size = Nudged(opening.Size, dice) })] };
            revisions = revisions.Add(next with { Name = $"r{revisions.Length + 1}" });
        }

        return part with { Revisions = revisions };
    }

    private static SizeSpec Nudged(SizeSpec size, Dice dice) =>
        size.IsHole && dice.Chance(20) ? SizeSpec.Hole(Math.Round(size.Width + dice.Real(0.02, 0.3), 3)) : size;
}

/// <summary>What a person can see, pin or measure of a revision, told apart by the spec alone: a second derivation.</summary>
internal static class Looks
{
    /// <summary>Whether a bench with this much tolerance could take one revision for the other, each measured as its file says.</summary>
    public static bool Same(PartSpec part, RevisionSpec one, RevisionSpec other, double tolerance) =>
        part.Kind == "sheet" ? SameSheet(one, other, tolerance) : Cavities(one) == Cavities(other) && Elements(part, one) == Elements(part, other) && SameHoles(part, one, other, tolerance);

    private static bool SameSheet(RevisionSpec one, RevisionSpec other, double tolerance)
    {
        var (mine, its) = (Groups(one), Groups(other));
        if (one.IsGasket != other.IsGasket || !Papered(one).SequenceEqual(Papered(other))) return false;
        if (!mine.Keys.Order().SequenceEqual(its.Keys.Order())) return false;
        return mine.All(group => SameGroup(group.Value, its[group.Key], tolerance));
    }

    // Paper that a slot is cut through is no paper.
    private static IEnumerable<string> Papered(RevisionSpec revision) =>
        revision.OpenExcept.Where(id => !revision.Openings.Any(opening => opening.At.Contains(id))).Order();

    // An area alone may be a hole or a slot of any size.
    private static bool SameGroup(List<SizeSpec> one, List<SizeSpec> other, double tolerance)
    {
        if (one.Exists(size => size.Cut > 0) || other.Exists(size => size.Cut > 0)) return SureKinds(one, other) && SureKinds(other, one);
        var (holes, slots) = (one.Where(size => size.IsHole).ToList(), one.Where(size => !size.IsHole).ToList());
        var (otherHoles, otherSlots) = (other.Where(size => size.IsHole).ToList(), other.Where(size => !size.IsHole).ToList());
        return holes.Count == otherHoles.Count && slots.Count == 0 == (otherSlots.Count == 0)
            && holes.TrueForAll(size => otherHoles.Exists(its => Near(size, its, tolerance)))
            && slots.TrueForAll(size => otherSlots.Exists(its => Near(size, its, tolerance)));
    }

    // What one has for sure, the other must have, or may have where its shape is not given.
    private static bool SureKinds(List<SizeSpec> one, List<SizeSpec> other)
    {
        var vague = other.Exists(size => size.Cut > 0);
        return (vague || !one.Exists(size => size.Cut == 0 && size.IsHole) || other.Exists(size => size.Cut == 0 && size.IsHole))
            && (vague || !one.Exists(size => size.Length > 0) || other.Exists(size => size.Length > 0));
    }

    private static bool Near(SizeSpec a, SizeSpec b, double tolerance) =>
        Math.Abs(a.Width - b.Width) <= tolerance + 1e-6 && Math.Abs(a.Length - b.Length) <= tolerance + 1e-6;

    // Where a slot lies over it anyway, an opening of no given shape adds nothing that could be seen.
    private static Dictionary<string, List<SizeSpec>> Groups(RevisionSpec revision) => revision.Openings
        .Where(opening => opening.Size.Cut == 0 || opening.At.Length > 1
            || revision.Openings.All(other => other.At.Length == 1 || !other.At.Contains(opening.At[0])))
        .GroupBy(opening => string.Join('-', opening.At.Order(StringComparer.Ordinal)))
        .ToDictionary(group => group.Key, group => group.Select(opening => Upright(opening.Size)).ToList());

    private static SizeSpec Upright(SizeSpec size) => size.Length > 0 ? SizeSpec.Slot(Math.Min(size.Width, size.Length), Math.Max(size.Width, size.Length)) : size;

    /// <summary>Which locations are open, and which of them lie in one cavity.</summary>
    private static string Cavities(RevisionSpec revision) => string.Join(" | ", revision.Passages
        .Select(passage => string.Join(' ', passage.At.Select(at => $"{at.Joint}.{at.Location}").Order(StringComparer.Ordinal)))
        .Where(cavity => cavity.Length > 0).Order(StringComparer.Ordinal));

    private static string Elements(PartSpec part, RevisionSpec revision) => string.Join(" | ", (string[])
    [
        .. revision.Balls.Select(ball => $"ball {ball.Pocket}").Distinct(), .. part.Kind == "ball-set" ? [$"{revision.Balls.Length}"] : Array.Empty<string>(),
        .. revision.Balls.SelectMany(ball => ball.Seats.Where(seat => seat.To is not null).Select(seat => $"seat {ball.Pocket} {seat.To}")),
        .. revision.Valves.Select(valve => valve.Name), .. revision.Regulators.Select(regulator => regulator.Name),
        .. revision.Solenoids.Select(solenoid => $"{solenoid.Name} {solenoid.IsPressure} {solenoid.AtRestHigh}"),
        .. revision.Restrictions.Select(hole => string.Join('~', ((string[])[$"{hole.A}", $"{hole.B}"]).Order(StringComparer.Ordinal))),
    ]);

    // A second ball in one pocket does not show on the bench. No change here alters the size of a ball, a seat or a drilled hole: only their presence differs.
    private static bool SameHoles(PartSpec part, RevisionSpec one, RevisionSpec other, double tolerance) =>
        tolerance >= 0 && (part.Kind != "ball-set" || one.Balls.Length == other.Balls.Length) && one.Restrictions.Length == other.Restrictions.Length;
}
