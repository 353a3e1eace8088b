using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Circuits.Findings;
using Circuits.Model;
using QuikGraph.Collections;

namespace Circuits.Driveline;

/// <content>Setting up the equations, and refusing what cannot turn.</content>
public sealed partial class GearTrain
{
    private GearTrain(GearSet set, Shafts shafts)
    {
        input = shafts.Of("input");
        output = shafts.Of("output");
        members = shafts.Members;
        clutches = shafts.Pairs(set.Clutches);
        oneWays = shafts.Pairs(set.OneWay);
        var equations = set.Planetaries.Select(planetary => Willis(planetary, shafts)).ToArray();
        var kernel = Elimination.Kernel(equations, shafts.Count);
        freedom = kernel[0].Length;
        speeds = [.. kernel, new Fraction[freedom]];
    }

    /// <summary>Builds the gear train and checks that it can turn and drive.</summary>
    /// <param name="set">The gear set; names that do not exist are reported, not thrown.</param>
    /// <param name="train">The gear train, or null when a fault is an error.</param>
    /// <param name="faults">What is wrong, in the order of places.</param>
    /// <returns>Whether there is a gear train.</returns>
    public static bool TryBuild(
        GearSet set, [NotNullWhen(true)] out GearTrain? train, out ImmutableArray<Finding> faults)
    {
        train = null;
        var found = ImmutableArray.CreateBuilder<Finding>();
        found.AddRange(GearsetTooBig.Check(set));
        foreach (var planetary in set.Planetaries.Where(planetary => planetary.Sun < 1 || planetary.Ring <= planetary.Sun))
        {
            found.Add(GearsetCannotTurn.Rule.At(
                planetary.Place,
                $"planetary {planetary.Name}: a ring of {planetary.Ring} teeth leaves no room for pinions around a sun of {planetary.Sun}"));
        }

        var shafts = new Shafts(set, found);
        if (!HasError(found))
        {
            train = new GearTrain(set, shafts);
            train.CheckTurns(set, shafts, found);
            if (HasError(found)) train = null;
        }

        faults = found.Count == 0 ? [] : [.. found.Distinct().OrderBy(fault => fault.Place)];
        return train is not null;
    }

    private static bool HasError(ImmutableArray<Finding>.Builder findings)
    {
        for (var i = 0; i < findings.Count; i++)
        {
            if (findings[i].Severity == Severity.Error) return true;
        }

        return false;
    }

    private static (int A, int B)[] Meshes(Planetary planetary, Shafts shafts)
    {
        var carrier = shafts.Of($"{planetary.Name}.carrier");
        return [(carrier, shafts.Of($"{planetary.Name}.sun")), (carrier, shafts.Of($"{planetary.Name}.ring"))];
    }

    private static Fraction[] Willis(Planetary planetary, Shafts shafts)
    {
        // One more column for the case, which is dropped: its speed is zero.
        var row = new Fraction[shafts.Count + 1];
        Fraction sun = planetary.Sun;
        Fraction ring = planetary.DoublePinions ? -planetary.Ring : planetary.Ring;
        row[shafts.Of($"{planetary.Name}.sun")] += sun;
        row[shafts.Of($"{planetary.Name}.ring")] += ring;
        row[shafts.Of($"{planetary.Name}.carrier")] -= sun + ring;
        return row[..shafts.Count];
    }

    private void CheckTurns(GearSet set, Shafts shafts, ImmutableArray<Finding>.Builder found)
    {
        var inputPlace = set.Input?.Place ?? set.Place;
        if (input == output)
        {
            found.Add(GearsetCannotDrive.Rule.At(set.Output.Place, $"input and output are one shaft: no clutch matters"));
            return;
        }

        foreach (var (shaft, name, place) in new[] { (input, "input", inputPlace), (output, "output", set.Output.Place) })
        {
            if (!Array.TrueForAll(speeds[shaft], value => value.IsZero)) continue;
            found.Add(GearsetCannotTurn.Rule.At(
                place, $"the {name} cannot turn, with no clutch holding: the joined members lock it",
                "Take a joint out, or list it under `clutches`."));
        }

        if (HasError(found)) return;
        if (Settle([]).Motion.Kind == MotionKind.TieUp)
        {
            // Each of the two can turn in the gears alone, so only one-way clutches can be at fault.
            var names = oneWays.Select(pair => pair.Coupling.Name);
            found.Add(GearsetCannotTurn.Rule.At(
                oneWays[0].Coupling.Place,
                $"the output cannot turn while the input turns forwards, with no clutch holding: one-way clutches lock it ({names})",
                "A one-way clutch [a, b] keeps `a` from turning backwards against `b`: swap the two if it faces the wrong way."));
        }
        else if (!Reaches(set, shafts))
        {
            found.Add(GearsetCannotDrive.Rule.At(
                set.Output.Place, $"nothing leads from the input to the output, even if every clutch holds",
                "Add the clutch or joint that is missing."));
        }
    }

    /// <summary>Whether planetaries and clutches lead from input to output other than through the case.</summary>
    private bool Reaches(GearSet set, Shafts shafts)
    {
        var fixedShaft = speeds.Length - 1;
        List<(int A, int B)> links = [.. clutches.Select(pair => (pair.A, pair.B)), .. oneWays.Select(pair => (pair.A, pair.B))];
        foreach (var planetary in set.Planetaries) links.AddRange(Meshes(planetary, shafts));
        links.RemoveAll(link => link.A == fixedShaft || link.B == fixedShaft);
        var joined = new ForestDisjointSet<int>(speeds.Length);
        for (var shaft = 0; shaft < speeds.Length; shaft++) joined.MakeSet(shaft);
        foreach (var (a, b) in links) joined.Union(a, b);
        return joined.AreInSameSet(input, output);
    }
}
