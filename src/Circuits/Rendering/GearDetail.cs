using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Solving;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>One gear in full: clutches and their openings, positions, pressures.</summary>
internal static class GearDetail
{
    public static void Write(Page page, AssemblyReport report, GearReport gear)
    {
        page.Heading($"Gear {gear.Gear} in detail: line {Measures.Pressure(gear.LineKilopascals, page.Options.Units)}");
        if (!gear.Settled) List(page, "Never settles; in turn:", gear.Cycle);
        List(page, "Depends on history:", [.. gear.Histories.Select(history => page.Words(history))]);
        Clutches(page, gear);
        Positions(page, gear, compared: report.Assembly.Matched is null && !report.NearestMatched.IsEmpty);
        Pressures(page, report.Assembly, gear);
    }

    private static void List(Page page, string heading, IReadOnlyCollection<string> sentences)
    {
        if (sentences.Count == 0) return;
        page.Line(heading, indent: 2);
        foreach (var sentence in sentences) page.Item("-", sentence, 4);
    }

    private static void Clutches(Page page, GearReport gear)
    {
        var units = page.Options.Units;
        var table = Page.Table();
        table.AddColumn(page.Column("clutch"));
        table.AddColumn(page.Column("charted"));
        table.AddColumn(page.Column("state"));
        table.AddColumn(page.Column("pressure", right: true));
        table.AddColumn(page.Column("of line", right: true, gap: 0));
        foreach (var clutch in gear.Clutches)
        {
            table.AddRow(
                page.Cell(clutch.Clutch), page.Cell(clutch.Charted ? "yes" : ""),
                page.Cell(Words.Of(clutch.State), clutch.Verdict == Verdict.AsCharted ? Page.Plain : GearChart.VerdictStyle(clutch.Verdict)),
                page.Cell(Measures.Pressure(clutch.Kilopascals, units)),
                page.Cell(clutch.Level.ToString("0 %", CultureInfo.InvariantCulture)));
        }

        page.Blank();
        page.Put(table, 2);
        page.Blank();
        foreach (var clutch in gear.Clutches)
        {
            string?[] ways =
            [
                clutch.Apply is null ? null : $"fed through {Controls.Of(clutch.Apply, units)}",
                clutch.Release is null ? null : $"drains through {Controls.Of(clutch.Release, units)}",
            ];
            page.Item($"{clutch.Clutch}:", ways is [null, null] ? "no way from supply, none to sump" : string.Join("; ", ways.OfType<string>()));
        }

        foreach (var clutch in gear.Clutches)
        {
            if (clutch.StoppedAt is not { } stop) continue;
            page.Item(
                "!", 2, Page.Bad,
                ($"{clutch.Clutch} {(clutch.State == ClutchState.Released ? "gets no oil past" : "loses oil at")} {stop.Element}: {page.Words(stop.Reason)} ", Page.Plain),
                ($"[{stop.Place}]", Page.Faint));
        }
    }

    private static void Positions(Page page, GearReport gear, bool compared)
    {
        if (gear.Positions.IsEmpty) return;
        var table = Page.Table();
        table.AddColumn(page.Column("element"));
        table.AddColumn(page.Column("kind"));
        table.AddColumn(page.Column("position", wrap: true));
        if (compared) table.AddColumn(page.Column("in the matched set", wrap: true, gap: 0));
        foreach (var position in gear.Positions.OrderBy(position => position.Kind switch
        {
            PositionKind.Solenoid => 0,
            PositionKind.Regulator => 1,
            PositionKind.Valve => 2,
            PositionKind.Ball => 3,
            PositionKind.Screen => 4,
        }))
        {
            var differs = compared && position.Reference is { } there && there != position.Position;
            List<GridCell> row =
            [
                page.Cell(position.Element, differs ? Page.Strong : Page.Plain), page.Cell(Words.Of(position.Kind)),
                page.Cell(StandWords.Of(position.Position, page.Options.Units), differs ? Page.Doubtful : Page.Plain),
            ];
            if (compared)
            {
                var reference = position.Reference is { } before ? StandWords.Of(before, page.Options.Units) : null;
                row.Add(page.Cell(reference is null ? "has no such element" : differs ? $"* {reference}" : "", spoken: differs ? reference : null));
            }

            table.AddRow([.. row]);
        }

        page.Blank();
        page.Put(table, 2);
    }

    private static void Pressures(Page page, Assembly assembly, GearReport gear)
    {
        if (gear.Pressures.IsEmpty) return;
        var circuits = assembly.Unit.Parts.Zip(assembly.Revisions)
            .SelectMany(pair => pair.Second.Passages.Select(passage => (Name: new PassageName(pair.First.Name, passage.Name).ToString(), passage.Circuit)))
            .ToDictionary(pair => pair.Name, pair => pair.Circuit);
        var groups = gear.Pressures
            .GroupBy(pressure => (
                Circuit: circuits.GetValueOrDefault(pressure.Passage, pressure.Passage), pressure.State,
                Text: Measures.Pressure(pressure.Kilopascals, page.Options.Units)))
            .ToList();
        var order = groups.Select(group => group.Key.Circuit).Distinct().ToList();
        groups = [.. groups.OrderBy(group => order.IndexOf(group.Key.Circuit))];
        var table = Page.Table();
        table.AddColumn(page.Column("circuit"));
        table.AddColumn(page.Column("pressure", right: true));
        table.AddColumn(page.Column("joined to"));
        table.AddColumn(page.Column("passages", wrap: true, gap: 0));
        foreach (var group in groups.Where(group => group.Key.State != OilState.Exhaust))
        {
            table.AddRow(
                page.Cell(group.Key.Circuit), page.Cell(group.Key.Text), page.Cell(Joined(group.Key.State)),
                page.Cell(string.Join(", ", group.Select(pressure => pressure.Passage)), Page.Faint));
        }

        page.Blank();
        if (table.Rows.Count > 0) page.Put(table, 2);
        var open = groups.Where(group => group.Key.State == OilState.Exhaust).Select(group => group.Key.Circuit).Distinct().ToList();
        if (open.Count > 0) page.Item("open to sump:", 2, Page.Faint, (string.Join(", ", open), Page.Plain));
    }

    private static string Joined(OilState state) => state switch
    {
        OilState.Supply => "supply",
        OilState.Between => "supply and sump",
        OilState.Trapped => "neither: trapped",
        _ => "sump",
    };
}
