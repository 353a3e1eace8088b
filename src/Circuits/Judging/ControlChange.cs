namespace Circuits.Judging;

/// <summary>A clutch whose narrowest opening differs clearly from that of every nearest matched set.</summary>
/// <param name="Clutch">The clutch.</param>
/// <param name="OnApply">On its apply side, else on its release side.</param>
/// <param name="Now">The opening here.</param>
/// <param name="Before">The opening in the first matched set.</param>
internal sealed record ControlChange(string Clutch, bool OnApply, Control Now, Control Before)
{
    /// <summary>How much more or less area counts as clearly different.</summary>
    private const double Clearly = 1.5;

    /// <summary>Whether the opening is wider than it was.</summary>
    public bool Wider => Now.SquareMillimetres > Before.SquareMillimetres;

    /// <summary>The changes in one gear: apply side of clutches that are on as charted, release side of those that are off.</summary>
    public static IEnumerable<ControlChange> Of(GearContext gear)
    {
        foreach (var clutch in gear.Report.Clutches)
        {
            if (clutch.Verdict != Model.Verdict.AsCharted || gear.Reference.IsEmpty) continue;
            var onApply = clutch.Charted;
            if (onApply ? !IsJustApplied(gear, clutch.Clutch) : !IsJustReleased(gear, clutch.Clutch)) continue;
            var now = onApply ? clutch.Apply : clutch.Release;
            var before = gear.Reference
                .Select(reference => reference.Report.Clutches.First(candidate => candidate.Clutch == clutch.Clutch))
                .Select(candidate => onApply ? candidate.Apply : candidate.Release).ToList();
            if (now is null || before.Exists(control => control is null || !Apart(now, control))) continue;
            yield return new ControlChange(clutch.Clutch, onApply, now, before[0]!);
        }
    }

    /// <summary>What the driver may feel of the changes in a gear that otherwise is as it should be; null for nothing.</summary>
    public static Feel? Feels(GearContext gear)
    {
        var changes = Of(gear).ToList();
        var first = changes.Find(change => change.OnApply) ?? changes.FirstOrDefault();
        return first switch
        {
            null => null,
            { OnApply: true, Wider: true } => Into(FeelKind.Harsh),
            { OnApply: true } => Into(FeelKind.Delayed),
            { Wider: true } => Into(FeelKind.LetsGoFast),
            _ => Into(FeelKind.LetsGoSlowly),
        };

        Feel Into(FeelKind kind) => new(kind, gear.Gear) { Clutch = first.Clutch };
    }

    /// <summary>A clutch lets go only on the way into a gear from a neighbour that applies it.</summary>
    private static bool IsJustReleased(GearContext gear, string clutch)
    {
        var gears = gear.Network.Assembly.Unit.Gears;
        return (gear.Index > 0 && Charts.Applies(gears[gear.Index - 1], clutch))
            || (gear.Index + 1 < gears.Length && Charts.Applies(gears[gear.Index + 1], clutch));
    }

    /// <summary>A clutch comes on only on the way into a gear from a neighbour that does without it; one that is on in both is not felt.</summary>
    private static bool IsJustApplied(GearContext gear, string clutch)
    {
        var gears = gear.Network.Assembly.Unit.Gears;
        return gears.Length == 1 || (gear.Index > 0 && !Charts.Applies(gears[gear.Index - 1], clutch))
            || (gear.Index + 1 < gears.Length && !Charts.Applies(gears[gear.Index + 1], clutch));
    }

    private static bool Apart(Control now, Control before)
    {
        var ratio = now.SquareMillimetres / before.SquareMillimetres;
        return ratio is > Clearly or < 1 / Clearly;
    }
}
