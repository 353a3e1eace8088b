using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;

namespace Circuits.Tests.Rendering;

/// <summary>Reports made by hand, so that renderings are tested without a solver.</summary>
internal static class Samples
{
    public static Unit Unit { get; } = MakeUnit();

    public static Assembly Mixed { get; } = Assembly.Of(
        Unit, [Unit.Parts[0].Revisions[1], Unit.Parts[1].Revisions[0], Unit.Parts[2].Revisions[0]]);

    public static Assembly Late { get; } = Assembly.Of(Unit, Unit.Matched[1]);

    /// <summary>What the sample unit leaves to be assumed.</summary>
    private static Phrase Assumed => Phrase.Of($"assumed {new Area(40)} for valve body.select: no area given");

    public static Place At(int line, int column = 9) => new("sample.yaml", line, column);

    /// <summary>A mix: reverse is lost, third is flooded, fourth never settles, second depends on history.</summary>
    public static AssemblyReport Mix()
    {
        var gears = ImmutableArray.Create(
            Gear("R", Verdict.Lost,
                [Clutch("direct", true, ClutchState.Released, Verdict.Lost, 0) with { StoppedAt = new Stop("plate@22", Phrase.Of($"blanked"), At(41)) },
                 Clutch("low-reverse", true, ClutchState.Applied, Verdict.AsCharted, 1), Clutch("overdrive", false, ClutchState.Released, Verdict.AsCharted, 0)],
                new DriveReport(2, null, new Feel(FeelKind.NoDrive, "R") { IsReverse = true }, -2.3)),
            Gear("N", Verdict.AsCharted,
                [Off("direct"), Off("low-reverse"), Off("overdrive")], new DriveReport(2, null, new Feel(FeelKind.AsItShould, "N"), null)),
            Gear("2", Verdict.Weak,
                [Off("direct"), Clutch("low-reverse", true, ClutchState.Weak, Verdict.Weak, 0.4), Off("overdrive")],
                new DriveReport(1, 3.06, new Feel(FeelKind.Slips, "2"), 3.06)) with
            { DependsOnHistory = true, Histories = [Phrase.Of($"coming from N, valve body.select stays at rest")] },
            Gear("3", Verdict.Unwanted,
                [Clutch("direct", true, ClutchState.Applied, Verdict.AsCharted, 1), Clutch("low-reverse", false, ClutchState.Applied, Verdict.Unwanted, 0.9),
                 Clutch("overdrive", false, ClutchState.Weak, Verdict.Unwanted, 0.3)],
                new DriveReport(0, null, new Feel(FeelKind.TieUp, "3"), 1.5)),
            Gear("4", Verdict.NeverSettles,
                [Clutch("direct", true, ClutchState.Applied, Verdict.NeverSettles, 1), Off("low-reverse"), Clutch("overdrive", true, ClutchState.Trapped, Verdict.AsCharted, 0.8)],
                new DriveReport(1, 0.7, new Feel(FeelKind.NeverSettles, "4"), 0.7)) with
            { Settled = false, Cycle = ["valve body.select goes to and fro"] });
        return new AssemblyReport(Mixed, ["late"], gears, [new Assumption(Assumed, At(12))],
        [
            new Finding("lost-supply", Severity.Error, Phrase.Of($"clutch direct gets no oil: plate@22 is blanked"), At(41))
            {
                Gear = "R",
                Help = "Fit plate 2, or open location 22 with 2.1 mm.",
                Related = [new RelatedPlace(At(60), $"plate 2 has the hole")],
            },
            new Finding("cross-feed", Severity.Warning, Phrase.Of($"oil of body.line enters body.signal-2"), At(44)) { Gear = "3" },
            new Finding("cross-feed", Severity.Warning, Phrase.Of($"oil of body.line enters body.signal-2"), At(44)) { Gear = "4" },
            new Finding("open-drain", Severity.Warning, Phrase.Of($"oil leaves body.drive through body.lever{GearMention.In("3")}"), At(45)) { Gear = "3" },
            new Finding("open-drain", Severity.Warning, Phrase.Of($"oil leaves body.drive through body.lever{GearMention.In("4")}"), At(45)) { Gear = "4" },
            new Finding("assumed-size", Severity.Note, Assumed, At(12)),
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
            Drive = gear.Drive! with { Ratio = gear.Drive.Expected, Mobility = gear.Drive.Expected is null ? 2 : 1, Feel = new Feel(FeelKind.AsItShould, gear.Gear) },
        })],
        [], []);

    /// <summary>A tree of facts, three deep.</summary>
    public static Trace Trace() => new(
        "R", "direct",
        new TraceFact(Phrase.Of($"clutch direct has no supply"), At(70), [
            new TraceFact(Phrase.Of($"case.direct is fed through plate@22 alone"), At(22), [
                new TraceFact(Phrase.Of($"plate@22 is blanked: plate 1 has metal there, over a passage that its mate opens"), At(41), []),
                new TraceFact(Phrase.Of($"the ball body.two-way would let oil pass"), null, [])]),
            new TraceFact(Phrase.Of($"no valve joins it"), null, [])]),
        new TraceFact(Phrase.Of($"case.direct is open to sump through body.select"), At(30), []));

    private static GearReport Gear(string name, Verdict verdict, ImmutableArray<ClutchReport> clutches, DriveReport drive) => new(
        name, verdict, true, false, 620, clutches,
        name is "3" or "4" ? [new CrossFeed("body.signal-2", "body.line", "plate@23", "plate", "1", [new Moved.Valve("select", new Stand.Spool(true, null), new Stand.Spool(false, null))], At(44))] : [],
        drive)
    {
        Positions =
        [
            new PositionReport(PositionKind.Valve, "body.select", new Stand.Spool(true, null), new Stand.Spool(false, null), At(12)),
            new PositionReport(PositionKind.Ball, "body.two-way", new Stand.OnSeat("plate@11"), new Stand.OnSeat("plate@11"), At(14)),
            new PositionReport(PositionKind.Solenoid, "body.two", new Stand.Holds(new Pressure(450)), null, At(16)),
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
