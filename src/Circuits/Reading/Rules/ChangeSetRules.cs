using Circuits.Findings;

namespace Circuits.Reading;

/// <summary>Rules about how changes are written.</summary>
internal static class ChangeSetRules
{
    public static Rule IncompleteChange { get; } = new(
        "incomplete-change", Severity.Error,
        "A change lacks its name or its value, or has one that it does not take.",
        "It is not clear what should be changed, or how.",
        "--hole 21",
        "Write it in the form that the help line shows: --hole plate@21=2.0mm, --plug plate@22, --leak a~b=0.3mm2.");
}
