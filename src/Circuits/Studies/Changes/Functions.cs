using Circuits.Model;

namespace Circuits.Studies.Changes;

/// <summary>What elements are for, from what the file says of them.</summary>
internal static class Functions
{
    public static string Of(Ball ball) => ball.Seats.Length > 1
        ? $"lets one feed into {ball.Pocket.Name} and shuts the other"
        : $"lets oil into {ball.Pocket.Name} and not back";

    public static string Of(Valve valve)
    {
        var by = valve.MovedBy.OfType<SpoolForce.Signal>().Select(signal => signal.From.Name.ToString()).Distinct().ToList();
        return by.Count == 0 ? "joins and parts passages" : $"joins and parts passages as {string.Join(", ", by)} moves it";
    }

    public static string Of(Regulator regulator) => regulator switch
    {
        Regulator.Spilling spilling => $"holds {spilling.Holds.Name} at its pressure",
        Regulator.Reducing reducing => $"gives {reducing.Out.Name} a set part of {reducing.From.Name}",
        _ => "holds a pressure",
    };

    public static string OfOpening(Assembly assembly, string sheet, HashSet<string> locations)
    {
        if (assembly.Unit.Joints.FirstOrDefault(joint => joint.Sheets.Any(its => its.Name == sheet)) is not { } joint) return "lets oil through";
        var passages = assembly.Unit.Parts.Zip(assembly.Revisions)
            .Where(pair => pair.First.Name == joint.Upper.Name || pair.First.Name == joint.Lower.Name)
            .SelectMany(pair => pair.Second.Passages.Where(passage => passage.Locations.Any(use => use.Joint == joint.Name && locations.Contains(use.Location)))
                .Select(passage => $"{pair.First.Name}.{passage.Name}")).Distinct().ToList();
        return passages.Count > 1 ? $"lets oil between {string.Join(" and ", passages)}" : "lies over metal or a dead end";
    }
}
