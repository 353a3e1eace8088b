namespace Circuits.Studies.Matrix;

/// <summary>How long a matrix is going to take, from a few of its assemblies.</summary>
public static class MatrixEstimate
{
    /// <summary>So many are soon done.</summary>
    private const long Few = 64;

    /// <summary>Assemblies that are looked at, to see how many differ for the solver.</summary>
    private const int MostLooks = 4096;

    /// <summary>Assemblies that are judged.</summary>
    private const int MostJudged = 24;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    /// <summary>The time; none for a few assemblies. Right to within a factor of two or three.</summary>
    /// <param name="space">The assemblies.</param>
    /// <param name="range">The first that counts, and one past the last.</param>
    /// <param name="threads">How many threads can work at once.</param>
    /// <param name="clock">Tells the time.</param>
    /// <param name="interrupted">Stops the work.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static TimeSpan Of(MatrixSpace space, (long From, long To) range, int threads, TimeProvider clock, CancellationToken interrupted)
    {
        var count = range.To - range.From;
        if (count <= Few) return TimeSpan.Zero;
        var judge = new MatrixJudge(space, new MatrixMemory());
        var draws = 0UL;
        var (looks, networks) = (0, new HashSet<UInt128>());
        var looking = TimeOf(count <= MostLooks ? Range(range) : Drawn(MostLooks), number =>
        {
            networks.Add(judge.NetworkOf(number));
            looks++;
        });
        var judged = 0;
        var judging = TimeOf(Drawn(MostJudged), number =>
        {
            judge.Judge(number);
            judged++;
        });
        var different = Different(looks, networks.Count, count);
        return ((looking / looks * count) + (judging / judged * different)) / threads;

        IEnumerable<long> Drawn(int most)
        {
            for (var i = 0; i < most; i++) yield return range.From + (long)(SplitMix.Mixed(draws++) % (ulong)count);
        }

        TimeSpan TimeOf(IEnumerable<long> numbers, Action<long> work)
        {
            var start = clock.GetTimestamp();
            foreach (var number in numbers)
            {
                interrupted.ThrowIfCancellationRequested();
                work(number);
                if (clock.GetElapsedTime(start) > Patience) break;
            }

            return clock.GetElapsedTime(start);
        }
    }

    /// <summary>
    /// How many kinds there are among so many, when of so many drawn some were alike: where each of n kinds is as frequent, d draws are
    /// expected to show n (1 - exp(-d/n)) of them (the classical occupancy problem; Feller, An Introduction to Probability Theory and Its
    /// Applications, vol. 1, from memory). All, where all were drawn.
    /// </summary>
    /// <param name="drawn">How many were drawn; 1 or more.</param>
    /// <param name="seen">How many kinds they showed.</param>
    /// <param name="count">How many there are.</param>
    internal static double Different(long drawn, long seen, long count)
    {
        if (drawn >= count) return seen;
        var (low, high) = ((double)seen, (double)count);
        for (var i = 0; i < 100 && high - low > 0.5; i++)
        {
            var middle = (low + high) / 2;
            if (middle * (1 - Math.Exp(-drawn / middle)) < seen) low = middle;
            else high = middle;
        }

        return high;
    }

    private static IEnumerable<long> Range((long From, long To) range)
    {
        for (var number = range.From; number < range.To; number++) yield return number;
    }
}
