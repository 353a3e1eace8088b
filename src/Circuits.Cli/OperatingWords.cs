using System.Globalization;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Pressures;

namespace Circuits.Cli;

/// <summary>Words that say under what conditions oil flows.</summary>
internal static class OperatingWords
{
    private const double Coldest = -40;
    private const double Hottest = 180;
    private const double Fastest = 20_000;
    private const double Strongest = 100_000;

    /// <summary>An oil temperature, degC.</summary>
    /// <exception cref="UserError">It is none.</exception>
    public static double Celsius(string word) => Read(
        "--temperature", word, Dimension.Temperature, Coldest, Hottest, $"a temperature from {Coldest} to {Hottest} degC", "Write 90degC, or 195degF.");

    /// <summary>A pump speed by its name in the file, or a number with an empty name, rpm.</summary>
    /// <exception cref="UserError">It is neither.</exception>
    public static KeyValuePair<string, double> Speed(Unit unit, string file, string word)
    {
        var known = PressureStudy.SpeedsOf(unit);
        if (known.FirstOrDefault(speed => speed.Key == word) is { Key: not null } named) return named;
        if (!char.IsAsciiDigit(word[0])) throw UserError.Unknown("speed", word, [.. known.Select(speed => speed.Key)], $" in {file}");
        return KeyValuePair.Create("", Read(
            "--speed", word, Dimension.Speed, 0, Fastest, string.Create(CultureInfo.InvariantCulture, $"a speed from 0 to {Fastest:0} rpm"),
            "Write 1500rpm, or a speed's name in the file."));
    }

    /// <summary>A torque at the input, N m.</summary>
    /// <exception cref="UserError">It is none.</exception>
    public static double NewtonMetres(string word) => Read(
        "--torque", word, Dimension.Torque, 0.1, Strongest, string.Create(CultureInfo.InvariantCulture, $"a torque from 0.1 to {Strongest:0} Nm"), "Write 180Nm.");

    private static double Read(string option, string word, Dimension dimension, double least, double most, string wanted, string help)
    {
        var read = QuantityText.Parse(word);
        return read is { Problem: QuantityProblem.None, Unit: { } unit } && unit.Dimension == dimension && read.Value >= least && read.Value <= most
            ? read.Value
            : throw new UserError(UserError.Usage, $"{option} {word} is not {wanted}", help);
    }
}
