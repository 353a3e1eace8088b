using Circuits.Findings;
using Circuits.Quantities;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>Says what another start changes.</summary>
internal static class HistoryText
{
    public static Phrase Of(GearSolution answer, OtherStart other)
    {
        var differences = new List<Phrase>();
        if (!other.Solution.Settled) differences.Add(Phrase.Of($"it never settles"));
        for (var i = 0; i < answer.Moved.Length; i++)
        {
            if (answer.Moved[i] != other.Solution.Moved[i])
                differences.Add(Phrase.Of($"valve {answer.Network.Spools[i].Name} ends {new Stand.Spool(other.Solution.Moved[i], null)}"));
        }

        foreach (var clutch in answer.Network.Clutches)
        {
            var (here, there) = (NetPressure.Of(clutch, answer), NetPressure.Of(clutch, other.Solution));
            if (SolvedAssembly.AreApart(here, there))
                differences.Add(Phrase.Of($"{clutch.Clutch.Name} has {new Pressure(there)} instead of {new Pressure(here)}"));
        }

        var from = other.From is { } gear ? Phrase.Of($"from {gear}") : Phrase.Of($"from rest");
        return Phrase.Of($"{from}, {Phrase.Join(", ", differences)}");
    }
}
