using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Sizes;
using Circuits.Model;

namespace Circuits.Studies.Sensitivity;

/// <summary>A number of an answer.</summary>
/// <param name="Name">What it is: <c>direct in R</c>.</param>
/// <param name="Value">The number; null where there is none.</param>
public readonly record struct AnswerItem(Phrase Name, double? Value);

/// <summary>How much a size that is missing matters to an answer.</summary>
/// <param name="Size">What it is of: <c>return spring of clutch high</c>.</param>
/// <param name="Assumed">What was assumed: <c>480 N</c>.</param>
/// <param name="Less">The less that was tried.</param>
/// <param name="More">The more that was tried.</param>
/// <param name="Of">The number of the answer that it moves most.</param>
/// <param name="AsAssumed">That number with what was assumed.</param>
/// <param name="WithLess">That number with less; null where there is none.</param>
/// <param name="WithMore">That number with more; null where there is none.</param>
/// <param name="Moves">How far it moves at most; infinite where it comes or goes.</param>
public sealed record SizeEffect(
    string Size, Phrase Assumed, Phrase Less, Phrase More, Phrase Of, double? AsAssumed, double? WithLess, double? WithMore, double Moves);

/// <summary>Says which missing size matters most to an answer: each is varied alone, by half and double or as far as such a size varies.</summary>
public static class SensitivityStudy
{
    /// <summary>More missing sizes than this are not varied one by one.</summary>
    public const int Most = 80;

    /// <summary>Says so where too many sizes are missing to find out which of them matters; else null.</summary>
    /// <param name="assembly">The assembly.</param>
    public static Phrase? Note(Assembly assembly) => MissingSizes.Of(assembly).Skip(Most).Any()
        ? Phrase.Of($"more than {Most} sizes are missing: which of them matters most is not worked out")
        : null;

    /// <summary>The missing sizes by how far they move the answer, most first.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="ask">Gives the answer for an assembly, its numbers always in the same order; called by several threads.</param>
    /// <returns>None where none matters, and none where more than <see cref="Most"/> are missing.</returns>
    /// <param name="least">A size that moves no number by more than this does not matter and is left out.</param>
    public static ImmutableArray<SizeEffect> Rank(Assembly assembly, Func<Assembly, ImmutableArray<AnswerItem>> ask, double least)
    {
        MissingSize[] sizes = [.. MissingSizes.Of(assembly)];
        if (sizes.Length is 0 or > Most) return [];
        var answers = new ImmutableArray<AnswerItem>[1 + (2 * sizes.Length)];
        Parallel.For(0, answers.Length, i => answers[i] = ask(i == 0 ? assembly : sizes[(i - 1) / 2].Vary(i % 2 == 1 ? -1 : 1)));
        return
        [
            .. sizes.Select((size, i) => Effect(size, answers[0], answers[1 + (2 * i)], answers[2 + (2 * i)]))
                .Where(effect => effect.Moves > least).OrderByDescending(effect => effect.Moves),
        ];
    }

    private static SizeEffect Effect(MissingSize size, ImmutableArray<AnswerItem> assumed, ImmutableArray<AnswerItem> less, ImmutableArray<AnswerItem> more)
    {
        var (worst, moves) = (0, -1.0);
        for (var k = 0; k < assumed.Length; k++)
        {
            var here = Math.Max(Apart(assumed[k].Value, less[k].Value), Apart(assumed[k].Value, more[k].Value));
            if (here > moves) (worst, moves) = (k, here);
        }

        return assumed.IsEmpty
            ? new SizeEffect(size.Name, size.Assumed, size.Less, size.More, Phrase.Empty, null, null, null, 0)
            : new SizeEffect(size.Name, size.Assumed, size.Less, size.More, assumed[worst].Name, assumed[worst].Value, less[worst].Value, more[worst].Value, moves);
    }

    private static double Apart(double? one, double? other) =>
        one is null != other is null ? double.PositiveInfinity : one is { } a && other is { } b ? Math.Abs(a - b) : 0;
}
