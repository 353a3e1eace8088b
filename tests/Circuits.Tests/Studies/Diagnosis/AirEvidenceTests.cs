using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Diagnosis;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Studies.Diagnosis;

/// <summary>What air at the bench showed, as evidence; and what words that make no sense get.</summary>
public class AirEvidenceTests
{
    private static readonly DemoUnit Demo = new("rill/rill.yaml");
    private static readonly EffectSolver Solver = new(Demo.Judge, Assembly.DefaultOf(Demo.Unit));

    private static ImmutableArray<Evidence> Told(AirReader reader, params ReadOnlySpan<string> items)
    {
        var told = ImmutableArray.CreateBuilder<Evidence>();
        foreach (var item in items)
            told.AddRange(reader.Read(item).Select(read => read.Evidence ?? throw new InvalidOperationException($"{read.Problem} {read.Help}")));
        return told.ToImmutable();
    }

    private static DiagnosisReport Ask(ImmutableArray<Evidence> told) =>
        DiagnosisStudy.Run(Solver, told, new DiagnosisOptions { Pairs = false }, TestContext.Current.CancellationToken);

    /// <summary>What the sheet would have ticked at every port of an assembly, as words that are read back.</summary>
    private static string[] Ticked(AirBench bench, Assembly assembly) =>
        [.. bench.Ports.Select((port, i) => $"{port.Name}={AirWords.Between(bench.Right[i], bench.Test(assembly)[i]).Words()}").Where(words => !words.Contains("flutter", StringComparison.Ordinal))];

    // Injected one by one, every port ticked in the sheet's words and nothing else told: the fault explains it, and whatever else explains it
    // ticks the sheet the same way.
    [Fact]
    public void Every_fault_that_air_shows_is_found_by_the_ticked_sheet_alone()
    {
        var bench = new AirBench(Solver.Assembly);
        var shown = 0;
        foreach (var fault in Solver.Faults)
        {
            var ticked = Ticked(bench, fault.In(Solver.Assembly));
            var reader = new AirReader(Solver.Assembly);
            var told = Told(reader, ticked);
            if (ticked.All(words => words.EndsWith(AirWords.AsItShould, StringComparison.Ordinal)))
            {
                Assert.True(Ask(told).SoundExplains);
                continue;
            }

            shown++;
            var report = Ask(told);
            var found = report.Explaining.SelectMany(known => known.Members).ToList();
            Assert.True(found.Exists(member => member.Faults[0].Code == fault.Code), $"{fault.Code} is not among {string.Join(", ", found.Select(member => member.Name))}");
        }

        Assert.True(shown >= 20, $"{shown} faults show");
    }

    [Fact]
    public void A_healthy_port_rules_out_what_would_show_there()
    {
        var reader = new AirReader(Solver.Assembly);
        var complaint = new EvidenceReader(Demo.Judge).Complaint("no reverse").Evidence!;
        string[] Codes(params ReadOnlySpan<string> air) =>
            [.. Ask([complaint, .. Told(reader, air)]).Explaining.SelectMany(known => known.Members).Select(member => member.Faults[0].Code)];
        var before = Codes();
        var after = Codes("high=as it should");
        Assert.Contains("hole-plugged plate@11", before);
        Assert.DoesNotContain("hole-plugged plate@11", after);
        Assert.Contains("hole-plugged plate@8", after);
        Assert.Equal(["seal-leaking high"], Codes("high=hiss: clutch high"));
    }

