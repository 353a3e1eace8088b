using System.CommandLine;
using System.Globalization;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Rendering;
using Circuits.Studies.Pressures;

namespace Circuits.Cli;

/// <summary><c>pressures</c>: steady pressures and flows.</summary>
internal sealed class PressuresVerb
{
    private const double Coldest = -40;
    private const double Hottest = 180;
    private const double Fastest = 20_000;

    private readonly Option<string[]> temperature = new("--temperature")
    {
        HelpName = "90degC",
        Description = "Oil temperature; the file's unless given. May be repeated; several go with commas.",
    };

    private readonly Option<string[]> speed = new("--speed")
    {
        HelpName = "idle | 1500rpm",
        Description = "Pump speed, by its name in the file or as a number of rpm; every speed of the file unless given. May be repeated; several go with commas.",
    };

    public static Verb Create(CommonOptions options)
    {
        var verb = new PressuresVerb();
        return new Verb(
            "pressures", "Steady pressures and flows in every gear: the gauge table to compare with, and where the pump's oil goes.",
            [options.Files, options.Fit, options.Gear, verb.temperature, verb.speed, options.FindingsFormat, options.Output, options.Units],
            ["circuits pressures unit.yaml", "circuits pressures unit.yaml --gear R --temperature 40degC,110degC --speed idle"],
            session => PerUnit.Run(session, (unit, file) => verb.Ask(session, unit, file)));
    }

    private UnitAnswer Ask(Session session, Unit unit, string file)
    {
        var assembly = FittedParts.Of(unit, file, session.Fit);
        var gears = PerUnit.Gears(session, unit, file);
        var report = PressureStudy.Run(assembly, Points(session, unit, file), gears);
        return new UnitAnswer(
            () => PressuresText.Of(report, detailed: session.Gears.Count > 0, session.Text),
            json => PressuresJson.Write(json, report),
            report.Findings);
    }

    private List<OperatingPoint> Points(Session session, Unit unit, string file)
    {
        var usual = PressureStudy.PointsOf(unit);
        var temperatures = OptionWords.Items(session.Parsed.GetValue(temperature)).Select(Celsius).Distinct().ToList();
        var speeds = OptionWords.Items(session.Parsed.GetValue(speed)).Select(word => Speed(unit, file, word)).Distinct().ToList();
        if (temperatures.Count == 0) temperatures.Add(usual[0].Celsius);
        if (speeds.Count == 0) speeds.AddRange(PressureStudy.SpeedsOf(unit));
        return [.. temperatures.SelectMany(celsius => speeds.Select(pump => new OperatingPoint(pump.Key, celsius, pump.Value)))];
    }

    private static double Celsius(string word)
    {
        var read = QuantityText.Parse(word);
        return read is { Problem: QuantityProblem.None, Unit.Dimension: Dimension.Temperature, Value: >= Coldest and <= Hottest }
            ? read.Value
            : throw new UserError(UserError.Usage, $"--temperature {word} is not a temperature from {Coldest} to {Hottest} degC", "Write 90degC, or 195degF.");
    }

    private static KeyValuePair<string, double> Speed(Unit unit, string file, string word)
    {
        var known = PressureStudy.SpeedsOf(unit);
        if (known.FirstOrDefault(speed => speed.Key == word) is { Key: not null } named) return named;
        if (!char.IsAsciiDigit(word[0])) throw UserError.Unknown("speed", word, [.. known.Select(speed => speed.Key)], $" in {file}");
        var read = QuantityText.Parse(word);
        return read is { Problem: QuantityProblem.None, Unit.Dimension: Dimension.Speed, Value: >= 0 and <= Fastest }
            ? KeyValuePair.Create("", read.Value)
            : throw new UserError(UserError.Usage, string.Create(CultureInfo.InvariantCulture, $"--speed {word} is not a speed from 0 to {Fastest:0} rpm"), "Write 1500rpm, or a speed's name in the file.");
    }
}
