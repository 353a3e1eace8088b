using System.Collections.Immutable;

namespace Circuits.Tests.Properties;

/// <summary>Draws a second revision of a part: one to three changes of the kinds that design levels really differ by.</summary>
internal sealed class Mutation(Dice dice, UnitSpec unit)
{
    public PartSpec Second(PartSpec part, Func<string, string> name)
    {
        var revision = part.Revisions[0] with { Name = "r2" };
        for (var n = dice.Between(1, 3); n > 0; n--) revision = Change(part, revision, name);
        return part with { Revisions = part.Revisions.Add(revision) };
    }

    private RevisionSpec Change(PartSpec part, RevisionSpec revision, Func<string, string> name) => (part.Kind, dice.Next(6)) switch
    {
        ("sheet", 0) when revision.IsGasket => revision with { OpenExcept = [.. Locations(part).Take(1)] },
        ("sheet", 0 or 1) when !revision.Openings.IsEmpty => revision with { Openings = revision.Openings.RemoveAt(dice.Next(revision.Openings.Length)) },
        ("sheet", 2 or 3) when !revision.Openings.IsEmpty => revision with { Openings = Resized(revision.Openings) },
        ("sheet", _) => revision with { Openings = revision.Openings.Add(new OpeningSpec([.. Locations(part).Take(2)], SizeSpec.Slot(dice.Real(1, 4), dice.Real(5, 15)))) },
        (_, 0) when !revision.Balls.IsEmpty => revision with { Balls = revision.Balls.RemoveAt(dice.Next(revision.Balls.Length)) },
        (_, 1) when !revision.Solenoids.IsEmpty => revision with { Solenoids = [.. revision.Solenoids.Select(solenoid => solenoid with { AtRestHigh = !solenoid.AtRestHigh })] },
        (_, 2) when !revision.Valves.IsEmpty => revision with { Valves = Stiffened(revision.Valves) },
        (_, 3) when !revision.Restrictions.IsEmpty => revision with { Restrictions = revision.Restrictions.RemoveAt(0) },
        _ when revision.Passages.Any(passage => passage.At.Length > 1) => revision with { Passages = [.. Walled(revision.Passages, name)] },
        _ => revision,
    };

    private List<string> Locations(PartSpec part)
    {
        var joint = unit.Joints.First(candidate => candidate.Sheets.Contains(part.Name));
        return dice.Shuffle(unit.Parts.SelectMany(other => other.Revisions[0].Passages).SelectMany(passage => passage.At)
            .Where(at => at.Joint == joint.Name).Select(at => at.Location).Distinct());
    }

    private ImmutableArray<OpeningSpec> Resized(ImmutableArray<OpeningSpec> openings)
    {
        var index = dice.Next(openings.Length);
        return openings.SetItem(index, openings[index] with
        {
            Size = openings[index].At.Length == 1 ? SizeSpec.Hole(dice.Real(0.8, 7)) : SizeSpec.Slot(dice.Real(1, 4), dice.Real(5, 15)),
        });
    }

    private ImmutableArray<ValveSpec> Stiffened(ImmutableArray<ValveSpec> valves)
    {
        var index = dice.Next(valves.Length);
        return valves.SetItem(index, valves[index] with { HeldBy = valves[index].HeldBy.SetItem(0, new ForceSpec(null, null, dice.Real(0, 90))) });
    }

    /// <summary>A wall: some of a passage's locations become a passage of their own.</summary>
    private IEnumerable<PassageSpec> Walled(ImmutableArray<PassageSpec> passages, Func<string, string> name)
    {
        var divided = dice.Pick([.. passages.Where(passage => passage.At.Length > 1)]);
        var cut = dice.Between(1, divided.At.Length - 1);
        foreach (var passage in passages)
            yield return passage == divided ? passage with { At = passage.At[..cut] } : passage;
        yield return new PassageSpec(name("p"), divided.At[cut..]) { Circuit = dice.Chance(50) ? divided.Name : null };
    }
}
