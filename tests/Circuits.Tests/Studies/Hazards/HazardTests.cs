using System.Text.Json;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Faults;
using Circuits.Studies.Hazards;
using Circuits.Tests.Demo;
using Circuits.Tests.Solving;
using Json.Schema;
using Xunit;

namespace Circuits.Tests.Studies.Hazards;

[Collection(nameof(FullUnit))]
public class HazardTests
{
    private static readonly GearPurpose Forward = new(true, 1.5);
    private static readonly GearPurpose Reverse = new(true, -2.3);
    private static readonly GearPurpose Neutral = new(false, null);

    // A spool that feeds the clutch of R while its solenoid is told so, and vents it otherwise.
    private const string Spool = """
        parts:
          body:
            kind: casting
            passages: {line: {}, forward: {}, signal: {}}
            valves:
              feed: {rest: [[forward, exhaust]], moved: [[line, forward]], moved-by: [{pressure: signal, area: 100 mm2}], held-by: [{spring: 10 N}]}
            solenoids:
              shift: {feed: line, out: signal, kind: switching, at-rest: low}
            regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa}}
        pump: {into: body.line}
        clutches: {forward: {at: body.forward}}
        gears: {"N": {energize: [], commands: {}, apply: []}, 1: {energize: [shift], apply: [forward]}}
        gearset: {planetaries: {front: {sun: 30, ring: 70}}, output: front.carrier, joined: [[front.ring, case]], clutches: {forward: [input, front.sun]}}
        taps: {forward: body.forward}
        """;

    public static TheoryData<FeelKind, string, double?, HazardSeverity> Scale() => new()
    {
        { FeelKind.TieUp, "forward", null, HazardSeverity.Locks },
        { FeelKind.TieUp, "reverse", null, HazardSeverity.LosesDrive },
        { FeelKind.TieUp, "neutral", null, HazardSeverity.LosesDrive },
        { FeelKind.WrongDirection, "forward", null, HazardSeverity.WrongDirection },
        { FeelKind.WrongGear, "forward", 2.25, HazardSeverity.WrongDirection },
        { FeelKind.WrongGear, "forward", 2.24, HazardSeverity.Felt },
        { FeelKind.WrongGear, "forward", 1.0, HazardSeverity.Felt },
        { FeelKind.NoDrive, "forward", null, HazardSeverity.LosesDrive },
        { FeelKind.NeverSettles, "neutral", null, HazardSeverity.LosesDrive },
        { FeelKind.CreepsForward, "neutral", null, HazardSeverity.Creeps },
        { FeelKind.CreepsBackward, "neutral", null, HazardSeverity.Creeps },
        { FeelKind.Drags, "neutral", null, HazardSeverity.Creeps },
        { FeelKind.Drags, "forward", null, HazardSeverity.Burns },
        { FeelKind.Slips, "reverse", null, HazardSeverity.Burns },
        { FeelKind.OneTooMany, "forward", null, HazardSeverity.Burns },
        { FeelKind.NoEngineBraking, "forward", null, HazardSeverity.Felt },
        { FeelKind.Harsh, "forward", null, HazardSeverity.Felt },
        { FeelKind.Delayed, "forward", null, HazardSeverity.Felt },
        { FeelKind.Flares, "forward", null, HazardSeverity.Burns },
        { FeelKind.TiesUpOnTheWay, "forward", null, HazardSeverity.Burns },
        { FeelKind.NeverComes, "forward", null, HazardSeverity.LosesDrive },
        { FeelKind.AsItShould, "forward", null, HazardSeverity.None },
    };

    [Theory]
    [MemberData(nameof(Scale))]
    public void What_is_felt_has_its_step_on_the_scale(FeelKind kind, string gear, double? instead, HazardSeverity severity) =>
        Assert.Equal(severity, SeverityScale.Of(kind, gear switch { "forward" => Forward, "reverse" => Reverse, _ => Neutral }, instead));

    [Fact]
    public void Every_step_of_the_scale_is_found_by_its_severity() =>
        Assert.All(Enum.GetValues<HazardSeverity>(), severity => Assert.Equal(severity, SeverityScale.Of(severity).Severity));

