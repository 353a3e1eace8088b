using Circuits.Judging;
using Circuits.Model;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>How the chart marks a clutch: a quiet mark where all is as charted, a word where it is not.</summary>
/// <param name="Text">The mark; readable without colour.</param>
/// <param name="Meaning">What the legend says of it.</param>
/// <param name="Style">Its style.</param>
internal sealed record ClutchMark(string Text, string Meaning, Style Style)
{
    private static readonly ClutchMark On = new("X", "on, as charted", Page.Good);
    private static readonly ClutchMark Off = new(".", "off, as charted", Page.Faint);
    private static readonly ClutchMark WeakCharted = new("weak", "charted, too little pressure", Page.Doubtful);
    private static readonly ClutchMark Lost = new("LOST", "charted, not on", Page.Bad);
    private static readonly ClutchMark Extra = new("EXTRA", "on, not charted", Page.Bad);
    private static readonly ClutchMark Drags = new("drag", "partly on, not charted", Page.Doubtful);
    private static readonly ClutchMark Trapped = new("trap", "oil shut in: neither fed nor drained", Page.Doubtful);
    private static readonly ClutchMark Unsettled = new("?", "never settles", Page.Bad);

    /// <summary>Every mark, in the order of the legend.</summary>
    public static IReadOnlyList<ClutchMark> All { get; } = [On, Off, WeakCharted, Lost, Extra, Drags, Trapped, Unsettled];

    /// <summary>The mark of a clutch in a gear.</summary>
    public static ClutchMark Of(GearReport gear, ClutchReport clutch)
    {
        if (!gear.Settled || clutch.Verdict == Verdict.NeverSettles) return Unsettled;
        return (clutch.Verdict, clutch.State) switch
        {
            (Verdict.Lost, _) => Lost,
            (Verdict.Weak, _) => WeakCharted,
            (Verdict.Unwanted, ClutchState.Applied) => Extra,
            (Verdict.Unwanted, ClutchState.Weak) => Drags,
            (_, ClutchState.Trapped) => Trapped,
            (Verdict.Unwanted, _) => Extra,
            _ => clutch.Charted ? On : Off,
        };
    }
}
