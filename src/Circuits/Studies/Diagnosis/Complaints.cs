using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;

namespace Circuits.Studies.Diagnosis;

/// <summary>What a complaint is about.</summary>
internal enum ComplaintAbout
{
    /// <summary>A gear, or the gear that a shift enters.</summary>
    Gear,

    /// <summary>A gear in which the vehicle should stand; neutral where none is named.</summary>
    Standing,
}

/// <summary>A kind of complaint, in the trade's words.</summary>
/// <param name="Form">How it is written: <c>no drive in GEAR</c>.</param>
/// <param name="Words">The words for it; the first is the usual one.</param>
/// <param name="About">What it is about.</param>
/// <param name="Fits">What fits it. How well is judgement, no source: a driver's slip may be no drive, hardly the other way round.</param>
internal sealed record ComplaintKind(string Form, ImmutableArray<string> Words, ComplaintAbout About, ImmutableArray<Fit> Fits);

/// <summary>The complaints that are understood, with their synonyms. Common practice of the trade, no source.</summary>
internal static class Complaints
{
    public static ImmutableArray<ComplaintKind> All { get; } =
    [
        Kind(
            "no GEAR", ["no", "missing", "lost", "never gets", "does not get", "will not shift", "no shift"],
            (FeelKind.NoDrive, 1), (FeelKind.NeverComes, 0.8), (FeelKind.WrongGear, 0.8), (FeelKind.WrongRatio, 0.5), (FeelKind.Slips, 0.3), (FeelKind.WrongDirection, 0.3)),
        Kind(
            "no drive in GEAR", ["no drive", "neutral", "neutral condition", "revs freely", "no movement", "does not move", "will not move", "will not pull", "no pull", "dead"],
            (FeelKind.NoDrive, 1), (FeelKind.Slips, 0.3)),
        Kind("slips in GEAR", ["slips", "slip", "slipping", "slippage", "ratio not held"], (FeelKind.Slips, 1), (FeelKind.NoDrive, 0.4), (FeelKind.Delayed, 0.2)),
        Kind(
            "flare GEAR-GEAR", ["flare", "flares", "flaring", "runs up", "runaway", "engine runs up", "revs up", "overrevs"],
            (FeelKind.NoDrive, 1), (FeelKind.Flares, 1), (FeelKind.NeverComes, 0.8), (FeelKind.LetsGoFast, 1), (FeelKind.Slips, 0.7), (FeelKind.Delayed, 0.6)),
        Kind(
            "tie-up in GEAR", ["tie-up", "tie up", "ties up", "tieup", "bind", "binds", "bind-up", "binding", "locks", "locks up", "locked", "brakes itself"],
            (FeelKind.TieUp, 1), (FeelKind.TiesUpOnTheWay, 1), (FeelKind.LetsGoSlowly, 0.6), (FeelKind.OneTooMany, 0.4)),
        Kind("slow release into GEAR", ["slow release", "lets go slowly", "lets go too slowly", "hangs"], (FeelKind.LetsGoSlowly, 1), (FeelKind.TieUp, 0.5), (FeelKind.Drags, 0.3)),
        Kind(
            "harsh into GEAR", ["harsh", "hard", "firm", "bang", "bangs", "slam", "slams", "jerk", "jerks", "jolt", "jolts", "bump", "bumps"],
            (FeelKind.Harsh, 1), (FeelKind.Hard, 1), (FeelKind.LetsGoFast, 0.3), (FeelKind.TieUp, 0.3)),
        Kind(
            "delayed into GEAR", ["delayed", "delay", "late", "slow", "soft", "mushy", "lazy", "long", "slides", "sluggish"],
            (FeelKind.Delayed, 1), (FeelKind.Soft, 1), (FeelKind.Slips, 0.5), (FeelKind.LetsGoSlowly, 0.2), (FeelKind.NoDrive, 0.1)),
        Kind("clunk into GEAR", ["clunk", "clunks", "quick release", "lets go too fast"], (FeelKind.LetsGoFast, 1), (FeelKind.Harsh, 0.5)),
        Kind("wrong gear in GEAR", ["wrong gear", "wrong ratio", "another gear"], (FeelKind.WrongGear, 1), (FeelKind.WrongRatio, 1), (FeelKind.Slips, 0.4)),
        Kind(
            "wrong direction in GEAR", ["wrong direction", "wrong way", "drives backward", "drives forward", "moves backward", "moves forward"],
            (FeelKind.WrongDirection, 1), (FeelKind.CreepsForward, 0.5), (FeelKind.CreepsBackward, 0.5)),
        Kind("no engine braking in GEAR", ["no engine braking", "no engine brake", "no overrun braking", "freewheels", "coasts"], (FeelKind.NoEngineBraking, 1)),
        Kind(
            "creeps in N", ["creeps", "creep", "creeping", "moves", "creeps forward", "creeps backward", "drives"], ComplaintAbout.Standing,
            (FeelKind.CreepsForward, 1), (FeelKind.CreepsBackward, 1), (FeelKind.Drags, 0.5)),
        Kind(
            "drags in GEAR", ["drags", "drag", "dragging", "partly", "holds back"], (FeelKind.Drags, 1), (FeelKind.OneTooMany, 1), (FeelKind.LetsGoSlowly, 0.5),
            (FeelKind.CreepsForward, 0.7), (FeelKind.CreepsBackward, 0.7), (FeelKind.TieUp, 0.3)),
        Kind("no lock-up in GEAR", ["no lock-up", "no lockup", "does not lock up", "converter does not lock"], (FeelKind.NoLockUp, 1)),
        Kind("stays locked in GEAR", ["stays locked", "drags the engine down", "stalls", "stalls at a stop", "dies at a stop"], (FeelKind.StaysLocked, 1), (FeelKind.TieUp, 0.3)),
        Kind("comes and goes in GEAR", ["comes and goes", "hunts", "hunting", "surges", "cycles", "chatters"], (FeelKind.NeverSettles, 1)),
    ];

