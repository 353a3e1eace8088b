using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Diagnosis;

/// <summary>What came of reading a piece of evidence.</summary>
/// <param name="Evidence">What was understood, or null.</param>
/// <param name="Problem">What is wrong with it, in a sentence, or null.</param>
/// <param name="Help">What to do, or null.</param>
public sealed record EvidenceReading(Evidence? Evidence, string? Problem, string? Help)
{
    internal static EvidenceReading Of(Evidence evidence) => new(evidence, null, null);

    internal static EvidenceReading Wrong(string problem, string help) => new(null, problem, help);
}

/// <summary>Understands what a person tells of a unit.</summary>
public sealed class EvidenceReader
{
    private static readonly ImmutableHashSet<string> Fillers =
    [
        "in", "on", "into", "the", "gear", "gears", "shift", "shifts", "shifting", "upshift", "downshift", "when", "at", "to", "from", "going", "engagement", "range",
        "of", "with", "a", "is", "it", "vehicle", "car", "has", "and", "while", "during", "between",
    ];

    private readonly Unit unit;
    private readonly GearWords gears;

    /// <summary>A reader for one unit.</summary>
    /// <param name="judge">The unit's judge.</param>
    public EvidenceReader(UnitJudge judge)
    {
        unit = judge.Unit;
        gears = new GearWords(judge);
    }

    private string GearNames => string.Join(", ", unit.Gears.Select(gear => gear.Name));

    /// <summary>Reads a complaint.</summary>
    /// <param name="text">The complaint: <c>no reverse</c>, <c>flare 2-3</c>.</param>
    public EvidenceReading Complaint(string text)
    {
        var (named, words) = Split(text);
        if (Instead(text) is { } instead) return instead;
        var phrase = string.Join(' ', words);
        if (phrase is "starts" or "start" or "takes off" or "starts off")
        {
            if (named.Count != 1 || gears.Forward.IsEmpty) return NoGear(text, "starts in GEAR");
            return Felt(text, [new FeltIn(gears.Forward[0], InsteadOf(named[0]))]);
        }

        if (phrase is "stuck" or "stays" or "only" or "never leaves" or "will not leave" or "does not leave")
        {
            if (named.Count != 1 || gears.Forward.Length < 2 || !gears.Forward.Contains(named[0])) return NoGear(text, "stuck in GEAR, a forward one");
            var same = InsteadOf(named[0]);
            return Felt(text, [.. gears.Forward.Select(gear => new FeltIn(gear, gear == named[0] ? Complaints.Healthy : same))]);
        }

        if (phrase is "no forward" or "no drive forward" || (named.Count == 0 && phrase is "no drive" or "no movement" or "does not move" or "will not move"))
        {
            var all = phrase.Contains("forward", StringComparison.Ordinal) ? gears.Forward : [.. gears.Driven.Where(gear => !unit.Gears[gear].Apply.IsEmpty)];
            if (all.IsEmpty) return NoGear(text, "no drive in GEAR");
            return Felt(text, [.. all.Select(gear => new FeltIn(gear, Complaints.All[1].Fits))]);
        }

        var kind = Complaints.All.FirstOrDefault(known => known.Words.Any(word => Bare(word) == phrase));
        if (kind is null)
        {
            var close = phrase.Length == 0 ? null : DidYouMean.Find(phrase, Complaints.All.SelectMany(known => known.Words));
            return EvidenceReading.Wrong(
                $"complaint '{text}' is not understood",
                $"{(close is null ? "" : $"Did you mean '{close}'? ")}Known: {string.Join("; ", Complaints.Forms)}. Gears: {GearNames}.");
        }

        if (named.Count == 0 && kind.About == ComplaintAbout.Standing && gears.Neutral >= 0) named = [gears.Neutral];
        if (named.Count == 0) return NoGear(text, kind.Form);

        // Of a shift it is the gear that is entered in which it shows.
        var fits = kind.Fits;
        if (phrase.EndsWith("forward", StringComparison.Ordinal)) fits = fits.RemoveAll(fit => fit.Kind == FeelKind.CreepsBackward);
        if (phrase.EndsWith("backward", StringComparison.Ordinal)) fits = fits.RemoveAll(fit => fit.Kind == FeelKind.CreepsForward);
        return Felt(text, [new FeltIn(named[^1], fits)]);
    }

