using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>A small circuit written in the test itself, read and judged.</summary>
internal sealed class CircuitCase
{
    private readonly UnitJudge judge;

    private CircuitCase(Unit unit, JudgeMode mode)
    {
        Unit = unit;
        judge = new UnitJudge(unit, mode);
    }

    public Unit Unit { get; }

    public UnitJudge Judge => judge;

    /// <summary>Reads a unit; <c>format</c>, <c>unit</c> and <c>data</c> are put before the text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="mode">What verdicts rest on; by the static answer unless said.</param>
    public static CircuitCase Of(string text, JudgeMode mode = JudgeMode.Quick)
    {
        var read = CircuitReader.ReadText($"format: 1\nunit: Case\ndata: invented\n{text}", "case.yaml");
        Assert.True(read.Unit is not null, string.Join('\n', read.Findings.Select(finding => $"{finding.Place} {finding.Words()}")));
        return new CircuitCase(read.Unit, mode);
    }

    /// <summary>A casting <c>body</c> that opens on no joint, with these passages, written at column 0 below them, and one gear <c>G</c>.</summary>
    /// <param name="passages">Names, parted by spaces.</param>
    /// <param name="elements">Elements of the casting, each line a key of it.</param>
    /// <param name="gear">What the gear sets.</param>
    /// <param name="whole">Keys of the whole unit.</param>
    public static CircuitCase Body(string passages, string elements, string gear, string whole = "")
    {
        var names = string.Join(", ", passages.Split(' ').Select(name => $"{name}: {{}}"));
        var lines = string.Join('\n', elements.Split('\n').Select(line => "    " + line));
        return Of($"{whole}\nparts:\n  body:\n    kind: casting\n    passages: {{{names}}}\n{lines}\ngears:\n  G: {{{gear}{(gear.Length > 0 ? ", " : "")}apply: []}}\n");
    }

    /// <summary>The assembly of the first revisions, or of the first matched set, with some parts changed: <c>body=2</c>.</summary>
    public Assembly Assembly(params string[] changes)
    {
        var choice = Model.Assembly.DefaultOf(Unit).Choice.ToDictionary();
        foreach (var change in changes.Select(change => change.Split('='))) choice[change[0]] = change[1];
        return Model.Assembly.Of(Unit, [.. Unit.Parts.Select(part => part.FindRevision(choice[part.Name])!)]);
    }

    public AssemblyReport Report(params string[] changes) => judge.Report(Assembly(changes));

    public GearReport Gear(string gear = "G", params string[] changes) => Report(changes).Gears.Single(report => report.Gear == gear);

    /// <summary>A passage's pressure, kPa; of <c>body</c> when no part is named.</summary>
    public double Pressure(string passage, string gear = "G", params string[] changes) =>
        Gear(gear, changes).Pressures.Single(pressure => pressure.Passage == (passage.Contains('.') ? passage : $"body.{passage}")).Kilopascals;

    /// <summary>Where an element stands.</summary>
    public string Position(string element, string gear = "G", params string[] changes) =>
        Gear(gear, changes).Positions.Single(position => position.Element == element).Position.Words();

    /// <summary>The rules found, once each.</summary>
    public IReadOnlyList<string> Rules(params string[] changes) => [.. Report(changes).Findings.Select(finding => finding.Rule).Distinct()];

    /// <summary>Whether two pressures are the same to a part in a million, or to a thousandth of a kilopascal.</summary>
    public static void Near(double expected, double actual) =>
        Assert.True(Math.Abs(expected - actual) <= Math.Max(1e-3, 1e-6 * Math.Abs(expected)), $"expected {expected}, is {actual}");
}