    /// <summary>What else fits "this gear is right": what a driver may well not notice. Judgement, no source.</summary>
    public static ImmutableArray<Fit> Healthy { get; } =
    [
        new(FeelKind.AsItShould, null, 1), new(FeelKind.LetsGoFast, null, 0.25), new(FeelKind.LetsGoSlowly, null, 0.25), new(FeelKind.Harsh, null, 0.25),
        new(FeelKind.Starved, null, 0.9), new(FeelKind.OverPressure, null, 0.9), new(FeelKind.NoLockUp, null, 0.25), new(FeelKind.Soft, null, 0.25), new(FeelKind.Hard, null, 0.25),
        new(FeelKind.Delayed, null, 0.25), new(FeelKind.NoEngineBraking, null, 0.25), new(FeelKind.OneTooMany, null, 0.1), new(FeelKind.Drags, null, 0.1),
    ];

    /// <summary>How the complaints are written, for whoever used other words.</summary>
    public static IEnumerable<string> Forms => All.Select(kind => kind.Form).Concat(["A instead of B", "starts in GEAR", "stuck in GEAR", "no forward", "no drive"]);

    /// <summary>The complaint that a feeling makes, as a driver who knew the words would put it.</summary>
    /// <param name="effect">What is felt.</param>
    /// <param name="gear">The gear's name.</param>
    public static Phrase? Of(GearEffect effect, string gear) => effect.Kind switch
    {
        FeelKind.NoDrive => Phrase.Of($"no drive in {gear}"),
        FeelKind.Slips => Phrase.Of($"slips in {gear}"),
        FeelKind.TieUp => Phrase.Of($"tie-up in {gear}"),
        FeelKind.WrongDirection => Phrase.Of($"wrong direction in {gear}"),
        FeelKind.WrongGear => Phrase.Of($"{effect.Instead} instead of {gear}"),
        FeelKind.WrongRatio => Phrase.Of($"wrong ratio in {gear}"),
        FeelKind.NoEngineBraking => Phrase.Of($"no engine braking in {gear}"),
        FeelKind.OneTooMany or FeelKind.Drags => Phrase.Of($"drags in {gear}"),
        FeelKind.CreepsForward => Phrase.Of($"creeps forward in {gear}"),
        FeelKind.CreepsBackward => Phrase.Of($"creeps backward in {gear}"),
        FeelKind.NeverSettles => Phrase.Of($"comes and goes in {gear}"),
        FeelKind.NoLockUp => Phrase.Of($"no lock-up in {gear}"),
        FeelKind.StaysLocked => Phrase.Of($"stays locked in {gear}"),
        FeelKind.Harsh or FeelKind.Hard => Phrase.Of($"harsh into {gear}"),
        FeelKind.Delayed or FeelKind.Soft => Phrase.Of($"delayed into {gear}"),
        FeelKind.LetsGoFast => Phrase.Of($"clunk into {gear}"),
        FeelKind.Flares or FeelKind.NeverComes when effect.Feel.Other is { } before => Phrase.Of($"flare {before}-{gear}"),
        FeelKind.TiesUpOnTheWay => Phrase.Of($"tie-up in {gear}"),
        FeelKind.LetsGoSlowly => Phrase.Of($"slow release into {gear}"),
        _ => null,
    };

    private static ComplaintKind Kind(string form, ImmutableArray<string> words, params ReadOnlySpan<(FeelKind Kind, double Degree)> fits) =>
        Kind(form, words, ComplaintAbout.Gear, fits);

    private static ComplaintKind Kind(string form, ImmutableArray<string> words, ComplaintAbout about, params ReadOnlySpan<(FeelKind Kind, double Degree)> fits)
    {
        var made = ImmutableArray.CreateBuilder<Fit>(fits.Length);
        foreach (var (kind, degree) in fits) made.Add(new Fit(kind, null, degree));
        return new ComplaintKind(form, words, about, made.MoveToImmutable());
    }
}
