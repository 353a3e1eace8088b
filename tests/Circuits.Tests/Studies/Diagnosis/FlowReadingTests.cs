using Circuits.Model;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Pressures;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Studies.Diagnosis;

/// <summary>Readings that name their condition, held to the steady pressures that the pressure table gives for the same assembly.</summary>
public class FlowReadingTests
{
    private static readonly DemoUnit Demo = new("weir/weir.yaml");
    private static readonly EffectSolver Solver = new(Demo.Judge, Assembly.DefaultOf(Demo.Unit));
    private static readonly EvidenceReader Reader = new(Demo.Judge);

    private static DiagnosisReport Ask(params ReadOnlySpan<Evidence> told) =>
        DiagnosisStudy.Run(Solver, [.. told], new DiagnosisOptions { Pairs = false }, TestContext.Current.CancellationToken);

    private static double Steady(Assembly assembly, string tap, string gear, OperatingPoint point)
    {
        var unit = assembly.Unit;
        var at = Enumerable.Range(0, unit.Taps.Length).First(i => unit.Taps[i].Name == tap);
        return PressureStudy.Run(assembly, [point], [gear]).Points[0].Gears.Single().Taps[at]!.Value;
    }

    // A leaking seal at the slowest speed: what is read is what the pressure table says of it, and the candidate lets expect just that.
    [Fact]
    public void What_a_candidate_makes_a_gauge_read_is_what_the_pressure_table_says()
    {
        var point = PressureStudy.PointsOf(Demo.Unit)[0];
        var seal = Solver.Faults.First(fault => fault.Kind == FaultKind.SealLeaking && fault.Element == "forward");
        var (right, leaking) = (Steady(Solver.Assembly, "forward", "3", point), Steady(seal.In(Solver.Assembly), "forward", "3", point));
        Assert.True(Math.Abs(right - leaking) > 30, $"the leak changes the reading: {right:0} and {leaking:0} kPa");
        var reading = Reader.Reading(FormattableString.Invariant($"forward@3,{point.Name}={leaking:0.###}kPa")).Evidence!;
        var report = Ask(reading, Reader.Complaint("slips in 3").Evidence!);
        Assert.True(report.Flowing);
        var found = report.Explaining.SelectMany(known => known.Members).First(member => member.Faults[0] == seal);
        Assert.Equal(0, found.FromReadings(report.Evidence)!.Value, 2);
    }

    [Fact]
    public void What_the_sound_unit_reads_at_idle_is_nothing_to_explain()
    {
        foreach (var point in PressureStudy.PointsOf(Demo.Unit))
        {
            var right = Steady(Solver.Assembly, "line", "2", point);
            Assert.True(Ask(Reader.Reading(FormattableString.Invariant($"line@2,{point.Name}={right:0.###}kPa")).Evidence!).SoundExplains);
        }
    }

    [Theory]
    [InlineData("line@2,900 rpm,40 degC=300kPa", 900.0, 40.0)]
    [InlineData("line@2,40degC=300kPa", null, 40.0)]
    [InlineData("line@2,1200rpm=300kPa", 1200.0, null)]
    public void A_condition_is_a_speed_a_temperature_or_both(string text, double? turns, double? celsius)
    {
        var usual = PressureStudy.PointsOf(Demo.Unit)[0];
        var condition = Assert.IsType<Evidence.Reading>(Reader.Reading(text).Evidence).Condition!;
        Assert.Equal(turns ?? usual.RevolutionsPerMinute, condition.RevolutionsPerMinute, 6);
        Assert.Equal(celsius ?? usual.Celsius, condition.Celsius, 6);
    }

    [Theory]
    [InlineData("line@2,idel=300kPa", "'idel' is no condition")]
    [InlineData("line@2,900rpm,1000rpm=300kPa", "'1000rpm' is no condition")]
    [InlineData("line@2,900degC=300kPa", "'900degC' is no condition")]
    [InlineData("line@2,5mm=300kPa", "'5mm' is no condition")]
    public void What_is_no_condition_is_named(string text, string expected) =>
        Assert.Contains(expected, Reader.Reading(text).Problem!, StringComparison.Ordinal);

    // Read slow and read fast is no contradiction; read twice at one condition is.
    [Fact]
    public void Readings_contradict_only_under_one_condition()
    {
        Assert.NotEmpty(Ask(Reader.Reading("line@2,idle=300kPa").Evidence!, Reader.Reading("line@2,idle=600kPa").Evidence!).Contradictions);
        Assert.Empty(Ask(Reader.Reading("line@2,idle=300kPa").Evidence!, Reader.Reading("line@2,road=600kPa").Evidence!).Contradictions);
    }
}
