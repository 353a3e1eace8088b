using System.Globalization;
using Circuits.Driveline;
using Circuits.Findings;
using Circuits.Model;
using Xunit;

namespace Circuits.Tests.Driveline;

/// <summary>Writes gear sets down shortly: <c>front 34/74, rear 30/80 double</c>, <c>low: rear.ring case</c>.</summary>
internal static class Gears
{
    public static GearSet Set(
        string planetaries, string output, string? input = null, string joined = "", string clutches = "", string oneWay = "")
    {
        var line = 0;
        Place Next() => new("train.yaml", ++line, 1);
        Member Named(string name) => new(name, Next());
        Coupling Tie(string name, string a, string b) => new(name, Named(a), Named(b), Next());
        return new GearSet(
            [.. Split(planetaries).Select(text =>
            {
                var words = text.Split(' ');
                var teeth = words[1].Split('/');
                return new Planetary(words[0], Whole(teeth[0]), Whole(teeth[1]), words.Length > 2, Next());
            })],
            [.. Split(joined).Select(text => Tie("", text.Split('=')[0].Trim(), text.Split('=')[1].Trim()))],
            input is null ? null : Named(input),
            Named(output),
            [.. Split(clutches).Select(NamedTie)],
            [.. Split(oneWay).Select(NamedTie)],
            Next());

        Coupling NamedTie(string text)
        {
            var words = text.Split([' ', ':'], StringSplitOptions.RemoveEmptyEntries);
            return Tie(words[0], words[1], words[2]);
        }
    }

    public static GearTrain Train(GearSet set)
    {
        Assert.True(GearTrain.TryBuild(set, out var train, out var faults), string.Join("; ", faults.Select(fault => fault.Words())));
        Assert.Empty(faults);
        return train;
    }

    /// <summary>Builds it; warnings are allowed.</summary>
    public static GearTrain Build(GearSet set)
    {
        Assert.True(GearTrain.TryBuild(set, out var train, out var faults), string.Join("; ", faults.Select(fault => fault.Words())));
        return train;
    }

    public static GearTrain Train(
        string planetaries, string output, string? input = null, string joined = "", string clutches = "", string oneWay = "") =>
        Train(Set(planetaries, output, input, joined, clutches, oneWay));

    public static double Speed(Motion motion, string member) => motion.Speeds.Single(pair => pair.Key == member).Value;

    /// <summary>Asserts that it drives, and returns the ratio.</summary>
    public static double Ratio(GearTrain train, params string[] holding)
    {
        var motion = train.Solve(holding);
        Assert.Equal(MotionKind.Drives, motion.Kind);
        Assert.Equal(1, motion.Mobility);
        return motion.Ratio!.Value;
    }

    private static string[] Split(string text) =>
        text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
