namespace Circuits.Studies.Matrix;

/// <summary>Work on a range of numbers, dealt to threads in pieces; what the pieces give is taken in order, whatever the number of threads.</summary>
internal static class OrderedWork
{
    /// <summary>Pieces that may wait for an earlier one, for each thread; bounds the memory.</summary>
    private const int Ahead = 4;

    /// <summary>Runs it. Returns when all is taken.</summary>
    /// <param name="from">The first number.</param>
    /// <param name="to">One past the last number.</param>
    /// <param name="size">Numbers in a piece.</param>
    /// <param name="threads">How many threads work; with 1 it is the caller's.</param>
    /// <param name="worker">Makes what one thread works with: from the first number and one past the last of a piece to what it gives.</param>
    /// <param name="take">Takes what a piece gives, on the caller's thread.</param>
    /// <param name="interrupted">Stops the work; what was taken before is a prefix of the whole.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static void Run<T>(
        long from, long to, int size, int threads, Func<Func<long, long, T>> worker, Action<T> take, CancellationToken interrupted)
        where T : class
    {
        if (threads == 1)
        {
            var work = worker();
            for (var at = from; at < to; at += size)
            {
                interrupted.ThrowIfCancellationRequested();
                take(work(at, Math.Min(to, at + size)));
            }

            return;
        }

        new Pool<T>(from, to, size, threads, worker).Run(take, interrupted);
    }

    private sealed class Pool<T>(long from, long to, int size, int threads, Func<Func<long, long, T>> worker)
        where T : class
    {
        private readonly object gate = new();
        private readonly T?[] done = new T?[Ahead * threads];
        private readonly long pieces = (to - from + size - 1) / size;
        private long next;
        private long taken;
        private Exception? fault;
        private bool stopped;

        public void Run(Action<T> take, CancellationToken interrupted)
        {
            var crew = new Task[threads];
            for (var i = 0; i < threads; i++)
                crew[i] = Task.Factory.StartNew(Work, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);

            using var wake = interrupted.Register(() => Stop(null));
            try
            {
                while (taken < pieces) take(Await(interrupted));
            }
            finally
            {
                Stop(null);
                Task.WaitAll(crew, CancellationToken.None);
            }
        }

        private T Await(CancellationToken interrupted)
        {
            lock (gate)
            {
                var place = taken % done.Length;
                while (done[place] is null && fault is null && !stopped) Monitor.Wait(gate);
                interrupted.ThrowIfCancellationRequested();
                if (fault is not null) throw new InvalidOperationException(fault.Message, fault);
                var piece = done[place]!;
                done[place] = null;
                taken++;
                Monitor.PulseAll(gate);
                return piece;
            }
        }

        private void Work()
        {
            try
            {
                var work = worker();
                while (Deal() is >= 0 and var piece)
                {
                    var start = from + (piece * size);
                    var result = work(start, Math.Min(to, start + size));
                    lock (gate)
                    {
                        done[piece % done.Length] = result;
                        Monitor.PulseAll(gate);
                    }
                }
            }
            catch (Exception caught)
            {
                Stop(caught);
            }
        }

        private long Deal()
        {
            lock (gate)
            {
                while (!stopped && next < pieces && next >= taken + done.Length) Monitor.Wait(gate);
                return stopped || next >= pieces ? -1 : next++;
            }
        }

        private void Stop(Exception? caught)
        {
            lock (gate)
            {
                stopped = true;
                fault ??= caught;
                Monitor.PulseAll(gate);
            }
        }
    }
}
