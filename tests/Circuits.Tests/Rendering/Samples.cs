using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Solving;

namespace Circuits.Tests.Rendering;

/// <summary>Reports made by hand, so that renderings are tested without a solver.</summary>
internal static class Samples
{
    public static Unit Unit { get; } = MakeUnit();

    public static Assembly Mixed { get; } = Assembly.Of(
        Unit, [Unit.Parts[0].Revisions[1], Unit.Parts[1].Revisions[0], Unit.Parts[2].Revisions[0]]);

    public static Assembly Late { get; } = Assembly.Of(Unit, Unit.Matched[1]);

    public static Place At(int line, int column = 9) => new("sample.yaml", line, column);

    /// <summary>A mix: reverse is lost, third is flooded, fourth never settles, second depends on history.</summary>
    public static AssemblyReport Mix()
    {
        var gears = ImmutableArray.Create(
            Gear("R", Verdict.Lost,
                [Clutch("direct", true, ClutchState.Released, Verdict.Lost, 0) with { StoppedAt = new Stop("plate@22", "blanked", At(41)) },
                 Clutch("low-reverse", true, ClutchState.Applied, Verdict.AsCharted, 1), Clutch("overdrive", false, ClutchState.Released, Verdict.AsCharted, 0)],
                new DriveReport(2, null, "no reverse: the engine revs freely", -2.3)),
            Gear("N", Verdict.AsCharted,
                [Off("direct"), Off("low-reverse"), Off("overdrive")], new DriveReport(2, null, "neutral", null)),
            Gear("2", Verdict.Weak,
                [Off("direct"), Clutch("low-reverse", true, ClutchState.Weak, Verdict.Weak, 0.4), Off("overdrive")],
                new DriveReport(1, 3.06, "slip", 3.06)) with
            { DependsOnHistory = true, Histories = ["coming from N, valve body.select stays at rest"] },
            Gear("3", Verdict.Unwanted,
                [Clutch("direct", true, ClutchState.Applied, Verdict.AsCharted, 1), Clutch("low-reverse", false, ClutchState.Applied, Verdict.Unwanted, 0.9),
                 Clutch("overdrive", false, ClutchState.Weak, Verdict.Unwanted, 0.3)],
                new DriveReport(0, null, "tie-up", 1.5)),
            Gear("4", Verdict.NeverSettles,
                [Clutch("direct", true, ClutchState.Applied, Verdict.NeverSettles, 1), Off("low-reverse"), Clutch("overdrive", true, ClutchState.Trapped, Verdict.AsCharted, 0.8)],
                new DriveReport(1, 0.7, "drives", 0.7)) with
            { Settled = false, Cycle = ["valve body.select goes to and fro"] });
        return new AssemblyReport(Mixed, ["late"], gears, ["assumed 40 mm2 for valve body.select: no area given"],
        [
            new Finding("lost-supply", Severity.Error, "clutch direct gets no oil: plate@22 is blanked", At(41))
            {
                Gear = "R",
                Help = "Fit plate 2, or open location 22 with 2.1 mm.",
                Related = [new RelatedPlace(At(60), "plate 2 has the hole")],
            },
            new Finding("cross-feed", Severity.Warning, "oil of body.line enters body.signal-2", At(44)) { Gear = "3" },
            new Finding("cross-feed", Severity.Warning, "oil of body.line enters body.signal-2", At(44)) { Gear = "4" },
            new Finding("open-drain", Severity.Warning, "oil leaves body.drive through body.lever in 3", At(45)) { Gear = "3" },
            new Finding("open-drain", Severity.Warning, "oil leaves body.drive through body.lever in 4", At(45)) { Gear = "4" },
            new Finding("assumed-size", Severity.Note, "assumed 40 mm2 for valve body.select: no area given", At(12)),
        ]);
    }

