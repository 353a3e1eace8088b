using System.Text;
using Circuits.Networks;
using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Drawing;

/// <summary>What a circuit drawing shows, in words, for whoever does not see it.</summary>
internal static class TextAlternative
{
    private const int Longest = 40;

    /// <summary>The whole drawing.</summary>
    public static string Of(Diagram diagram, GearView view, Lettering lettering, UnitSystem units)
    {
        var text = new StringBuilder();
        var network = diagram.Network;
        text.Append("The circuit from the pump on the left to the clutches on the right. Line pressure ").Append(Measures.Pressure(view.Report.LineKilopascals, units)).Append(view.Report.DecidedAt is { } decided ? $" at {decided.At.Name}. " : ". ");
        foreach (var clutch in view.Report.Clutches)
        {
            text.Append("Clutch ").Append(clutch.Clutch).Append(clutch.Charted ? ", charted, is " : ", not charted, is ").Append(Words.Of(clutch.State))
                .Append(" at ").Append(Measures.Pressure(clutch.Kilopascals, units));
            if (clutch.StoppedAt is { } stop) text.Append("; its oil stops at ").Append(stop.Element).Append(", ").Append(PhraseWords.Of(stop.Reason, units));
            text.Append(". ");
        }

        foreach (var feed in view.Report.CrossFeeds)
            text.Append("Foreign oil of ").Append(feed.From).Append(" enters ").Append(feed.Into).Append(" through ").Append(feed.Through).Append(". ");
        foreach (var look in Palette.Looks)
            List(text, $"{Palette.WordOf(look)}: ", network.Nodes.Where(node => node.Kind == NodeKind.Passage && view.Nodes[node.Index].Look == look).Select(node => node.Name));
        if (view.Against is { } against)
            List(text, $"Other than in {against}: ", diagram.Symbols.Where(lettering.Differs).Select(symbol => symbol.Name));
        return text.ToString().TrimEnd();
    }

    /// <summary>One symbol.</summary>
    public static string Of(Symbol symbol, GearView view, Lettering lettering)
    {
        var facts = lettering.Above(symbol).Concat(lettering.Below(symbol)).Where(row => row.Style != "name").Select(row => row.Text);
        var look = symbol.Kind is SymbolKind.Passage or SymbolKind.Meeting ? $", {Palette.MeaningOf(view.Nodes[symbol.Element].Look)}" : "";
        return $"{Legend.WordOf(symbol.Kind).Replace('-', ' ')} {symbol.Name}{look}: {string.Join("; ", facts)}";
    }

    private static void List(StringBuilder text, string head, IEnumerable<string> names)
    {
        var all = names.Distinct().ToList();
        if (all.Count == 0) return;
        text.Append(char.ToUpperInvariant(head[0])).Append(head.AsSpan(1)).AppendJoin(", ", all.Take(Longest));
        if (all.Count > Longest) text.Append(" and ").Append(Words.Count(all.Count - Longest, "other"));
        text.Append(". ");
    }
}
