using Circuits.Judging.Changes;
using Circuits.Model;

namespace Circuits.Cli;

/// <summary>Shifts as words of the command line.</summary>
internal static class ShiftWords
{
    /// <summary>The shift that a word names: two gears with a dash between, either of which may have a dash in its own name.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="file">Its file, for messages.</param>
    /// <param name="word">The word.</param>
    /// <param name="option">The option that it was given to.</param>
    /// <exception cref="UserError">It names no two gears of the unit, or two different pairs.</exception>
    public static ShiftPlan Plan(Unit unit, string file, string word, string option = "--shift")
    {
        var pairs = Enumerable.Range(0, word.Length).Where(i => word[i] == '-')
            .Select(i => (From: unit.FindGear(word[..i]), To: unit.FindGear(word[(i + 1)..]))).Where(pair => pair is { From: not null, To: not null }).ToList();
        if (pairs is [{ From: { } from, To: { } to }] && from != to) return ShiftPlans.Between(unit, from, to);
        if (pairs.Count == 0) throw UserError.Unknown("shift", word, [.. ShiftPlans.Of(unit).Select(plan => plan.Name)], $" in {file}");
        throw new UserError(
            UserError.Usage, pairs.Count > 1 ? $"{option} {word} can be read as {string.Join(" or ", pairs.Select(pair => $"{pair.From!.Name} to {pair.To!.Name}"))}" : $"{option} {word} leaves and enters one gear",
            "Name two gears with a dash between: 2-3.");
    }
}
