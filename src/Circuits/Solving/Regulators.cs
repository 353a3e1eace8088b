using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>A regulator, by cells.</summary>
internal sealed record PlanRegulator(
    RegulatorKind Kind, int From, int Out, int To, double Spring, Signal[] SetBy, double Area);

public sealed partial class Plan
{
    internal PlanRegulator[] Regulators { get; private set; } = [];

    void IElementKinds<Network>.Regulators(Network network) => Regulators =
    [
        .. network.Regulators.Select(regulator => new PlanRegulator(
            regulator.Kind, Cell(regulator.From), Cell(regulator.Out), DrainOf(regulator), regulator.Spring, ByCell(regulator.SetBy),
            regulator.SquareMillimetres)),
    ];

    /// <summary>A drain that is open to the outlet itself lets nothing out.</summary>
    private int DrainOf(RegulatorElement regulator) => Cell(regulator.To) == Cell(regulator.Out) ? -1 : Cell(regulator.To);
}
