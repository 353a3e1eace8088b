using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Rendering;

/// <summary>Why a clutch or passage has, or lacks, pressure: trees of facts.</summary>
public static class TraceText
{
    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="assembly">The assembly that was traced.</param>
    /// <param name="nearest">Its nearest matched sets.</param>
    /// <param name="traces">The traces, in the order to show them.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(Assembly assembly, ImmutableArray<string> nearest, ImmutableArray<Trace> traces, TextOptions options)
    {
        var page = new Page(options);
        GearsText.Header(page, assembly, nearest);
        foreach (var trace in traces)
        {
            page.Heading($"{trace.Of} in gear {trace.Gear}{(trace.At is { } at ? $" at {page.Words(at.InFull)}" : "")}");
            Branch(page, "from supply", trace.Apply);
            Branch(page, "to sump", trace.Release);
        }

        return page.ToString();
    }

    private static void Branch(Page page, string heading, TraceFact fact)
    {
        page.Line(heading, Page.Faint);
        var tree = Fact(page, fact);
        AddReasons(page, tree, fact);
        page.Put(tree, indent: 2);
    }

    // The oil's way reads downwards, step under step; only what a step depends on goes a level deeper. Otherwise a way of
    // a dozen steps would run off the page.
    private static void AddReasons(Page page, Outline parent, TraceFact fact)
    {
        var (step, under) = (fact, parent);
        while (step.IsStep)
        {
            foreach (var condition in step.Because.SkipLast(1)) Add(page, under, condition);
            step = step.Because[^1];
            var node = Fact(page, step);
            parent.Below.Add(node);
            under = node;
        }

        foreach (var reason in step.Because) Add(page, under, reason);
    }

    private static void Add(Page page, Outline parent, TraceFact fact)
    {
        var node = Fact(page, fact);
        parent.Below.Add(node);
        AddReasons(page, node, fact);
    }

    private static Outline Fact(Page page, TraceFact fact) => fact.Place is { File.Length: > 0 } place
        ? new Outline((page.Words(fact.Fact) + " ", Page.Plain), ($"[{place}]", Page.Faint))
        : new Outline((page.Words(fact.Fact), Page.Plain));
}