    /// <summary>The late matched set: every gear as charted.</summary>
    public static AssemblyReport Matched() => new(
        Late, ["late"],
        [.. Mix().Gears.Select(gear => gear with
        {
            Verdict = Verdict.AsCharted, Settled = true, DependsOnHistory = false, CrossFeeds = [], Cycle = [], Histories = [],
            Clutches = [.. gear.Clutches.Select(clutch => clutch with
            {
                State = clutch.Charted ? ClutchState.Applied : ClutchState.Released, Verdict = Verdict.AsCharted, StoppedAt = null,
                Apply = new Control("plate@7", Math.PI / 4 * 2.1 * 2.1, false, At(50)),
            })],
            Drive = gear.Drive! with { Ratio = gear.Drive.Expected, Mobility = gear.Drive.Expected is null ? 2 : 1, Feels = gear.Gear == "N" ? "neutral" : "drives" },
        })],
        [], []);

    /// <summary>A tree of facts, three deep.</summary>
    public static Trace Trace() => new(
        "R", "direct",
        new TraceFact("clutch direct has no supply", At(70), [
            new TraceFact("case.direct is fed through plate@22 alone", At(22), [
                new TraceFact("plate@22 is blanked: plate 1 has metal there, over a passage that its mate opens", At(41), []),
                new TraceFact("the ball body.two-way would let oil pass", null, [])]),
            new TraceFact("no valve joins it", null, [])]),
        new TraceFact("case.direct is open to sump through body.select", At(30), []));

    private static GearReport Gear(string name, Verdict verdict, ImmutableArray<ClutchReport> clutches, DriveReport drive) => new(
        name, verdict, true, false, 620, clutches,
        name is "3" or "4" ? [new CrossFeed("body.signal-2", "body.line", "plate@23", "plate", "1", ["valve select: moved (matched: rest)"], At(44))] : [],
        drive)
    {
        Positions =
        [
            new PositionReport(PositionKind.Valve, "body.select", "moved", "rest", At(12)),
            new PositionReport(PositionKind.Ball, "body.two-way", "closes plate@11", "closes plate@11", At(14)),
            new PositionReport(PositionKind.Solenoid, "body.two", "holds 450 kPa", null, At(16)),
        ],
        Pressures =
        [
            new PassagePressure("body.line", OilState.Supply, 620), new PassagePressure("plate.none", OilState.Between, 310.25),
            new PassagePressure("body.signal-2", OilState.Trapped, 120), new PassagePressure("body.drive", OilState.Exhaust, 0),
        ],
    };

    private static ClutchReport Off(string name) => Clutch(name, false, ClutchState.Released, Verdict.AsCharted, 0);

    private static ClutchReport Clutch(string name, bool charted, ClutchState state, Verdict verdict, double level) =>
        new(name, charted, state, verdict, level, 620 * level)
        {
            Apply = level > 0 ? new Control("plate@7", Math.PI / 4 * 8 * 8, false, At(50)) : null,
            Release = new Control("body.select", 40, true, At(12)),
        };

    private static Unit MakeUnit()
    {
        Revision Rev(string name, params ReadOnlySpan<Passage> passages) => new(name, At(10)) { Passages = [.. passages] };
        Passage Pas(string name) => new(name, name, [], At(11));
        return new Unit("Sample", DataOrigin.Invented, At(1))
        {
            Parts =
            [
                new Part("body", PartKind.Casting, [Rev("1", Pas("line")), Rev("2", Pas("line"), Pas("signal-2"), Pas("drive"))], At(8)),
                new Part("plate", PartKind.Sheet, [Rev("1"), Rev("2")], At(30)),
                new Part("cover", PartKind.Casting, [Rev("1")], At(50)),
            ],
            Matched =
            [
                new MatchedSet("early", [new("body", "1"), new("plate", "1"), new("cover", "1")], At(80)),
                new MatchedSet("late", [new("body", "2"), new("plate", "2"), new("cover", "1")], At(81)),
            ],
            Clutches = [new Clutch("direct", At(70)), new Clutch("low-reverse", At(71)), new Clutch("overdrive", At(72))],
            Gears = [.. new[] { "R", "N", "2", "3", "4" }.Select(name => new GearState(name, [], At(90)))],
        };
    }
}
