using Circuits.Judging;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Studies.Matrix;

/// <summary>Judges the assemblies of a matrix one by one. Not for use by several threads at once.</summary>
internal sealed class MatrixJudge(MatrixSpace space)
{
    private readonly UnitJudge judge = new(space.Unit);

    public MatrixEntry Judge(long number)
    {
        var assembly = space.At(number);
        var report = judge.Report(assembly);
        return new MatrixEntry(
            number, AssemblyBehaviour.Of([.. space.Gears.Select(gear => GearBehaviour.Of(report.Gears[gear]))]),
            PlanFingerprint.Of(Plan.Of(NetworkBuilder.Build(assembly))));
    }
}
