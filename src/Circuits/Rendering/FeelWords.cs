using Circuits.Judging;

namespace Circuits.Rendering;

/// <summary>What the driver feels, in trade words.</summary>
public static class FeelWords
{
    /// <summary>What is felt: <c>slips in 3</c>.</summary>
    /// <param name="feel">What is felt.</param>
    /// <param name="gearIsTold">Whether the gear is left out, since a heading names it: <c>slips</c>.</param>
    public static string Of(Feel feel, bool gearIsTold = false)
    {
        var gear = feel.Gear;
        var inGear = gearIsTold ? "" : $" in {gear}";
        return feel.Kind switch
        {
            FeelKind.AsItShould => "as it should",
            FeelKind.NoDrive when feel.IsReverse => "no reverse",
            FeelKind.NoDrive => feel.Other is { } before ? $"no drive{inGear}, flare on {before}-{gear}" : $"no drive{inGear}",
            FeelKind.Slips => $"slips{inGear}",
            FeelKind.TieUp => $"tie-up{inGear}",
            FeelKind.WrongDirection => $"wrong direction{inGear}",
            FeelKind.WrongGear => $"wrong gear: {feel.Other} instead of {gear}",
            FeelKind.WrongRatio => $"wrong ratio{inGear}",
            FeelKind.NoEngineBraking => $"no engine braking{inGear}",
            FeelKind.OneTooMany => $"drives{inGear}, {feel.Clutch} on as well",
            FeelKind.Drags => feel.Clutch is { } clutch ? $"drag{inGear}: {clutch} partly on" : $"drags{inGear}",
            FeelKind.CreepsForward => $"creeps forward{inGear}",
            FeelKind.CreepsBackward => $"creeps backward{inGear}",
            FeelKind.NeverSettles => "comes and goes: the hydraulics never settle",
            FeelKind.NoLockUp => $"no lock-up{inGear}: {feel.Clutch} is not on",
            FeelKind.StaysLocked => $"{feel.Clutch} stays on{inGear}: drags the engine down at a stop",
            FeelKind.Starved => $"destroys itself unfelt: {feel.Clutch} runs dry{inGear}",
            FeelKind.OverPressure => $"may burst unfelt: too much pressure at {feel.Clutch}{inGear}",
            FeelKind.Soft => $"soft and late{inGear}, slips under load: line is low",
            FeelKind.Hard => $"harder{inGear}: line is high",
            FeelKind.Undecided => $"{feel.Other}-{gear} is not decided",
            FeelKind.Harsh => $"harsh into {gear}: {feel.Clutch} comes on too fast",
            FeelKind.Flares => $"flare {feel.Other}-{gear}",
            FeelKind.TiesUpOnTheWay => $"ties up on {feel.Other}-{gear}",
            FeelKind.NeverComes => $"{feel.Other}-{gear} does not come to hold",
            FeelKind.Delayed => $"delayed or soft into {gear}: {feel.Clutch} comes on too slowly",
            FeelKind.LetsGoFast => $"{feel.Clutch} lets go too fast into {gear}: flare or clunk",
            FeelKind.LetsGoSlowly => $"{feel.Clutch} lets go too slowly into {gear}: drags, may tie up on the shift",
            _ => throw new ArgumentOutOfRangeException(nameof(feel)),
        };
    }

    /// <summary>Feels that read the same where a heading names the gear.</summary>
    internal static IEqualityComparer<Feel> ButGear { get; } = EqualityComparer<Feel>.Create(
        (one, other) => one is not null && other is not null && one.Key == other.Key && one.IsReverse == other.IsReverse && (!NamesGear(one) || one.Gear == other.Gear),
        feel => feel.Key.GetHashCode(StringComparison.Ordinal));

    private static bool NamesGear(Feel feel) => feel.IsOnTheWay || feel.Kind == FeelKind.WrongGear || (feel.Kind == FeelKind.NoDrive && feel.Other is not null);
}
