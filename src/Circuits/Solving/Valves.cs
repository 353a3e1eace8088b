using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>A spool, by cells; signals whose passage is missing are left out.</summary>
internal sealed record PlanSpool(Signal[] MovedBy, Signal[] HeldBy, double Springs, bool? Stuck);

public sealed partial class Plan
{
    internal PlanSpool[] Spools { get; private set; } = [];

    void IElementKinds<Network>.Valves(Network network) => Spools =
        [.. network.Spools.Select(spool => new PlanSpool(ByCell(spool.MovedBy), ByCell(spool.HeldBy), spool.Springs, StuckMoved(spool.Stuck)))];

    /// <summary>Whether a stuck spool counts as moved; null for one that is free. Of one stuck midway no port asks for its position.</summary>
    private static bool? StuckMoved(StuckAt? stuck) => stuck is null ? null : stuck == StuckAt.Moved;
}

internal sealed partial class Mechanics
{
    /// <summary>Forces closer than this, N, count as equal; a spool then stays at rest.</summary>
    private const double ForceTolerance = 1e-4;

    /// <summary>Whether the pressures ask a spool to be moved.</summary>
    public bool WantsMoved(int spool)
    {
        var element = plan.Spools[spool];
        if (element.Stuck is { } stuck) return stuck;
        var force = -element.Springs;
        foreach (var signal in element.MovedBy) force += signal.Factor * field.Pressure[signal.Node];
        foreach (var signal in element.HeldBy) force -= signal.Factor * field.Pressure[signal.Node];
        return force > ForceTolerance;
    }
}
