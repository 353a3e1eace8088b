using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Pressures;

namespace Circuits.Cli;

/// <summary>Sizes among the words of the command line, each held to the range that files are held to.</summary>
internal static class OperatingWords
{
    /// <summary>An oil temperature, degC.</summary>
    /// <exception cref="UserError">It is none.</exception>
    public static double Celsius(string word) => Read("--temperature", word, OilRanges.Temperature, "Write 90degC, or 195degF.");

    /// <summary>A pump speed by its name in the file, or a number with an empty name, rpm.</summary>
    /// <exception cref="UserError">It is neither.</exception>
    public static KeyValuePair<string, double> Speed(Unit unit, string file, string word)
    {
        var known = PressureStudy.SpeedsOf(unit);
        if (known.FirstOrDefault(speed => speed.Key == word) is { Key: not null } named) return named;
        if (!char.IsAsciiDigit(word[0])) throw UserError.Unknown("speed", word, [.. known.Select(speed => speed.Key)], $" in {file}");
        return KeyValuePair.Create("", Read("--speed", word, OilRanges.SpeedOrStill, "Write 1500rpm, or a speed's name in the file."));
    }

    /// <summary>A torque at the input, N m.</summary>
    /// <exception cref="UserError">It is none.</exception>
    public static double NewtonMetres(string word) => Read("--torque", word, GearRanges.Torque, "Write 180Nm.");

    /// <summary>A size that an option gives, in base units.</summary>
    /// <param name="option">The option.</param>
    /// <param name="word">Its value.</param>
    /// <param name="range">Which sizes make sense.</param>
    /// <param name="help">How to write one.</param>
    /// <exception cref="UserError">It is none, or one that no part can have.</exception>
    public static double Read(string option, string word, PlausibleRange range, string help)
    {
        var read = QuantityText.Parse(word);
        var dimension = range.Dimension!.Value;
        if (read is not { Problem: QuantityProblem.None, Unit: { } unit } || unit.Dimension != dimension)
            throw new UserError(UserError.Usage, $"{option} {word} is not {dimension.Name()}", help);
        return range.IsPossible(read.Value)
            ? read.Value
            : throw new UserError(UserError.Usage, $"{option} {word} must be {range.Must(read.Value, unit)}{range.Reason(read.Value)}", help);
    }
}
