using Circuits.Findings;

namespace Circuits.Stacking.Rules;

/// <summary>The rule <c>missing-name</c>.</summary>
public static class MissingName
{
    /// <summary>The rule and its explanation.</summary>
    public static Rule Rule { get; } = new(
        "missing-name", Severity.Warning,
        Meaning: "An element names a passage, solenoid or lever position that other revisions have, but this assembly lacks.",
        OnTheRoad: "The element cannot work as drawn: its port leads nowhere, or nothing moves it.",
        Example: "Valve select of body 2 is moved by cover.signal-3, which cover 1 does not have.",
        Mend: "Fit revisions that belong together, or correct the name in the file.");
}