    // Worked out by hand in circuits/firth/README.md and the expectations of firth.yaml: B1, F1, A1, C1.
    [Theory]
    [InlineData("wrong-revision main-plate=2", "hazard-destroys", HazardSeverity.Destroys, "tie-up in 1", "tie-up in 5", "destroys itself unfelt: gearcase.cooler-in runs dry in R")]
    [InlineData("solenoid-reversed pack.even-control", "hazard-locks", HazardSeverity.Locks, "tie-up in 1")]
    [InlineData("wrong-revision pack=2", "hazard-wrong-direction", HazardSeverity.WrongDirection, "wrong direction in 4", "wrong direction in limp")]
    [InlineData("hole-plugged main-plate@132", "hazard-loses-drive", HazardSeverity.LosesDrive, "no reverse")]
    [InlineData("ball-left-out balls.even-return", null, HazardSeverity.Burns, "ties up on 1-2", "ties up on 3-4", "ties up on 5-6")]
    [InlineData("ball-left-out balls.range", "hazard-loses-drive", HazardSeverity.LosesDrive, "no reverse", "no drive in 1")]
    public void The_full_unit_is_as_dangerous_as_its_page_says(string code, string? rule, HazardSeverity severity, params string[] feels)
    {
        var row = Full.Value.Rows.Single(row => row.Code == code);
        Assert.Equal(severity, row.Severity);
        Assert.Equal(severity >= HazardSeverity.Creeps, row.MustNotBeDriven);
        Assert.All(feels, felt => Assert.Contains(felt, row.Effects.Select(effect => effect.Feel.Words())));
        Assert.Equal(rule, Full.Value.Findings.SingleOrDefault(finding => finding.Words().StartsWith($"{row.Mode.Words()}: ", StringComparison.Ordinal))?.Rule);
    }

    [Fact]
    public void States_without_current_are_added_where_the_file_has_none()
    {
        Assert.Equal(["P", "R", "N", "1", "2", "3", "4", "5", "6", "limp", "limp-R", "P-no-current", "N-no-current"], Full.Value.Gears);
        Assert.All(Full.Value.Rows.SelectMany(row => row.Effects), effect => Assert.Equal(effect.Gear is "limp" or "limp-R" or "P-no-current" or "N-no-current", effect.NoCurrent));
        Assert.Empty(Full.Value.AsFitted);
    }

    [Theory]
    [InlineData("rill", 1)]
    [InlineData("weir", 5)]
    public void Every_effect_is_what_the_whole_judge_says(string name, int every)
    {
        var assembly = Assembly.DefaultOf(new DemoUnit($"{name}/{name}.yaml").Unit);
        var report = HazardStudy.Run(assembly, threads: 2, stop: TestContext.Current.CancellationToken);
        var judge = new UnitJudge(assembly.Unit);
        var sound = judge.Report(assembly);
        var timed = 0;
        foreach (var fault in FaultLibrary.Of(assembly).Where((_, number) => number % every == 0))
        {
            var row = report.Rows.Single(row => row.Code == fault.Code);
            var whole = judge.Report(fault.In(assembly), row.ChangesTimed);
            timed += row.ChangesTimed && whole.Changes.Any(change => change.Verdict != ShiftVerdict.Good) ? 1 : 0;
            foreach (var (gear, right) in whole.Gears.Zip(sound.Gears))
            {
                var effect = row.Effects.SingleOrDefault(effect => effect.Gear == gear.Gear);

                // The table does not look into what hangs on a size that is not given: it holds such a change for as bad as it comes out.
                if (gear.Drive!.Feel.Kind == FeelKind.Undecided) Assert.True(effect?.Feel.Kind is FeelKind.Harsh or FeelKind.Delayed or FeelKind.Flares or FeelKind.TiesUpOnTheWay or FeelKind.NeverComes, $"{fault.Code} {gear.Gear}");
                else Assert.Equal(gear.Drive.Feel.Words() == right.Drive!.Feel.Words() ? null : gear.Drive.Feel.Words(), effect?.Feel.Words());
            }
        }

        Assert.True(timed > 0, "no fault was felt in a change of gear");

        Assert.Equal(report.Rows.OrderByDescending(row => row.Severity).Select(row => row.Severity), report.Rows.Select(row => row.Severity));
    }

    [Fact]
    public void The_number_of_threads_changes_nothing()
    {
        var assembly = Assembly.DefaultOf(new DemoUnit("weir/weir.yaml").Unit);
        var (one, two) = (HazardStudy.Run(assembly, stop: TestContext.Current.CancellationToken), HazardStudy.Run(assembly, threads: 3, stop: TestContext.Current.CancellationToken));
        Assert.Equal(HazardsCsv.Of(one), HazardsCsv.Of(two));
    }

