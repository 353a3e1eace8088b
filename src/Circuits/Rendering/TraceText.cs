using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Model;
using Spectre.Console;

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
            page.Heading($"{trace.Of} in gear {trace.Gear}");
            Branch(page, "from supply", trace.Apply);
            Branch(page, "to sump", trace.Release);
        }

        return page.ToString();
    }

    private static void Branch(Page page, string heading, TraceFact fact)
    {
        page.Line(heading, Page.Faint);
        var tree = new Tree(Fact(page, fact)) { Guide = page.Options.Unicode ? TreeGuide.Line : TreeGuide.Ascii };
        foreach (var reason in fact.Because) Add(page, tree, reason);
        page.Put(tree, indent: 2);
    }

    private static void Add(Page page, IHasTreeNodes parent, TraceFact fact)
    {
        var node = new TreeNode(Fact(page, fact));
        foreach (var reason in fact.Because) Add(page, node, reason);
        parent.Nodes.Add(node);
    }

    private static Paragraph Fact(Page page, TraceFact fact) => fact.Place is { File.Length: > 0 } place
        ? page.Pieces((fact.Text + " ", Page.Plain), ($"[{place}]", Page.Faint))
        : page.Pieces((fact.Text, Page.Plain));
}
