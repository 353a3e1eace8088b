using Circuits.Findings;
using Circuits.Model;
using CsCheck;

namespace Circuits.Tests.Driveline;

/// <summary>A random gear set and the clutches that hold.</summary>
internal sealed record RandomTrain(GearSet Set, string[] Holding);

/// <summary>Random gear sets of one to three planetaries, most of which can turn.</summary>
internal static class RandomTrains
{
    private static readonly Gen<(int Sun, int More, bool Double)> Teeth = Gen.Select(Gen.Int[12, 60], Gen.Int[2, 80], Gen.Bool);
    private static readonly Gen<(int A, int B)> Pair = Gen.Select(Gen.Int[0, 999], Gen.Int[0, 999]);
    private static readonly Gen<(int A, int B)[]> Joints = Pair.Array[0, 4];
    private static readonly Gen<(int A, int B)[]> Clutches = Pair.Array[1, 5];
    private static readonly Gen<(int A, int B)[]> OneWays = Pair.Array[0, 3];

    public static Gen<RandomTrain> Any { get; } = Gen.Select(
        Teeth.Array[1, 3], Joints, Clutches, OneWays, Pair, Gen.Int[0, 31],
        (teeth, joined, clutches, oneWays, ends, holding) =>
        {
            var sets = teeth.Select((t, i) => new Planetary($"p{i}", t.Sun, t.Sun + t.More, t.Double, Place.None)).ToArray();
            var gears = sets.SelectMany(p => new[] { $"{p.Name}.sun", $"{p.Name}.carrier", $"{p.Name}.ring" }).ToArray();
            string[] all = [.. gears, .. Enumerable.Repeat("case", teeth.Length + 1), "input", "output", "loose"];
            Member Pick(string[] from, int i) => new(from[i % from.Length], Place.None);
            Coupling Tie(string name, (int A, int B) pair, string[] from) => new(name, Pick(from, pair.A), Pick(from, pair.B), Place.None);
            return new RandomTrain(
                new GearSet(
                    [.. sets], [.. joined.Take(2 * teeth.Length - 2).Select(pair => Tie("", pair, gears))],
                    ends.A % 4 == 0 ? null : Pick(gears, ends.A), Pick(gears, ends.A + 1 + ends.B % (gears.Length - 1)),
                    [.. clutches.Select((pair, i) => Tie($"c{i}", pair, all))],
                    [.. oneWays.Select((pair, i) => Tie($"o{i}", pair, all))], Place.None),
                [.. Enumerable.Range(0, clutches.Length).Where(i => (holding >> i & 1) == 1).Select(i => $"c{i}")]);
        });
}
