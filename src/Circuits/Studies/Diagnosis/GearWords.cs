using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Studies.Diagnosis;

/// <summary>Which gear a word means: its name in the file, or the trade's word for it.</summary>
internal sealed class GearWords
{
    private static readonly ImmutableArray<ImmutableArray<string>> Ordinals =
    [
        ["first", "1st", "one"], ["second", "2nd", "two"], ["third", "3rd", "three"], ["fourth", "4th", "four"], ["fifth", "5th", "five"],
        ["sixth", "6th", "six"], ["seventh", "7th", "seven"], ["eighth", "8th", "eight"], ["ninth", "9th", "nine"], ["tenth", "10th", "ten"],
    ];

    private readonly ImmutableArray<GearState> gears;
    private readonly UnitJudge judge;

    public GearWords(UnitJudge judge)
    {
        this.judge = judge;
        gears = judge.Unit.Gears;
        Driven = [.. Enumerable.Range(0, gears.Length).Where(IsFirstOfItsKind)];
    }

    /// <summary>
    /// The gears that a driver knows: of several states of one ratio (a default without current, a gear that is held) the first for each position
    /// of the lever, which a driver chooses and so can tell of.
    /// </summary>
    public ImmutableArray<int> Driven { get; }

    /// <summary>Those of them that drive forward, each ratio once.</summary>
    public ImmutableArray<int> Forward =>
    [
        .. Driven.Where(gear => judge.Unit.GearSet is null ? !gears[gear].Apply.IsEmpty && !IsReverse(gear) : judge.RatioOf(gear) > 0 && !SameBefore(gear).Any()),
    ];

    /// <summary>The gear in which the vehicle should stand; -1 for none.</summary>
    public int Neutral
    {
        get
        {
            var named = Find("N");
            return named >= 0 ? named : gears.IndexOf(gears.FirstOrDefault(gear => gear.Apply.IsEmpty)!);
        }
    }

    /// <summary>The gear that a word means; -1 for none.</summary>
    public int Find(string word)
    {
        for (var i = 0; i < gears.Length; i++)
        {
            if (gears[i].Name == word) return i;
        }

        for (var i = 0; i < gears.Length; i++)
        {
            if (string.Equals(gears[i].Name, word, StringComparison.OrdinalIgnoreCase)) return i;
        }

        if (word is "reverse" or "rev") return Reverse;
        if (word is "neutral") return Neutral;
        if (word is "park") return Find("P");
        for (var i = 0; i < Ordinals.Length; i++)
        {
            if (Ordinals[i].Contains(word)) return Numbered(i + 1);
        }

        return -1;
    }

    /// <summary>The gear of that number: by its name, else by its place among the forward gears.</summary>
    private int Numbered(int number)
    {
        var name = number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        for (var i = 0; i < gears.Length; i++)
        {
            if (gears[i].Name == name) return i;
        }

        return number <= Forward.Length ? Forward[number - 1] : -1;
    }

    private int Reverse
    {
        get
        {
            for (var i = 0; i < gears.Length; i++)
            {
                if (IsReverse(i)) return i;
            }

            return -1;
        }
    }

    private bool IsReverse(int gear) => judge.RatioOf(gear) is { } ratio ? ratio < 0 : gears[gear].Name is "R" or "r" or "Reverse" or "reverse";

    private bool IsFirstOfItsKind(int gear) => !SameBefore(gear).Any(before => gears[before].Lever?.Name == gears[gear].Lever?.Name);

    /// <summary>The gears before one that have its ratio.</summary>
    private IEnumerable<int> SameBefore(int gear) => judge.RatioOf(gear) is { } ratio
        ? Enumerable.Range(0, gear).Where(before => judge.RatioOf(before) is { } other && Math.Abs(other - ratio) < 1e-6)
        : [];
}
