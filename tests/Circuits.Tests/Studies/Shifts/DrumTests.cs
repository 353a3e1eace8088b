using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Shifts;
using Xunit;

namespace Circuits.Tests.Studies.Shifts;

/// <summary>Oil that turns with a clutch.</summary>
public sealed class DrumTests
{
    private static readonly string Swap = File.ReadAllText(Path.Combine(Repository.Root, "tests/Circuits.Tests/Cli/units/swap.yaml"));

    /// <summary>
    /// Computed, checked by quadrature: 850 kg/m3, 4000 rpm, piston 65/40 mm, oil from 20 mm: 1545.08 N. It goes with the square of the speed and with density.
    /// </summary>
    [Theory]
    [InlineData("input", 1)]
    [InlineData("case", 0)]
    public void What_a_drum_adds_to_the_clamping_force(string member, double share)
    {
        var (plain, turning) = (Shift(Swap, "1-2"), Shift(With("high", member), "1-2"));
        var difference = Clutch(turning, "high").CapacityAfter - Clutch(plain, "high").CapacityAfter;
        var clutch = CircuitReader.ReadText(Swap, "swap.yaml").Unit!.Clutches.First(clutch => clutch.Name == "high");
        var density = Circuits.Solving.Oil.OilOfUnit.Read(CircuitReader.ReadText(Swap, "swap.yaml").Unit!, []).At(Conditions(Swap).Celsius).Density;
        var speed = Conditions(Swap).DrivingSpeed;
        var force = share * 1545.0815 * density / 850 * (speed / 4000) * (speed / 4000);
        Assert.Equal(force * clutch.Plates!.Value * clutch.Friction!.Value * clutch.Radius!.Value.Millimetres / 1e3, difference, Math.Max(1e-6, 0.02 * force));
    }

    [Fact]
    public void An_off_going_clutch_lets_go_later_with_its_oil_turning()
    {
        var (plain, turning) = (Shift(Swap, "1-2"), Shift(With("low", "input"), "1-2"));
        Assert.True(Clutch(turning, "low").LetsGoMs > Clutch(plain, "low").LetsGoMs + 0.5);
    }

    [Fact]
    public void What_was_assumed_is_said()
    {
        var unit = CircuitReader.ReadText(With("high", "input"), "swap.yaml").Unit!;
        var report = ShiftStudy.Run(Assembly.DefaultOf(unit), null, ShiftStudy.ConditionsOf(unit), ShiftPlans.Of(unit));
        Assert.Contains(report.Assumptions, text => text.Words().StartsWith("assumed that the input turns with the pump", StringComparison.Ordinal));
        var plain = CircuitReader.ReadText(Swap, "swap.yaml").Unit!;
        Assert.DoesNotContain(ShiftStudy.Run(Assembly.DefaultOf(plain), null, ShiftStudy.ConditionsOf(plain), ShiftPlans.Of(plain)).Assumptions, text => text.Words().Contains("drum", StringComparison.Ordinal));
    }

    private static string With(string clutch, string member)
    {
        var at = Swap.IndexOf("clutches:", StringComparison.Ordinal);
        var line = Swap.IndexOf($"  {clutch}: {{", at, StringComparison.Ordinal) + $"  {clutch}: {{".Length;
        return Swap.Insert(line, $"drum: {{turns: {member}, oil: 20 mm, inner: 40 mm, outer: 65 mm}}, ");
    }

    private static ShiftConditions Conditions(string text) => ShiftStudy.ConditionsOf(CircuitReader.ReadText(text, "swap.yaml").Unit!);

    private static TimedShiftReport Shift(string text, string name)
    {
        var unit = CircuitReader.ReadText(text, "swap.yaml").Unit!;
        return Assert.Single(ShiftStudy.Time(Assembly.DefaultOf(unit), Conditions(text), [.. ShiftPlans.Of(unit).Where(plan => plan.Name == name)]).Shifts);
    }

    private static ShiftClutch Clutch(TimedShiftReport shift, string name) => shift.Clutches.Single(clutch => clutch.Clutch == name);
}
