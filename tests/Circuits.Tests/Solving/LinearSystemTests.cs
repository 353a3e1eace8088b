using Circuits.Solving;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Xunit;
using static Circuits.Tests.Laws.FlowLaw;

namespace Circuits.Tests.Solving;

/// <summary>The small dense elimination against MathNet.Numerics.</summary>
public class LinearSystemTests
{
    private static readonly Gen<(double[] A, double[] B)> Systems =
        from n in Gen.Int[1, 12]
        from a in Gen.Double[-10, 10].Array[n * n]
        from b in Gen.Double[-10, 10].Array[n]
        select (a, b);

    [Fact]
    public void Solves_what_a_general_library_solves() =>
        ForAll(Systems, system =>
        {
            var n = system.B.Length;
            var matrix = Matrix<double>.Build.Dense(n, n, (row, column) => system.A[(row * n) + column]);
            if (!(matrix.ConditionNumber() < 1e8)) return null;
            var expected = matrix.Solve(Vector<double>.Build.Dense(system.B));
            var (a, x) = (system.A.ToArray(), system.B.ToArray());
            if (!LinearSystem.Solve(a, x, n)) return "solve: called singular";
            return (expected - Vector<double>.Build.Dense(x)).L2Norm() <= 1e-6 * (1 + expected.L2Norm()) ? null : $"solve: {expected} against {string.Join(' ', x)}";
        });

    // Without exchange of rows the first divides by zero.
    [Fact]
    public void Exchanges_rows()
    {
        double[] a = [0, 2, 4, 0];
        double[] b = [6, 8];
        Assert.True(LinearSystem.Solve(a, b, 2));
        Assert.Equal([2, 3], b);
    }

    [Fact]
    public void Says_when_there_is_no_answer()
    {
        double[] a = [1, 2, 2, 4];
        double[] b = [1, 1];
        Assert.False(LinearSystem.Solve(a, b, 2));
    }
}