    /// <summary>Every port a little open: the band of 2 and the clutch of 3 are partly on and slip, against a first gear that its one-way clutch would drive cleanly.</summary>
    [Fact]
    public void A_spool_that_stands_midway_is_felt_as_slip_and_as_no_clean_gear()
    {
        var report = HazardStudy.Run(
            Assembly.DefaultOf(new DemoUnit("weir/weir.yaml").Unit), sound => [.. FaultLibrary.Of(sound).Where(fault => fault.Code == "valve-stuck-midway body.one-two:open").Select(fault => HazardMode.Of(sound, fault))],
            stop: TestContext.Current.CancellationToken);
        var felt = Assert.Single(report.Rows).Effects.ToDictionary(effect => effect.Gear);
        Assert.Equal(["slips in 2", "slips in 3", "slips in 4"], new[] { "2", "3", "4" }.Select(gear => felt[gear].Feel.Words()));
        Assert.Contains(felt["2"].Local, local => local is { Clutch: "second-band", Strength: ClutchState.Weak });

        // Where the other clutch has nothing at all, the gear that is left is clean.
        Assert.Equal(FeelKind.WrongGear, felt["3-held"].Feel.Kind);
    }

    [Fact]
    public void A_spool_stuck_moved_makes_the_vehicle_creep()
    {
        var report = HazardStudy.Run(CircuitCase.Of(Spool).Assembly(), stop: TestContext.Current.CancellationToken);
        var row = report.Rows.Single(row => row.Code == "valve-stuck-moved body.feed");
        Assert.Equal(HazardSeverity.Creeps, row.Severity);
        Assert.True(row.MustNotBeDriven);
        Assert.Equal([new LocalEffect("forward", false, ClutchState.Applied)], row.Effects[0].Local);
        Assert.Equal("N", row.Reading?.Gear);
        Assert.Equal(500, row.Reading!.Found, 5.0);
        var finding = report.Findings.Single(finding => finding.Rule == "hazard-creeps" && finding.Words().StartsWith(row.Mode.Words(), StringComparison.Ordinal));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(HazardSeverity.LosesDrive, report.Rows.Single(row => row.Code == "valve-stuck-at-rest body.feed").Severity);
    }

    [Fact]
    public void What_is_asked_for_is_an_error_where_it_must_not_be_driven()
    {
        var report = HazardStudy.Run(
            CircuitCase.Of(Spool).Assembly(), sound => [.. FaultLibrary.Of(sound).Where(fault => fault.Code == "valve-stuck-moved body.feed").Select(fault => HazardMode.Of(sound, fault))],
            stop: TestContext.Current.CancellationToken);
        Assert.Single(report.Rows);
        Assert.Equal([Severity.Error], report.Findings.Where(finding => finding.Rule == "hazard-creeps").Select(finding => finding.Severity));
    }

    [Fact]
    public void A_mix_that_is_dangerous_as_it_is_says_so_and_its_rows_tell_only_what_is_new()
    {
        var demo = new DemoUnit("rill/rill.yaml");
        var report = HazardStudy.Run(demo.Pick("1", "2"), stop: TestContext.Current.CancellationToken);
        Assert.Equal("no reverse", report.AsFitted[0].Feel.Words());
        Assert.Contains(report.Findings, finding => finding is { Severity: Severity.Error, Gear: "R" });
        Assert.DoesNotContain(report.Rows.SelectMany(row => row.Effects), effect => effect.Feel.Words() == "no reverse");
    }

    [Fact]
    public void A_table_of_comma_separated_values_has_as_many_cells_in_every_row()
    {
        var lines = HazardsCsv.Of(Full.Value).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(Full.Value.Rows.Length + 1, lines.Length);
        Assert.All(lines, line => Assert.Equal(15, CellsOf(line)));
    }

    [Fact]
    public void Documents_keep_to_their_schemas()
    {
        Assert.True(IsValid("hazards", Documents.Of(Full.Value)));
        var report = AirStudy.Run(Assembly.DefaultOf(new DemoUnit("weir/weir.yaml").Unit), interrupted: TestContext.Current.CancellationToken);
        Assert.True(IsValid("air-check", Documents.Of(report)));
    }

    private static readonly Lazy<HazardReport> Full = new(() => HazardStudy.Run(Assembly.DefaultOf(FullUnit.Unit), threads: 2));

    private static bool IsValid(string name, Document document) =>
        JsonSchema.FromText(JsonSchemas.Find(name)!, new BuildOptions { SchemaRegistry = new SchemaRegistry() })
            .Evaluate(JsonDocument.Parse(JsonText.Of(document)).RootElement).IsValid;

    // RFC 4180: a comma parts cells unless it stands between quotes.
    private static int CellsOf(string line)
    {
        var (cells, quoted) = (1, false);
        foreach (var letter in line)
        {
            if (letter == '"') quoted = !quoted;
            if (letter == ',' && !quoted) cells++;
        }

        return cells;
    }
}
