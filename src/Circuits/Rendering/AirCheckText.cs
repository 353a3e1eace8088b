using System.Collections.Immutable;
using System.Globalization;
using Circuits.Model;
using Circuits.Studies.AirCheck;

namespace Circuits.Rendering;

/// <summary>A plan to check with air, as a sheet for the bench: it is printed, ticked and kept with the job.</summary>
public static class AirCheckText
{
    private const string Box = "[ ]";

    /// <summary>Faults that a sign names; the rest is counted.</summary>
    private const int Named = 3;

    /// <summary>Signs that a connection lists; the rest is counted.</summary>
    private const int Listed = 6;

    /// <summary>A spring that stands against more than this, kPa, is not spoken of: no shop's air is as strong. Judgement, no source.</summary>
    private const double StrongestAir = 1200;

    /// <summary>The sheet; every line ends with a newline.</summary>
    /// <param name="report">The plan.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(AirReport report, TextOptions options)
    {
        var page = new Page(options);
        var unit = report.Assembly.Unit;
        page.Line("AIR CHECK", Page.Strong);
        GearsText.Header(page, report.Assembly, []);
        page.Item("lever   ", report.Lever is { } lever ? $"in {lever}" : "none", indent: 0);
        page.Item("shows   ", Reach(report), indent: 0);
        page.Blank();
        page.Blanks(("job no.", 14), ("date", 12), ("by", 14), ("air", 8));
        page.Heading("Before");
        foreach (var step in Before(report)) page.Item(Box, step);
        page.Heading("Connections");
        if (report.Connections.IsEmpty) page.Line(Nothing(report), indent: 2);
        for (var i = 0; i < report.Connections.Length; i++) Connection(page, report.Connections[i], i + 1, unit.Clutches);
        if (report.Others.Any(other => other.Adds > 0))
        {
            page.Blank();
            page.Line(string.Create(CultureInfo.InvariantCulture, $"Further connections would show more: --most {2 * report.Connections.Length}"), Page.Faint);
        }

        Blind(page, report);
        PageEnding.Assumptions(page, report.Assumptions);
        PageEnding.Cautions(page, Cautions.ForAir);
        return page.ToString();
    }

    /// <summary>Where a connection is made, and what is covered.</summary>
    internal static string Of(AirPort port) =>
        port.Locations.Length < 2 ? AirWords.Of(port) : $"{AirWords.Of(port)}; cover {string.Join(", ", port.Locations.Skip(1))}";

    /// <summary>How far the unit is taken apart for it.</summary>
    internal static string Setting(AirPort port) => port.Kind == AirPortKind.Face ? $"joint {port.Joint} open, on the face of {port.Passage.Part}" : "unit whole";

    private static string Reach(AirReport report) => string.Create(
        CultureInfo.InvariantCulture,
        $"{report.Faults.Length - report.Blind.Length} of {Words.Count(report.Faults.Length, "fault")} that this assembly may have; by their weight {Percent(report.Connections.IsEmpty ? 0 : report.Connections[^1].Share)}");

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0} %");

    private static IEnumerable<string> Before(AirReport report)
    {
        yield return "pump not turning, sump open, solenoids unplugged" + (report.Lever is { } lever ? $", lever in {lever}" : "");
        if (report.Connections.Any(connection => connection.Port.Kind == AirPortKind.Face))
            yield return "where a joint is open: its sheets and loose balls off, the passage's other openings covered";
        yield return "air dry, and as strong as the service manual says";
    }

    private static string Nothing(AirReport report) => report.Faults.IsEmpty ? "The unit has nothing that could be wrong."
        : report.Others.IsEmpty ? "There is no gauge port, no clutch feed and no face with a clutch behind it: nowhere to let air in."
        : "No connection shows any fault: air says nothing about this assembly.";

    private static void Connection(Page page, AirConnection connection, int number, ImmutableArray<Clutch> clutches)
    {
        page.Blank();
        page.Item(string.Create(CultureInfo.InvariantCulture, $"{number,2}."), 0, Page.Strong, (Of(connection.Port), Page.Strong));
        page.Line(string.Create(
            CultureInfo.InvariantCulture,
            $"{Setting(connection.Port)}; {Words.Count(connection.Adds, "fault")} not shown before, {Percent(connection.Share)} so far"), Page.Faint, indent: 4);
        var right = connection.Right;
        if (!right.Settled)
        {
            page.Item(Box, "valves or balls flutter: what moves cannot be said", indent: 4);
            return;
        }

        var moving = clutches.Where(clutch => right.MoveOf(clutch.Name) == AirMove.Moves).Select(clutch => clutch.Name).ToList();
        var doubtful = clutches.Where(clutch => right.MoveOf(clutch.Name) == AirMove.May).Select(clutch => clutch.Name).ToList();
        foreach (var clutch in moving) page.Item(Box, $"{clutch} moves, with a dull thud", indent: 4);
        if (doubtful.Count > 0) page.Item(" - ", $"may move or not: {string.Join(", ", doubtful)}", indent: 4);
        if (clutches.Length > 0) page.Item(Box, moving.Count + doubtful.Count > 0 ? "no other clutch moves" : "no clutch moves", indent: 4);
        var heard = right.Hisses.Where(hiss => hiss.Heard).ToList();
        if (heard.Count == 0)
        {
            page.Item(Box, "no hiss", indent: 4);
        }
        else
        {
            foreach (var hiss in heard) page.Item(Box, $"hiss, as it should: {hiss.At}", indent: 4);
            page.Item(Box, "no hiss elsewhere", indent: 4);
        }

        if (right is { GivesWay: { } what, HoldsBelow: <= StrongestAir })
            page.Item(" - ", $"this holds while the air is weaker than {Measures.Pressure(right.HoldsBelow, page.Options.Units)}: then {what} leaves its rest", indent: 4);
        Meanings(page, connection);
    }

    private static void Meanings(Page page, AirConnection connection)
    {
        if (connection.Meanings.IsEmpty) return;
        page.Line("otherwise:", indent: 4);
        foreach (var meaning in connection.Meanings.Take(Listed))
        {
            var names = string.Join("; ", meaning.Faults.Take(Named).Select(fault => page.Words(fault.Name)));
            var more = meaning.Faults.Length > Named ? $"; {meaning.Faults.Length - Named} more" : "";
            page.Item(Box, $"{AirSignWords.Of(meaning.Sign)}: {names}{more}", indent: 6);
        }

        if (connection.Meanings.Length > Listed)
            page.Line($"and {Words.Count(connection.Meanings.Length - Listed, "rarer sign")}; --format json has all", Page.Faint, indent: 6);
    }

    private static void Blind(Page page, AirReport report)
    {
        page.Heading("What these connections cannot see");
        page.Line("Air proves seals and passages, not what needs oil, current or time to show. Not seen, of all faults of the kind:", indent: 2);
        foreach (var kind in report.Faults.GroupBy(fault => fault.Kind))
        {
            var blind = report.Blind.Where(fault => fault.Kind == kind.Key).ToList();
            if (blind.Count == 0) continue;
            var names = blind.Count == kind.Count() ? "" : ": " + string.Join(", ", blind.Take(Named).Select(fault => fault.Element)) + (blind.Count > Named ? ", ..." : "");
            page.Item("-", string.Create(CultureInfo.InvariantCulture, $"{FaultKinds.Of(kind.Key).Word}: {blind.Count} of {kind.Count()}{names}"));
        }

        if (report.Blind.IsEmpty) page.Item("-", "no fault of the library is hidden from them");
    }
}
