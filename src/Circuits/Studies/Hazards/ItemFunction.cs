using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies.Hazards;

/// <summary>Says what an item is and what it is for, from what the file says of it.</summary>
internal static class ItemFunction
{
    /// <summary>The item that a change is about: <c>ball balls.range</c>.</summary>
    public static string ItemOf(Change change) => change switch
    {
        DropBall or ResizeBall => $"ball {change.Element}",
        InsertBall ball => $"pocket {ball.Ball.Pocket.Name}",
        PlugOpening or SetHole => $"opening {change.Element}",
        SetRestriction hole => $"hole {hole.Restriction.A.Name} to {hole.Restriction.B.Name}",
        SetSeat seat => $"seat of ball {seat.Part}.{seat.Ball.Name}",
        StickValve or RestrictExhaust => $"valve {change.Element}",
        LoseSprings => $"spring of valve {change.Element}",
        StickRegulator => $"regulator {change.Element}",
        LoseRegulatorSpring => $"spring of regulator {change.Element}",
        LoseAccumulatorSpring => $"spring of accumulator {change.Element}",
        LoseReturnSpring => $"return spring of clutch {change.Element}",
        FailSolenoid => $"solenoid {change.Element}",
        AddLeak { B.IsExhaust: true } leak => $"seal of {leak.A}",
        AddLeak leak => $"wall between {leak.A} and {leak.B}",
        RestrictLever lever => $"manual valve's exhaust of {lever.Passage}",
        RestrictDrain => $"exhaust of {change.Element}",
        FitRevision fit => $"part {fit.Part}",
        SwapSheets swap => $"sheets {swap.First} and {swap.Second}",
        _ => change.Element,
    };

    /// <summary>What the item is for.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="change">A change to the item.</param>
    public static string Of(Assembly assembly, Change change) => change switch
    {
        DropBall ball => Of(ball.Ball),
        ResizeBall ball => Of(ball.Ball),
        SetSeat seat => Of(seat.Ball),
        InsertBall => "lets oil through without a ball",
        PlugOpening plug => Opening(assembly, plug.Part, [.. plug.Locations]),
        SetHole hole => Opening(assembly, hole.Part, [hole.Location]),
        SetRestriction hole => $"meters oil between {hole.Restriction.A.Name} and {hole.Restriction.B.Name}",
        StickValve valve => Of(valve.Valve),
        RestrictExhaust valve => $"lets out what {valve.Element} releases",
        LoseSprings valve => $"holds {valve.Element} at rest",
        StickRegulator regulator => Of(regulator.Regulator),
        LoseRegulatorSpring regulator => $"sets what {regulator.Element} holds",
        LoseAccumulatorSpring or LoseReturnSpring => "pushes the piston back",
        FailSolenoid solenoid => $"gives {solenoid.Solenoid.Out.Name} oil of {solenoid.Solenoid.Feed.Name} as it is told",
        AddLeak { B.IsExhaust: true } leak => $"keeps the oil of {leak.A} in",
        AddLeak leak => $"keeps {leak.A} and {leak.B} apart",
        RestrictLever or RestrictDrain => "lets released oil out",
        FitRevision => "belongs to the design level of its mates",
        SwapSheets => "each seals and meters in its own place",
        _ => "not described",
    };

    private static string Of(Ball ball) => ball.Seats.Length > 1
        ? $"lets one feed into {ball.Pocket.Name} and shuts the other"
        : $"lets oil into {ball.Pocket.Name} and not back";

    private static string Of(Valve valve)
    {
        var by = valve.MovedBy.OfType<SpoolForce.Signal>().Select(signal => signal.From.Name.ToString()).Distinct().ToList();
        return by.Count == 0 ? "joins and parts passages" : $"joins and parts passages as {string.Join(", ", by)} moves it";
    }

    private static string Of(Regulator regulator) => regulator switch
    {
        Regulator.Spilling spilling => $"holds {spilling.Holds.Name} at its pressure",
        Regulator.Reducing reducing => $"gives {reducing.Out.Name} a set part of {reducing.From.Name}",
        _ => "holds a pressure",
    };

    private static string Opening(Assembly assembly, string sheet, HashSet<string> locations)
    {
        if (assembly.Unit.Joints.FirstOrDefault(joint => joint.Sheets.Any(its => its.Name == sheet)) is not { } joint) return "lets oil through";
        var passages = assembly.Unit.Parts.Zip(assembly.Revisions)
            .Where(pair => pair.First.Name == joint.Upper.Name || pair.First.Name == joint.Lower.Name)
            .SelectMany(pair => pair.Second.Passages.Where(passage => passage.Locations.Any(use => use.Joint == joint.Name && locations.Contains(use.Location)))
                .Select(passage => $"{pair.First.Name}.{passage.Name}")).Distinct().ToList();
        return passages.Count > 1 ? $"lets oil between {string.Join(" and ", passages)}" : "lies over metal or a dead end";
    }
}
