using System.Globalization;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>Says what another start changes.</summary>
internal static class HistoryText
{
    public static string Of(GearSolution answer, OtherStart other)
    {
        var differences = new List<string>();
        if (!other.Solution.Settled) differences.Add("it never settles");
        for (var i = 0; i < answer.Moved.Length; i++)
        {
            if (answer.Moved[i] != other.Solution.Moved[i])
                differences.Add($"valve {answer.Network.Spools[i].Name} ends {PositionText.Of(other.Solution.Moved[i])}");
        }

        foreach (var clutch in answer.Network.Clutches)
        {
            var (here, there) = (NetPressure.Of(clutch, answer), NetPressure.Of(clutch, other.Solution));
            if (SolvedAssembly.AreApart(here, there))
                differences.Add(string.Create(CultureInfo.InvariantCulture, $"{clutch.Clutch.Name} has {there:0} kPa instead of {here:0} kPa"));
        }

        return $"{other.Start}, {string.Join(", ", differences)}";
    }
}
