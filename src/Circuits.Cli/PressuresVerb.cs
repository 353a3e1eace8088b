using System.CommandLine;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Studies.Pressures;
using Circuits.Studies.Sensitivity;

namespace Circuits.Cli;

/// <summary><c>pressures</c>: steady pressures and flows.</summary>
internal sealed class PressuresVerb
{
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

    private readonly SpreadOptions spread = new();

    public static Verb Create(CommonOptions options)
    {
        var verb = new PressuresVerb();
        return new Verb(
            "pressures", "Steady pressures and flows in every gear: the gauge table to compare with, and where the pump's oil goes.",
            [options.Files, options.Fit, options.Gear, verb.temperature, verb.speed, .. verb.spread.All, options.FindingsFormat, options.Output, options.Units],
            ["circuits pressures unit.yaml", "circuits pressures unit.yaml --gear R --temperature 40degC,110degC --speed idle"],
            session => PerUnit.Run(session, (unit, file) => verb.Ask(session, unit, file)));
    }

    private UnitAnswer Ask(Session session, Unit unit, string file)
    {
        var assembly = FittedParts.Of(unit, file, session.Fit);
        var gears = PerUnit.Gears(session, unit, file);
        var points = Points(session, unit, file);
        var report = PressureStudy.Run(assembly, points, gears) with { Matters = PressureStudy.Matters(assembly, points, gears) };
        if (SensitivityStudy.Note(assembly) is { } note) report = report with { Assumptions = [.. report.Assumptions, note] };
        if (spread.Read(session) is { } samples)
        {
            var (reports, sizes) = SpreadOptions.Ask(session, file, samples, drawn => PressureStudy.Run(FittedParts.Of(drawn, file, session.Fit), points, gears));
            report = report with { Spread = PressureSpread.Of(samples, sizes, reports) };
        }

        return new UnitAnswer(
            () => PressuresText.Of(report, detailed: session.Gears.Length > 0, session.Text),
            () => Documents.Of(report),
            report.Findings);
    }

    private List<OperatingPoint> Points(Session session, Unit unit, string file)
    {
        var usual = PressureStudy.PointsOf(unit);
        var temperatures = OptionWords.Items(session.Parsed.GetValue(temperature)).Select(OperatingWords.Celsius).Distinct().ToList();
        var speeds = OptionWords.Items(session.Parsed.GetValue(speed)).Select(word => OperatingWords.Speed(unit, file, word)).Distinct().ToList();
        if (temperatures.Count == 0) temperatures.Add(usual[0].Celsius);
        if (speeds.Count == 0) speeds.AddRange(PressureStudy.SpeedsOf(unit));
        return [.. temperatures.SelectMany(celsius => speeds.Select(pump => new OperatingPoint(pump.Key, celsius, pump.Value)))];
    }
}
