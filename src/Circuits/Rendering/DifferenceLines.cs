using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;
using Circuits.Studies;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>One thing that differs.</summary>
/// <param name="Mark">What it is about.</param>
/// <param name="Text">How it is now, and how it was.</param>
/// <param name="Style">The mark's style.</param>
internal sealed record DifferenceLine(string Mark, string Text, Style Style);

/// <summary>What differs in a gear, line by line.</summary>
internal static class DifferenceLines
{
    public static IEnumerable<DifferenceLine> Of(GearDifference gear, UnitSystem units)
    {
        var (was, now) = (gear.Before, gear.After);
        if (gear.VerdictDiffers)
            yield return new("verdict:", Now(Words.Of(now.Verdict), Words.Of(was.Verdict)), GearChart.VerdictStyle(now.Verdict));
        if (now.Drive?.Feel != was.Drive?.Feel)
            yield return new("the driver feels:", Now(Feels(now), Feels(was)), Page.Strong);
        if (now.Drive?.Ratio != was.Drive?.Ratio)
            yield return new("ratio:", Now(GearChart.Ratio(now.Drive?.Ratio), GearChart.Ratio(was.Drive?.Ratio)), Page.Plain);
        if (gear.LineDiffers)
            yield return new("line:", Now(Measures.Pressure(now.LineKilopascals, units), Measures.Pressure(was.LineKilopascals, units)), Page.Plain);
        foreach (var clutch in gear.Clutches)
        {
            foreach (var text in Of(clutch, units)) yield return new($"{clutch.Clutch}:", text, ClutchMark.Of(now, clutch.After).Style);
        }

        foreach (var feed in gear.NewCrossFeeds)
            yield return new("cross-feed:", $"oil of {feed.From} now enters {feed.Into} through {feed.Through}{Moves(feed, units)}", Page.Bad);
        foreach (var feed in gear.VanishedCrossFeeds)
            yield return new("cross-feed gone:", $"oil of {feed.From} no longer enters {feed.Into} through {feed.Through}", Page.Good);
        foreach (var position in gear.Positions.Where(position => !position.HoldsOnly))
            yield return new($"{position.Name}:", Now(Stands(position.After, "gone", units), Stands(position.Before, "not there", units)), Page.Plain);
        if (gear.HistoryDiffers)
            yield return new("depends on history:", Now(Histories(now, units), Histories(was, units)), Page.Doubtful);
        if (gear.CycleDiffers && !now.Cycle.IsEmpty)
            yield return new("never settles:", $"in turn {string.Join(", ", now.Cycle)}", Page.Bad);
        if (!gear.Pressures.IsEmpty)
            yield return new("pressures:", string.Join("; ", gear.Pressures.Select(passage => Pressures(passage, units))), Page.Faint);
    }

    private static IEnumerable<string> Of(ClutchDifference clutch, UnitSystem units)
    {
        var (was, now) = (clutch.Before, clutch.After);
        if (clutch.StateDiffers)
            yield return Now($"{State(now)} at {Level(now, units)}", $"{State(was)} at {Level(was, units)}");
        else if (clutch.PressureDiffers)
            yield return Now(Level(now, units), Level(was, units));
        if (clutch.StopDiffers && now.StoppedAt is { } stop) yield return $"its oil stops at {stop.Element}: {PhraseWords.Of(stop.Reason, units)}{StopBefore(was, units)}";

        // A way, or the opening that controls it, is of interest where there is one; whether there is, the state says.
        if (clutch.SupplyWayDiffers && !now.SupplyWay.IsEmpty) yield return $"fed by way of {Way(now.SupplyWay)}{WayBefore(was.SupplyWay)}";
        if (clutch.ApplyDiffers && now.Apply is not null) yield return $"applies through {Opening(now.Apply, was.Apply, units)}";
        if (clutch.SumpWayDiffers && now.Strength == ClutchState.Released)
            yield return now.SumpWay.IsEmpty ? $"no way to sump{WayBefore(was.SumpWay)}" : $"empties by way of {Way(now.SumpWay)}{WayBefore(was.SumpWay)}";
        if (clutch.ReleaseDiffers && now.Release is not null) yield return $"releases through {Opening(now.Release, was.Release, units)}";
    }

    private static string Now(string now, string was) => $"{now} (was {was})";

    private static string Stands(Stand? stand, string none, UnitSystem units) => stand is null ? none : StandWords.Of(stand, units);

    private static string Feels(GearReport gear) => gear.Drive is { } drive ? FeelWords.Of(drive.Feel) : "not known";

    private static string State(ClutchReport clutch) => Words.Of(clutch.State) == Words.Of(clutch.Verdict)
        ? Words.Of(clutch.State)
        : $"{Words.Of(clutch.State)}, {Words.Of(clutch.Verdict)},";

    private static string Level(ClutchReport clutch, UnitSystem units) =>
        string.Create(CultureInfo.InvariantCulture, $"{Measures.Pressure(clutch.Kilopascals, units)}, {clutch.Level * 100:0} % of line");

    private static string Opening(Control now, Control? was, UnitSystem units) =>
        was is null ? Controls.Of(now, units) : Now(Controls.Of(now, units), Controls.Of(was, units));

    private static string Pressures(PressureDifference passage, UnitSystem units) => passage switch
    {
        { After: null } => $"{passage.Passage} gone",
        { Before: null } => $"{passage.Passage} {Measures.Pressure(passage.After.Value, units)}, not there before",
        _ => $"{passage.Passage} {Now(Measures.Pressure(passage.After.Value, units), Measures.Pressure(passage.Before.Value, units))}",
    };

    private static string Way(ImmutableArray<string> way) => string.Join(", ", way);

    private static string WayBefore(ImmutableArray<string> way) => way.IsEmpty ? "" : $" (was {Way(way)})";

    private static string StopBefore(ClutchReport was, UnitSystem units) =>
        was.StoppedAt is { } stop ? $" (was {stop.Element}: {PhraseWords.Of(stop.Reason, units)})" : "";

    private static string Moves(CrossFeed feed, UnitSystem units) =>
        feed.Moves.IsEmpty ? "" : $"; it moves {string.Join(", ", feed.Moves.Select(moved => PhraseWords.Of(moved.Phrase, units)))}";

    private static string Histories(GearReport gear, UnitSystem units) =>
        gear.Histories.IsEmpty ? gear.DependsOnHistory ? "yes" : "no" : string.Join("; ", gear.Histories.Select(history => PhraseWords.Of(history, units)));
}
