using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>Says where everything that moves stands, beside where it stands in the matched set.</summary>
internal sealed partial class PositionReports : IElementKinds<GearSolution>
{
    private readonly List<PositionReport> positions = [];

    public static ImmutableArray<PositionReport> Of(GearSolution now, GearSolution? reference)
    {
        var before = reference is null ? [] : Positions(reference).ToDictionary(position => position.Element, position => position.Position);
        return [.. Positions(now).Select(position => position with { Reference = before.GetValueOrDefault(position.Element) })];
    }

    public void Passages(GearSolution state) { } // do not move

    public void Openings(GearSolution state) { } // do not move

    public void Lever(GearSolution state) { } // stands where the gear's own line says

    public void Restrictions(GearSolution state) { } // do not move

    public void Leaks(GearSolution state) { } // do not move

    public void Accumulators(GearSolution state) { } // how far one is filled only time tells

    public void Clutches(GearSolution state) { } // have reports of their own

    /// <summary>Spools first, then balls, then what holds and switches pressures.</summary>
    private static IEnumerable<PositionReport> Positions(GearSolution state)
    {
        var reports = new PositionReports();
        reports.Each(state);
        return reports.positions.OrderBy(position => position.Kind switch
        {
            PositionKind.Valve => 0,
            PositionKind.Ball => 1,
            PositionKind.Regulator or PositionKind.Solenoid => 2,
            PositionKind.Screen => 3,
        });
    }

    private void Add(PositionKind kind, string element, Stand position, Place place) =>
        positions.Add(new PositionReport(kind, element, position, null, place));
}
