using Circuits.Judging;

namespace Circuits.Studies.Matrix;

/// <summary>An assembly of a matrix and what it does.</summary>
/// <param name="Number">Its number in the space.</param>
/// <param name="Behaviour">What it does in the gears that are looked at.</param>
/// <param name="Network">The same number for assemblies whose networks the solver cannot tell apart.</param>
public readonly record struct MatrixEntry(long Number, AssemblyBehaviour Behaviour, UInt128 Network);

/// <summary>Solves assemblies one after the other, in a fixed order, with as many threads as wanted.</summary>
public static class MatrixRun
{
    /// <summary>Assemblies that a thread takes at once.</summary>
    private const int Piece = 64;

    /// <summary>Judges a range of assemblies. Memory does not grow with their number.</summary>
    /// <param name="space">The assemblies.</param>
    /// <param name="range">The first, and one past the last.</param>
    /// <param name="threads">How many threads work, 1 or more. What is taken does not depend on it.</param>
    /// <param name="render">Makes, for one thread, what turns entries, in order, into what is taken.</param>
    /// <param name="take">Takes it, in order, on the caller's thread.</param>
    /// <param name="interrupted">Stops the work.</param>
    /// <exception cref="OperationCanceledException">It was stopped; what was taken before is a prefix of the whole.</exception>
    public static void Run<T>(
        MatrixSpace space, (long From, long To) range, int threads, Func<Func<IReadOnlyList<MatrixEntry>, T>> render, Action<T> take,
        CancellationToken interrupted)
        where T : class
    {
        var memory = new MatrixMemory();
        OrderedWork.Run(range.From, range.To, Piece, threads, Worker, take, interrupted);

        Func<long, long, T> Worker()
        {
            var judge = new MatrixJudge(space, memory);
            var rendered = render();
            return (from, to) =>
            {
                // Two pieces side by side differ in few parts, and hold the same gears at the same places. Every other one is gone
                // through from its end, or two threads would come to those together and share the work on each badly.
                var entries = new MatrixEntry[to - from];
                var backward = (from - range.From) / Piece % 2 == 1;
                for (var i = 0; i < entries.Length; i++)
                {
                    interrupted.ThrowIfCancellationRequested();
                    var at = backward ? entries.Length - 1 - i : i;
                    entries[at] = judge.Judge(from + at);
                }

                return rendered(entries);
            };
        }
    }
}
