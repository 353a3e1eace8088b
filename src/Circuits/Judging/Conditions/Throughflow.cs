using Circuits.Solving.Flow;

namespace Circuits.Judging.Conditions;

/// <summary>What flows through places of a network.</summary>
internal static class Throughflow
{
    /// <summary>What flows into each cell, m3/s; as much flows out again.</summary>
    /// <param name="flow">The network.</param>
    /// <param name="gear">A settled gear of it.</param>
    public static double[] Of(FlowNetwork flow, SteadyGear gear)
    {
        var into = new double[flow.Cells];
        foreach (var (element, rate) in gear.Elements) into[rate >= 0 ? element.B : element.A] += Math.Abs(rate);
        if (flow.Pump >= 0) into[flow.Pump] += gear.Pumped;
        return into;
    }
}
