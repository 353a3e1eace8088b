using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Studies.Faults;

namespace Circuits.Studies.AirCheck;

/// <summary>Plans the air check of an assembly: every fault of the library is tried at every port.</summary>
public static class AirStudy
{
    /// <summary>The plan.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="lever">The lever's position; neutral unless given.</param>
    /// <param name="most">Most connections.</param>
    /// <param name="interrupted">Stops the work.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static AirReport Run(Assembly assembly, string? lever = null, int most = int.MaxValue, CancellationToken interrupted = default)
    {
        var bench = new AirBench(assembly, lever);
        var faults = FaultLibrary.Of(assembly);
        var right = bench.Right;
        var signs = new ImmutableArray<AirSign>[bench.Ports.Length][];
        for (var port = 0; port < signs.Length; port++) signs[port] = new ImmutableArray<AirSign>[faults.Length];
        for (var fault = 0; fault < faults.Length; fault++)
        {
            interrupted.ThrowIfCancellationRequested();
            var found = bench.Test(faults[fault].In(assembly));
            for (var port = 0; port < signs.Length; port++) signs[port][fault] = AirSign.Between(right[port], found[port]);
        }

        var seen = new bool[faults.Length];
        var connections = ImmutableArray.CreateBuilder<AirConnection>();
        var left = Enumerable.Range(0, signs.Length).ToList();
        while (connections.Count < most && Next(bench.Ports, left, signs, faults, seen) is { } next)
        {
            left.Remove(next);
            var adds = 0;
            for (var fault = 0; fault < faults.Length; fault++)
            {
                if (seen[fault] || signs[next][fault].IsEmpty) continue;
                seen[fault] = true;
                adds++;
            }

            connections.Add(Connection(bench.Ports[next], right[next], signs[next], faults, adds, ShareOf(faults, seen)));
        }

        return new AirReport(
            assembly, bench.Lever, connections.ToImmutable(),
            [.. left.Select(port => Connection(bench.Ports[port], right[port], signs[port], faults, AddsOf(signs[port], seen), ShareOf(faults, seen)))],
            faults, [.. faults.Where((_, index) => !seen[index])])
        {
            Assumptions = [.. NetworkBuilder.Build(assembly).Assumptions.Select(assumption => assumption.Text).Distinct()],
        };
    }

    /// <summary>
    /// The port that shows most weight of faults that none before shows; of equals the one that takes least work: a gauge port before a face, few
    /// openings to cover before many. Null where none shows any more.
    /// </summary>
    private static int? Next(ImmutableArray<AirPort> ports, List<int> left, ImmutableArray<AirSign>[][] signs, ImmutableArray<Fault> faults, bool[] seen)
    {
        var (best, weight, work) = ((int?)null, 0.0, 0);
        foreach (var port in left)
        {
            var gain = 0.0;
            for (var fault = 0; fault < faults.Length; fault++)
            {
                if (!seen[fault] && !signs[port][fault].IsEmpty) gain += faults[fault].Weight;
            }

            var effort = ports[port].Locations.Length;
            if (gain <= 0 || gain < weight || (gain == weight && effort >= work)) continue;
            (best, weight, work) = (port, gain, effort);
        }

        return best;
    }

    private static int AddsOf(ImmutableArray<AirSign>[] signs, bool[] seen) => signs.Where((found, fault) => !found.IsEmpty && !seen[fault]).Count();

    private static double ShareOf(ImmutableArray<Fault> faults, bool[] seen)
    {
        var all = faults.Sum(fault => fault.Weight);
        return all <= 0 ? 0 : faults.Where((_, index) => seen[index]).Sum(fault => fault.Weight) / all;
    }

    private static AirConnection Connection(
        AirPort port, AirOutcome right, ImmutableArray<AirSign>[] signs, ImmutableArray<Fault> faults, int adds, double share)
    {
        var meanings = faults.SelectMany((fault, index) => signs[index].Select(sign => (Sign: sign, Fault: fault))).GroupBy(pair => pair.Sign)
            .Select(group => new AirMeaning(group.Key, [.. group.Select(pair => pair.Fault).OrderByDescending(fault => fault.Weight)]))
            .OrderByDescending(meaning => meaning.Faults.Sum(fault => fault.Weight));
        return new AirConnection(port, right, [.. meanings], signs.Count(found => !found.IsEmpty), adds, share);
    }
}
