using CsCheck;

namespace Circuits.Tests.Properties;

/// <summary>The same unit with everything whose order means nothing in another order. Gears keep theirs: it is the shift order.</summary>
internal static class Reordering
{
    public static UnitSpec Of(UnitSpec unit)
    {
        var dice = new Dice(new PCG(1, Property.Seed));
        var order = dice.Shuffle(Enumerable.Range(0, unit.Parts.Length));
        return unit with
        {
            Joints = [.. dice.Shuffle(unit.Joints)],
            Parts = [.. order.Select(i => unit.Parts[i] with { Revisions = [.. unit.Parts[i].Revisions.Select(revision => Of(revision, dice))] })],
            Matched = [.. unit.Matched.Select(set => set with { Revisions = [.. order.Select(i => set.Revisions[i])] })],
            Clutches = [.. dice.Shuffle(unit.Clutches)],
        };
    }

    private static RevisionSpec Of(RevisionSpec revision, Dice dice) => revision with
    {
        Passages = [.. dice.Shuffle(revision.Passages.Select(passage => passage with { At = [.. dice.Shuffle(passage.At)] }))],
        Openings = [.. dice.Shuffle(revision.Openings)],
        Balls = [.. dice.Shuffle(revision.Balls)],
        Valves = [.. dice.Shuffle(revision.Valves.Select(valve => valve with
        {
            Rest = [.. dice.Shuffle(valve.Rest)],
            Moved = [.. dice.Shuffle(valve.Moved)],
            MovedBy = [.. dice.Shuffle(valve.MovedBy)],
            HeldBy = [.. dice.Shuffle(valve.HeldBy)],
        }))],
        Regulators = [.. dice.Shuffle(revision.Regulators)],
        Solenoids = [.. dice.Shuffle(revision.Solenoids)],
        Restrictions = [.. dice.Shuffle(revision.Restrictions)],
        Leaks = [.. dice.Shuffle(revision.Leaks)],
    };
}