    /// <summary>Reads that a gear works as it should.</summary>
    /// <param name="text">The gear, or <c>all others</c>.</param>
    public EvidenceReading Healthy(string text)
    {
        var gear = gears.Find(text.Trim());
        if (gear < 0) gear = gears.Find(text.Trim().ToLowerInvariant());
        if (gear < 0) return EvidenceReading.Wrong($"there is no gear '{text}'", Help(text, [.. unit.Gears.Select(known => known.Name)], "gear"));
        return EvidenceReading.Of(new Evidence.Felt(text, Phrase.Of($"{unit.Gears[gear].Name} is right"), [new FeltIn(gear, Complaints.Healthy)], IsHealthy: true));
    }

    /// <summary>Reads a gauge reading.</summary>
    /// <param name="text">Tap, gear and pressure: <c>direct@3=310kPa</c>; with the pump's speed, the oil's temperature or both, <c>direct@3,idle,40degC=310kPa</c>.</param>
    public EvidenceReading Reading(string text)
    {
        var equals = text.LastIndexOf('=');
        var at = equals < 0 ? -1 : text.LastIndexOf('@', equals);
        if (equals < 0 || at < 0) return EvidenceReading.Wrong($"reading '{text}' is not understood", "Write tap@gear=pressure: direct@3=310kPa.");
        var tapName = text[..at].Trim();
        var where = text[(at + 1)..equals].Split(',', StringSplitOptions.TrimEntries);
        var taps = unit.Taps.Select(known => known.Name).ToImmutableArray();
        var tap = taps.IndexOf(tapName);
        if (tap < 0) return EvidenceReading.Wrong($"reading '{text}': there is no tap '{tapName}'", Help(tapName, taps, "tap"));
        var gear = gears.Find(where[0]);
        if (gear < 0) return EvidenceReading.Wrong($"reading '{text}': there is no gear '{where[0]}'", Help(where[0], [.. unit.Gears.Select(known => known.Name)], "gear"));
        var condition = ReadingCondition.Of(unit, where[1..], out var unknown);
        if (unknown is not null)
        {
            return EvidenceReading.Wrong(
                $"reading '{text}': '{unknown}' is no condition", Help(unknown, [.. Pressures.PressureStudy.SpeedsOf(unit).Select(known => known.Key)], "speed") + " A speed by its name or in rpm, and a temperature of the oil: idle, 900 rpm, 40 degC.");
        }

        var size = QuantityText.Parse(text.AsSpan(equals + 1));
        const string Sizes = "A pressure is 310 kPa, 3.1 bar or 45 psi.";
        if (size.Problem == QuantityProblem.NoUnit) return EvidenceReading.Wrong($"reading '{text}' has no unit", Sizes);
        if (size.Problem != QuantityProblem.None) return EvidenceReading.Wrong($"reading '{text}': '{text[(equals + 1)..]}' is no pressure", Sizes);
        if (size.Unit!.Dimension != Dimension.Pressure) return EvidenceReading.Wrong($"reading '{text}': {size.UnitText} is no unit of pressure", Sizes);
        var gauge = OilRanges.Gauge;
        if (!gauge.IsPossible(size.Value)) return EvidenceReading.Wrong($"reading '{text}' is beyond any gauge", $"A gauge reads {gauge.Text(gauge.Possible)}: {gauge.Why}.");
        var meaning = Phrase.Of($"{tapName} reads {new Pressure(size.Value)} in {unit.Gears[gear].Name}{(condition is null ? null : Phrase.Of($" {condition.Text}"))}");
        return EvidenceReading.Of(new Evidence.Reading(text, meaning, tap, gear, Math.Max(0, size.Value)) { Condition = condition });
    }

    /// <summary>Reads what was checked and is right.</summary>
    /// <param name="text">A fault's code, or what it is about: <c>plate@13</c>, <c>body.two-way</c>.</param>
    /// <param name="faults">The faults that the assembly may have.</param>
    public static EvidenceReading Cleared(string text, ImmutableArray<Fault> faults)
    {
        var codes = faults.Where(fault => fault.Code == text || IsAbout(fault, text)).Select(fault => fault.Code).ToImmutableHashSet();
        return codes.IsEmpty
            ? EvidenceReading.Wrong(
                $"no fault is about '{text}'", Help(text, [.. faults.Select(fault => fault.Element).Distinct()], "element", "Name it as the candidates do: plate@13, body.two-way."))
            : EvidenceReading.Of(new Evidence.Cleared(text, Phrase.Of($"{text} was checked and is right"), codes));
    }

