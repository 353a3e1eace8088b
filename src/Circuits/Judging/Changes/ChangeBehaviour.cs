namespace Circuits.Judging.Changes;

/// <summary>A change of gear that is not good, as far as it tells assemblies apart.</summary>
/// <param name="Change">The change: <c>2-3</c>.</param>
/// <param name="Condition">The name of the condition.</param>
/// <param name="Verdict">What it came to.</param>
/// <param name="Feel">What the driver feels.</param>
public sealed record ChangeBehaviour(string Change, string Condition, ShiftVerdict Verdict, Feel Feel);
