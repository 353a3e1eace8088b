using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>Rules about an edit: what a file's verdicts were before it.</summary>
public static class VerdictChanged
{
    /// <summary>A verdict differs.</summary>
    public static Rule Rule { get; } = new(
        "verdict-changed", Severity.Note,
        Meaning: "An edit of the file changed what a gear, or a change of gear, of these parts comes to.",
        OnTheRoad: "Nothing by itself. Whoever reviews the edit should expect this difference, and no other.",
        Example: "R: as-charted at main, now lost",
        Mend: "If the edit meant it, record it under expect. If not, look at the edit.");

    /// <summary>There is nothing to compare with.</summary>
    public static Rule NotCompared { get; } = new(
        "not-compared", Severity.Note,
        Meaning: "Verdicts could not be compared with those before an edit: there was no such file then, or it could not be read.",
        OnTheRoad: "Nothing by itself.",
        Example: "not compared with main: circuits/unit.yaml did not exist",
        Mend: "Nothing, if the file is new. Else check out the earlier state, and run check on it.");
}