    [Fact]
    public void What_air_would_show_besides_and_instead_is_told()
    {
        var reader = new AirReader(Solver.Assembly);
        var complaint = new EvidenceReader(Demo.Judge).Complaint("no reverse").Evidence!;
        var report = Ask([complaint, .. Told(reader, "high=hiss: body.reverse by the manual valve")]);
        var worn = report.Explaining.SelectMany(known => known.Members).First(member => member.Faults[0].Code == "passages-leak housing.high~housing.second" || member.Faults[0].Code == "ball-left-out body.two-way");
        Assert.Contains("high=hiss: body.reverse by the manual valve", CandidateWords.Explains(worn, report));
        report = Ask([.. Told(reader, "high=high does not move", "forward=hiss: clutch forward")]);
        var near = report.Near.First(known => known.First.Faults[0].Code == "seal-leaking forward").First;
        Assert.Contains("high=high does not move: it lets expect as it should", CandidateWords.Contradicts(near, report).Select(words => words.Words()));
        Assert.Contains(report.LookAlikes, sentence => sentence.Words().StartsWith("A piston that sticks", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("high=high moves", "high=high does not move")]
    [InlineData("high=high moves", "gauge port high=no clutch moves")]
    [InlineData("high=as it should", "high=high does not move")]
    [InlineData("high=hiss: clutch high", "high=no hiss: clutch high")]
    [InlineData("high=hiss: clutch high", "high=no hiss elsewhere")]
    [InlineData("high=hiss: clutch high", "high=no hiss")]
    [InlineData("high=forward moves", "high=no other clutch moves")]
    public void Results_at_one_port_that_cannot_both_be_are_named(string one, string other)
    {
        var reader = new AirReader(Solver.Assembly);
        var pair = Assert.Single(Ask(Told(reader, one, other)).Contradictions);
        Assert.Equal((one, other), (pair.First.Text, pair.Second.Text));

        // At another port it is no contradiction.
        Assert.Empty(Ask(Told(reader, one, other.Replace("gauge port high", "forward", StringComparison.Ordinal).Replace("high=", "housing.high@face=", StringComparison.Ordinal))).Contradictions);
    }

    // The sheet's own words, and the words that people write.
    [Theory]
    [InlineData("high=moves", AirNotice.Moves, "high")]
    [InlineData("high=high moves, with a dull thud", AirNotice.Moves, "high")]
    [InlineData("gauge port high=High doesn't move", AirNotice.Stays, "high")]
    [InlineData("high=moves forward", AirNotice.Moves, "forward")]
    [InlineData("high=forward stays", AirNotice.Stays, "forward")]
    [InlineData("high=no clutch moves", AirNotice.NoneMoves, null)]
    [InlineData("high=no other clutch moves", AirNotice.NoOtherMoves, null)]
    [InlineData("high=hiss, as it should: body.second by the manual valve", AirNotice.Hisses, "body.second by the manual valve")]
    [InlineData("high=Hiss at clutch high", AirNotice.Hisses, "clutch high")]
    [InlineData("high=no hiss: clutch high", AirNotice.Silent, "clutch high")]
    [InlineData("high=no hiss", AirNotice.NoneHisses, null)]
    [InlineData("high=no hiss elsewhere", AirNotice.NoOtherHisses, null)]
    [InlineData("high=right", AirNotice.AsItShould, null)]
    [InlineData("housing.high at face=no hiss", AirNotice.NoneHisses, null)]
    [InlineData("housing.high at face 13=moves", AirNotice.Moves, "high")]
    public void Words_are_understood(string text, AirNotice notice, string? at)
    {
        var air = Assert.IsType<AirEvidence>(Assert.Single(Told(new AirReader(Solver.Assembly), text)));
        Assert.Equal((notice, at), (air.Notice, air.At));
    }

    [Theory]
    [InlineData("high", "is not understood")]
    [InlineData("high=", "does not say what was noticed")]
    [InlineData("hihg=moves", "Did you mean high?")]
    [InlineData("high=forwrd moves", "Did you mean forward?")]
    [InlineData("high=hiss: clutch hihg", "Did you mean clutch high?")]
    [InlineData("high=hiss", "does not say where it hisses")]
    [InlineData("line=moves", "does not say which clutch")]
    [InlineData("high,Q=high moves", "there is no lever position 'Q'")]
    [InlineData("high=whistles", "'whistles' is not understood")]
    public void Words_that_make_no_sense_get_an_answer(string text, string expected)
    {
        var read = Assert.Single(new AirReader(Solver.Assembly).Read(text));
        Assert.Null(read.Evidence);
        Assert.Contains(expected, $"{read.Problem} {read.Help}", StringComparison.Ordinal);
    }

    [Fact]
    public void Another_position_of_the_lever_is_another_check()
    {
        var reader = new AirReader(Solver.Assembly);
        var told = Told(reader, "forward=forward moves", "forward,1=forward moves").Cast<AirEvidence>().ToList();
        Assert.NotSame(told[0].Predictions, told[1].Predictions);
        Assert.Equal("1", told[1].Predictions.Lever);
        Assert.Empty(Ask(Told(reader, "forward=forward moves", "forward,1=forward does not move")).Contradictions);
    }
}
