using System.Collections.Immutable;
using Circuits.Solving.Flow;

namespace Circuits.Judging.Conditions;

/// <summary>Tells foreign oil that counts from foreign oil that changes nothing, by what flows at the unit's conditions.</summary>
internal static class CrossFeedEffect
{
    /// <summary>A passage's pressure that shifts by no more than this share of line pressure is as it was.</summary>
    private const double Shift = 0.05;

    /// <summary>No more than this share of the pump's oil is missed by nobody.</summary>
    private const double Taken = 0.02;

    /// <summary>Two passages above this share of line pressure both stand near it.</summary>
    private const double NearLine = 0.9;

    /// <summary>The cross-feeds of a gear, each with whether it counts. As they are where no flow was worked out.</summary>
    /// <param name="feeds">The cross-feeds.</param>
    /// <param name="gear">The gear's number.</param>
    /// <param name="here">What flows in the assembly.</param>
    /// <param name="matched">What flows in the nearest matched set.</param>
    public static ImmutableArray<CrossFeed> Weighed(ImmutableArray<CrossFeed> feeds, int gear, FlowAnswers? here, FlowAnswers? matched)
    {
        if (here is null || matched is null || feeds.IsEmpty) return feeds;
        return [.. feeds.Select(feed => feed with { IsHarmless = feed.Moves.IsEmpty && Enumerable.Range(0, here.Points.Length).All(point => IsLittle(feed, here.In(gear, point), matched.In(gear, point))) })];
    }

    private static bool IsLittle(CrossFeed feed, SteadyGear here, SteadyGear matched)
    {
        if (!here.Converged || !matched.Converged) return false;
        var line = here.PressureAt(here.Network.Pump);
        if (PressureIn(here, feed.Into) is not { } now || PressureIn(here, feed.From) is not { } source || PressureIn(matched, feed.Into) is not { } before) return false;
        if (Math.Min(Math.Min(now, before), source) >= NearLine * line) return true;
        return Math.Abs(now - before) <= Shift * line && FlowThrough(here, feed) <= Taken * here.Pumped;
    }

    private static double? PressureIn(SteadyGear gear, string passage)
    {
        foreach (var node in gear.Network.Nodes)
        {
            if (node.Name == passage) return gear.PressureAt(node.Index);
        }

        return null;
    }

    private static double FlowThrough(SteadyGear gear, CrossFeed feed)
    {
        var most = 0.0;
        foreach (var (element, rate) in gear.Elements)
        {
            if (element.Link >= 0 && gear.Network.Links[element.Link].Element == feed.Through) most = Math.Max(most, Math.Abs(rate));
        }

        return most;
    }
}