    private static bool IsAbout(Fault fault, string element) =>
        fault.Element == element || fault.Element.StartsWith(element + "=", StringComparison.Ordinal) || fault.Element.StartsWith(element + ":", StringComparison.Ordinal);

    private EvidenceReading? Instead(string text)
    {
        var words = Lower(text).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var at = Array.IndexOf(words, "instead");
        if (at < 0) return null;
        var (got, wanted) = (words[..at].Select(gears.Find).LastOrDefault(gear => gear >= 0, -1), words[(at + 1)..].Select(gears.Find).FirstOrDefault(gear => gear >= 0, -1));
        if (got < 0 || wanted < 0) return NoGear(text, "A instead of B");
        return Felt(text, [new FeltIn(wanted, InsteadOf(got))]);
    }

    /// <summary>What is told as a gear in place of another: that gear, or one near it; or a clutch that slips so much that the others alone drive. Judgement, no source.</summary>
    private ImmutableArray<Fit> InsteadOf(int gear) => [new Fit(FeelKind.WrongGear, unit.Gears[gear].Name, 1), new Fit(FeelKind.WrongRatio, null, 0.3), new Fit(FeelKind.Slips, null, 0.5)];

    private EvidenceReading Felt(string text, ImmutableArray<FeltIn> felt)
    {
        var where = felt.Select(each => unit.Gears[each.Gear].Name);
        return EvidenceReading.Of(new Evidence.Felt(text, Phrase.Of($"{text} (in {where})"), felt, IsHealthy: false));
    }

    private EvidenceReading NoGear(string text, string form) =>
        EvidenceReading.Wrong($"complaint '{text}' does not say in which gear", $"Write it as {form}. Gears: {GearNames}.");

    /// <summary>Gears that a phrase names, in order, and its other words without those that say nothing.</summary>
    private (List<int> Gears, List<string> Words) Split(string text)
    {
        var named = new List<int>();
        var words = new List<string>();
        foreach (var (original, word) in Dashes(text).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => (word.Trim(',', '.', ';', ':'), Lower(word).Trim(',', '.', ';', ':'))))
        {
            if (IsKnown(words, word)) words.Add(word);
            else if (gears.Find(original) is >= 0 and var exact) named.Add(exact);
            else if (gears.Find(word) is >= 0 and var gear) named.Add(gear);
            else if (Shift(original) is { } shift) named.AddRange(shift);
            else if (word.Length > 0 && !Fillers.Contains(word)) words.Add(word);
        }

        return (named, words);
    }

    /// <summary>A phrase without the words that say nothing.</summary>
    private static string Bare(string phrase) => string.Join(' ', phrase.Split(' ').Where(word => !Fillers.Contains(word)));

    /// <summary>"Neutral" alone is what is felt; after another word, or as N, it is the gear.</summary>
    private static bool IsKnown(List<string> before, string word) => before.Count == 0 && word is "neutral" or "no";

    private IEnumerable<int>? Shift(string word)
    {
        for (var at = word.IndexOf('-', StringComparison.Ordinal); at >= 0; at = word.IndexOf('-', at + 1))
        {
            var (from, to) = (gears.Find(Lower(word[..at])), gears.Find(Lower(word[(at + 1)..])));
            if (from < 0) from = gears.Find(word[..at]);
            if (to < 0) to = gears.Find(word[(at + 1)..]);
            if (from >= 0 && to >= 0) return [from, to];
        }

        return null;
    }

    private static string Dashes(string text) => text.Replace('–', '-').Replace('—', '-');

    private static string Lower(string text) => Dashes(text).Replace("'", "", StringComparison.Ordinal).ToLowerInvariant()
        .Replace("doesnt", "does not", StringComparison.Ordinal).Replace("wont", "will not", StringComparison.Ordinal);

    internal static string Help(string word, ImmutableArray<string> known, string what, string? otherwise = null) =>
        DidYouMean.Find(word, known) is { } close ? $"Did you mean {close}?"
        : known.IsEmpty ? $"The file names no {what}."
        : otherwise ?? $"Known: {string.Join(", ", known.Take(24))}{(known.Length > 24 ? ", ..." : "")}.";
}
