using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Drawing;

/// <summary>A row of lettering.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Style">Its style, or null for the usual.</param>
/// <param name="Signal">The node whose oil is the signal that the row tells of: a pilot line in its colour leads to it; else -1.</param>
internal readonly record struct LetteredRow(string Text, string? Style = null, int Signal = -1);

/// <summary>What is lettered above and below each symbol in a gear; for passages, within.</summary>
internal sealed class Lettering
{
    private readonly GearView view;
    private readonly UnitSystem units;
    private readonly Dictionary<string, Stand> positions;
    private readonly HashSet<string> entries;
    private readonly ILookup<string, string> stops;

    public Lettering(GearView view, UnitSystem units)
    {
        this.view = view;
        this.units = units;
        positions = view.Report.Positions.DistinctBy(position => position.Element).ToDictionary(position => position.Element, position => position.Position);
        entries = [.. view.Report.CrossFeeds.Select(feed => feed.Through)];
        stops = view.Report.Clutches.Where(clutch => clutch.StoppedAt is not null).ToLookup(clutch => clutch.StoppedAt!.Element, clutch => clutch.Clutch);
    }

    /// <summary>Whether foreign oil comes in by a symbol.</summary>
    public bool IsEntry(Symbol symbol) => symbol.Kind is not SymbolKind.Passage and not SymbolKind.Clutch && entries.Contains(symbol.Name);

    /// <summary>Whether a charted clutch's oil ends at a symbol.</summary>
    public bool IsStop(Symbol symbol) => symbol.Kind is not SymbolKind.Passage and not SymbolKind.Clutch && stops.Contains(symbol.Name);

    /// <summary>Whether a symbol's oil or position differs from what the drawing is held against.</summary>
    public bool Differs(Symbol symbol) => symbol.Kind switch
    {
        SymbolKind.Passage => view.Nodes[symbol.Element].Differs,
        SymbolKind.Clutch => view.Nodes[Chamber(symbol)].Differs,
        SymbolKind.Meeting or SymbolKind.Orifice or SymbolKind.Joined or SymbolKind.Leak => view.Added.Contains(symbol.Name),
        SymbolKind.Valve or SymbolKind.Ball or SymbolKind.Spilling or SymbolKind.Reducing or SymbolKind.PressureSolenoid or SymbolKind.Switch
            or SymbolKind.Stuck or SymbolKind.Lever or SymbolKind.Accumulator or SymbolKind.Screen or SymbolKind.Pump or SymbolKind.Metal => view.Positions.ContainsKey(symbol.Name),
    };

    /// <summary>The rows above a symbol's figure.</summary>
    public IEnumerable<LetteredRow> Above(Symbol symbol)
    {
        if (symbol.Kind == SymbolKind.Passage) yield break;
        yield return new LetteredRow(DrawnText.Short(symbol.Name), "name");
        if (Detail(symbol) is { Length: > 0 } detail) yield return new LetteredRow(DrawnText.Short(detail, 34));
        foreach (var row in Changed(symbol)) yield return row;
        if (symbol.Kind == SymbolKind.Valve)
        {
            foreach (var signal in view.Solution.Network.Spools[symbol.Element].MovedBy) yield return Signal("", signal.Node);
        }
        else if (symbol.Kind is SymbolKind.Reducing or SymbolKind.Spilling)
        {
            foreach (var signal in view.Solution.Network.Regulators[symbol.Element].SetBy) yield return Signal("", signal.Node);
        }
    }

    /// <summary>The rows below a symbol's figure; for a passage, the rows within it.</summary>
    public IEnumerable<LetteredRow> Below(Symbol symbol)
    {
        if (symbol.Kind == SymbolKind.Passage)
        {
            var node = view.Nodes[symbol.Element];
            var name = symbol.Name;
            var dot = name.IndexOf('.', StringComparison.Ordinal);
            yield return new LetteredRow(DrawnText.Short(name[(dot + 1)..]), "name");
            yield return new LetteredRow($"{DrawnText.Short(name[..Math.Max(dot, 0)], 16)} {Pressure(node.Kilopascals)}");
            foreach (var row in Changed(symbol)) yield return row;
            yield break;
        }

        if (symbol.Kind == SymbolKind.Valve)
        {
            var spool = view.Solution.Network.Spools[symbol.Element];
            foreach (var signal in spool.HeldBy) yield return Signal("", signal.Node);
            if (spool.Source.HeldBy.OfType<SpoolForce.Spring>().FirstOrDefault() is { } spring)
                yield return new LetteredRow($"spring {Measures.Of(spring.Preload.Quantity, units)}", "faint");
        }

        if (IsEntry(symbol)) yield return new LetteredRow("foreign oil enters here", "alarm");
        if (IsStop(symbol)) yield return new LetteredRow($"{DrawnText.Short(string.Join(", ", stops[symbol.Name].Distinct()), 20)} stops here", "alarm");
    }

    private IEnumerable<LetteredRow> Changed(Symbol symbol)
    {
        if (view.Against is null || !Differs(symbol)) yield break;
        var text = symbol.Kind switch
        {
            SymbolKind.Passage when view.Nodes[symbol.Element].Before is { } before => $"was {Pressure(before)}",
            SymbolKind.Clutch when view.Nodes[Chamber(symbol)].Before is { } before => $"was {Pressure(before)}",
            SymbolKind.Passage or SymbolKind.Clutch or SymbolKind.Meeting or SymbolKind.Orifice or SymbolKind.Joined or SymbolKind.Leak => "not there before",
            _ => $"was {DrawnText.Short(StandWords.Of(view.Positions[symbol.Name], units), 30)}",
        };
        yield return new LetteredRow(text, "other");
    }

    private string Detail(Symbol symbol)
    {
        switch (symbol.Kind)
        {
            case SymbolKind.Pump:
                return "";
            case SymbolKind.Accumulator:
                return view.Solution.Network.Accumulators[symbol.Element].Source.Back is { } back ? $"on {DrawnText.Short(back.Name.ToString(), 24)}" : "";
            case SymbolKind.Joined:
                return "";
            case SymbolKind.Lever:
                var lever = view.Solution.Inputs.Lever;
                return lever < 0 ? "no position" : $"in {DrawnText.Short(view.Solution.Network.LeverPositions[lever], 12)}";
            case SymbolKind.Clutch:
                var clutch = view.Report.Clutches[symbol.Element];
                return clutch.Verdict == Verdict.AsCharted
                    ? $"{Words.Of(clutch.State)} {Pressure(clutch.Kilopascals)}"
                    : $"{Words.Of(clutch.Verdict)}: {Words.Of(clutch.State)} {Pressure(clutch.Kilopascals)}";
            case SymbolKind.Valve or SymbolKind.Ball or SymbolKind.Spilling or SymbolKind.Reducing or SymbolKind.PressureSolenoid or SymbolKind.Switch or SymbolKind.Screen:
                return positions.TryGetValue(symbol.Name, out var stand) ? StandWords.Of(stand, units) : "";
            default:
                return PhraseWords.Of(symbol.Detail, units);
        }
    }

    private LetteredRow Signal(string word, int node) => node < 0
        ? new LetteredRow($"{word}signal is missing", "alarm")
        : new LetteredRow($"{word}{DrawnText.Short(view.Solution.Network.Nodes[node].Name, 20)} {Pressure(view.Nodes[node].Kilopascals)}", null, node);

    private int Chamber(Symbol symbol) => Math.Max(0, view.Solution.Network.Clutches[symbol.Element].Chamber);

    private string Pressure(double kilopascals) => Measures.Pressure(kilopascals, units);
}
