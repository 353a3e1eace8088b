using System.Collections.Immutable;

namespace Circuits.Tests.Properties;

/// <summary>Smaller neighbours of a unit: each lacks one thing.</summary>
internal static class Shrink
{
    public static IEnumerable<UnitSpec> Of(UnitSpec unit)
    {
        foreach (var gear in unit.Gears.Where(_ => unit.Gears.Length > 1)) yield return unit with { Gears = unit.Gears.Remove(gear) };
        foreach (var clutch in unit.Clutches) yield return WithoutClutch(unit, clutch);
        for (var i = 0; i < unit.Gears.Length; i++)
        {
            foreach (var smaller in Gear(unit.Gears[i])) yield return unit with { Gears = unit.Gears.SetItem(i, smaller) };
        }

        for (var i = 0; i < unit.Parts.Length; i++)
        {
            var part = unit.Parts[i];
            if (part.Kind is "ball-set" or "solenoid-pack") yield return WithoutPart(unit, i);
            if (part.Revisions.Length > 1)
                yield return WithPart(unit, i, part with { Revisions = part.Revisions[..1] });
            for (var k = 0; k < part.Revisions.Length; k++)
            {
                foreach (var smaller in Revision(part.Revisions[k]))
                    yield return Clean(WithPart(unit, i, part with { Revisions = part.Revisions.SetItem(k, smaller) }));
            }
        }
    }

    private static UnitSpec WithPart(UnitSpec unit, int index, PartSpec part)
    {
        var first = part.Revisions[0].Name;
        var known = part.Revisions.Select(revision => revision.Name).ToHashSet();
        return unit with
        {
            Parts = unit.Parts.SetItem(index, part),
            Matched = [.. unit.Matched.Select(set => set with { Revisions = set.Revisions.SetItem(index, known.Contains(set.Revisions[index]) ? set.Revisions[index] : first) })
                .DistinctBy(set => string.Join(',', set.Revisions))],
        };
    }

    private static UnitSpec WithoutPart(UnitSpec unit, int index) => Clean(unit with
    {
        Parts = unit.Parts.RemoveAt(index),
        Matched = [.. unit.Matched.Select(set => set with { Revisions = set.Revisions.RemoveAt(index) })],
    });

    private static UnitSpec WithoutClutch(UnitSpec unit, ClutchSpec clutch) => unit with
    {
        Clutches = unit.Clutches.Remove(clutch),
        Gears = [.. unit.Gears.Select(gear => gear with { Apply = gear.Apply.Remove(clutch.Name) })],
    };

    /// <summary>Gears name only solenoids that are left.</summary>
    private static UnitSpec Clean(UnitSpec unit)
    {
        var solenoids = unit.Parts.SelectMany(part => part.Revisions).SelectMany(revision => revision.Solenoids).Select(solenoid => solenoid.Name).ToHashSet();
        return unit with
        {
            Gears = [.. unit.Gears.Select(gear => gear with
            {
                Energize = [.. gear.Energize.Where(solenoids.Contains)],
                Commands = [.. gear.Commands.Where(pair => solenoids.Contains(pair.Solenoid))],
            })],
        };
    }

    private static IEnumerable<GearSpec> Gear(GearSpec gear)
    {
        foreach (var name in gear.Energize) yield return gear with { Energize = gear.Energize.Remove(name) };
        foreach (var pair in gear.Commands) yield return gear with { Commands = gear.Commands.Remove(pair) };
        foreach (var pair in gear.Signals) yield return gear with { Signals = gear.Signals.Remove(pair) };
        foreach (var name in gear.Apply) yield return gear with { Apply = gear.Apply.Remove(name) };
    }

    private static IEnumerable<RevisionSpec> Revision(RevisionSpec revision)
    {
        foreach (var list in Without(revision.Balls)) yield return revision with { Balls = list };
        foreach (var list in Without(revision.Valves)) yield return revision with { Valves = list };
        foreach (var list in Without(revision.Regulators)) yield return revision with { Regulators = list };
        foreach (var list in Without(revision.Solenoids)) yield return revision with { Solenoids = list };
        foreach (var list in Without(revision.Restrictions)) yield return revision with { Restrictions = list };
        foreach (var list in Without(revision.Leaks)) yield return revision with { Leaks = list };
        foreach (var list in Without(revision.Openings)) yield return revision with { Openings = list };
        foreach (var list in Without(revision.Passages)) yield return revision with { Passages = list };
        foreach (var list in Each(revision.Passages, passage => Without(passage.At).Select(at => passage with { At = at })))
            yield return revision with { Passages = list };
        foreach (var list in Each(revision.Valves, Valve)) yield return revision with { Valves = list };
        foreach (var list in Each(revision.Balls, ball => Without(ball.Seats).Where(seats => !seats.IsEmpty).Select(seats => ball with { Seats = seats })))
            yield return revision with { Balls = list };
        foreach (var list in Each(revision.Regulators, regulator => Without(regulator.SetBy).Select(setBy => regulator with { SetBy = setBy })))
            yield return revision with { Regulators = list };
        foreach (var list in Each(revision.Lever, position => Without(position.Ports).Select(ports => (position.Position, ports))))
            yield return revision with { Lever = list };
    }

    private static IEnumerable<ValveSpec> Valve(ValveSpec valve)
    {
        foreach (var ports in Without(valve.Rest)) yield return valve with { Rest = ports };
        foreach (var ports in Without(valve.Moved)) yield return valve with { Moved = ports };
        foreach (var forces in Without(valve.MovedBy)) yield return valve with { MovedBy = forces };
        foreach (var forces in Without(valve.HeldBy)) yield return valve with { HeldBy = forces };
    }

    private static IEnumerable<ImmutableArray<T>> Without<T>(ImmutableArray<T> list) =>
        Enumerable.Range(0, list.Length).Select(index => list.RemoveAt(index));

    private static IEnumerable<ImmutableArray<T>> Each<T>(ImmutableArray<T> list, Func<T, IEnumerable<T>> smaller) =>
        Enumerable.Range(0, list.Length).SelectMany(index => smaller(list[index]).Select(item => list.SetItem(index, item)));
}
