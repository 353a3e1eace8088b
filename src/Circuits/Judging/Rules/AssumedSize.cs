using Circuits.Findings;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>assumed-size</c>.</summary>
internal sealed class AssumedSize : AssemblyRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "assumed-size", Severity.Note,
        Meaning: "A size that the file does not give was assumed.",
        OnTheRoad: "The answer is as good as the assumption. Static answers rarely hang on it; pressures and times do.",
        Example: "assumed 40 mm2 for the ports of body.select: no area given.",
        Mend: "Measure it, and write it into the file.");

    /// <inheritdoc/>
    public override void Find(AssemblyContext assembly, List<Finding> found)
    {
        foreach (var assumption in assembly.Solved.Network.Assumptions) found.Add(Rule.At(assumption.Place, assumption.Text));
    }
}
