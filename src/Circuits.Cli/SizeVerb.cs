using System.CommandLine;
using System.Globalization;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Rendering.Plots;
using Circuits.Studies.Shifts;
using Circuits.Studies.Sizing;

namespace Circuits.Cli;

/// <summary><c>size</c>: the hole that gives a wanted time.</summary>
internal sealed class SizeVerb
{
    private const string Overlap = "overlap";
    private const double Longest = 1000 * ShiftStudy.Longest;

    private static readonly KeyValuePair<string, WantedTime>[] Times =
    [
        new("fill", WantedTime.Fill), new("hold", WantedTime.Hold), new("release", WantedTime.Release), new("gap", WantedTime.Gap), new(Overlap, WantedTime.Gap),
    ];

    private readonly ChangeOptions changes;
    private readonly ShiftOptions conditions = new();
    private readonly SpreadOptions spread = new();

    private readonly Option<string?> at = new("--at") { HelpName = "location", Description = "Where the hole is to be: plate@21, front:21, 21." };

    private readonly Option<string?> shift = new("--shift") { HelpName = "from-to", Description = "The shift whose time is wanted: 2-3, N-R." };

    private readonly Option<string?> want = new("--want")
    {
        HelpName = "time=ms",
        Description = "The time: fill=300ms (when the clutch that comes on touches), hold=350ms (from when on the gear holds), release=80ms (when the one that goes off lets "
            + "go), gap=20ms or overlap=20ms (between letting go and holding).",
    };

    private readonly Option<string?> clutch = new("--clutch") { HelpName = "clutch", Description = "The clutch meant, where several come on or go off." };

    private readonly Option<string?> least = new("--least") { HelpName = "0.5mm", Description = "The smallest hole to try; 0.35 mm unless given." };

    private readonly Option<string?> most = new("--most")
    {
        HelpName = "4mm",
        Description = "The largest hole to try; unless given, the largest that a ball there still closes, at most 10 mm.",
    };

    private readonly PlotOption plot = new("the time against the diameter");

    private SizeVerb(CommonOptions options) => changes = new ChangeOptions(options);

    public static Verb Create(CommonOptions options)
    {
        var verb = new SizeVerb(options);
        Completes.FromUnit(verb.at, options.Files, unit => TargetWords.Of(unit, "plug"));
        Completes.FromUnit(verb.shift, options.Files, unit => ShiftPlans.Of(unit).Select(plan => plan.Name));
        Completes.FromUnit(verb.clutch, options.Files, unit => unit.Clutches.Select(each => each.Name));
        Completes.With(verb.want, [.. Times.Select(time => time.Key + "=")]);
        return new Verb(
            "size", "The hole, and the nearest number drills, that give a wanted fill, release or overlap time; and every other gear and shift that it changes.",
            [
                options.Files, verb.at, verb.shift, verb.want, verb.clutch, verb.least, verb.most, .. verb.conditions.All, .. verb.spread.All, .. verb.changes.All,
                verb.plot, options.FindingsFormat, options.Output, options.Units,
            ],
            [
                "circuits size unit.yaml --at plate@21 --shift 2-3 --want fill=250ms", "circuits size unit.yaml --fit plate=2 --at 14 --shift 3-2 --want release=60ms --clutch direct",
            ],
            verb.Run);
    }

    private int Run(Session session)
    {
        session.CheckOutput([.. changes.Files(session)]);
        Need(session, at, "where the hole is to be", "For example --at plate@21.");
        Need(session, shift, "the shift", "For example --shift 2-3.");
        var wanted = Wanted(Need(session, want, "the time that is wanted", "For example --want fill=300ms."));
        var picture = plot.Check(session);
        var asked = changes.Read(session);
        return PerUnit.Run(session, (unit, file) => Ask(session, unit, file, asked, wanted, picture));
    }

    private UnitAnswer Ask(Session session, Unit unit, string file, ChangeSet asked, (WantedTime Time, double Ms) wanted, string? picture)
    {
        var assembly = ChangeOptions.After(unit, asked);
        var plan = ShiftWords.Plan(unit, file, session.Parsed.GetValue(shift)!);
        var smallest = Millimetres(session, least) ?? HoleSizing.Least;
        var largest = Millimetres(session, most);
        if (largest <= smallest)
            throw new UserError(UserError.Usage, $"the largest hole, {Measures.Length(largest.Value, session.Text.Units)}, is not larger than the smallest, {Measures.Length(smallest, session.Text.Units)}");
        var request = new SizeRequest(session.Parsed.GetValue(at)!, plan, wanted.Time, wanted.Ms, session.Parsed.GetValue(clutch), smallest, largest);
        var judge = new UnitJudge(unit);
        var (place, given, samples) = (new Place("--at", 0, 0), conditions.Read(session, unit, file), spread.Read(session));
        var (report, faults) = HoleSizing.Run(judge, assembly, request, given, place);
        if (report is null) throw UserError.Of(faults);
        if (samples is not null)
        {
            var holes = HoleSizing.HolesOf(report);
            var (times, sizes) = SpreadOptions.Ask(session, file, samples, drawn => HoleSizing.Times(ChangeOptions.After(drawn, asked), report, holes, given, place));
            report = report with { Spread = SizeSpread.Of(samples, sizes, holes, times) };
        }

        PlotOption.Write(session, picture, () => SizePlot.Of(report, session.Text.Units));
        return new UnitAnswer(() => SizeText.Of(report, session.Text), () => Documents.Of(report), report.Findings);
    }

    private static string Need(Session session, Option<string?> option, string what, string help) =>
        session.Parsed.GetValue(option) is { Length: > 0 } word ? word : throw new UserError(UserError.Usage, $"size needs {option.Name}: {what}", help);

    private static (WantedTime Time, double Ms) Wanted(string text)
    {
        var split = text.IndexOf('=', StringComparison.Ordinal);
        var word = split < 0 ? text : text[..split];
        if (Times.All(time => time.Key != word)) throw UserError.Unknown("time", word, [.. Times.Select(time => time.Key)]);
        var written = split < 0 ? "" : text[(split + 1)..];
        var isGap = word is "gap" or Overlap;
        var minus = isGap && written.StartsWith('-');
        var read = QuantityText.Parse(minus ? written[1..] : written);
        if (read is not { Problem: QuantityProblem.None, Unit.Dimension: Dimension.Duration, Value: >= 0 and <= Longest } || (read.Value == 0 && !isGap))
        {
            throw new UserError(
                UserError.Usage, string.Create(CultureInfo.InvariantCulture, $"--want {text} gives no time {(isGap ? "up to" : "above 0 and up to")} {Longest / 1000:0} s"), $"Write {word}=300ms.");
        }

        var ms = minus ? -read.Value : read.Value;
        return (Times.First(time => time.Key == word).Value, word == Overlap ? -ms : ms);
    }

    private static double? Millimetres(Session session, Option<string?> option)
    {
        if (session.Parsed.GetValue(option) is not { } word) return null;
        return OperatingWords.Read(option.Name, word, OpeningRanges.Hole, "Write 2.0mm, 0.083in or #45.");
    }
}
