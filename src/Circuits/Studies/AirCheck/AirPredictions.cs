using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Studies.Faults;

namespace Circuits.Studies.AirCheck;

/// <summary>What air shows of an assembly with faults, each worked out once. Not for use by several threads at once.</summary>
public sealed class AirPredictions
{
    private readonly Assembly sound;
    private readonly AirBench bench;
    private readonly Dictionary<string, ImmutableArray<AirOutcome>> whole = [];
    private readonly Dictionary<(string Faults, int Port), AirOutcome> known = [];

    /// <summary>Predictions for one assembly.</summary>
    /// <param name="sound">The assembly as it should be.</param>
    /// <param name="lever">The lever's position; neutral unless given.</param>
    public AirPredictions(Assembly sound, string? lever = null)
    {
        this.sound = sound;
        bench = new AirBench(sound, lever);
        Right = bench.Right;
    }

    /// <summary>The lever's position; null for a unit without one.</summary>
    public string? Lever => bench.Lever;

    /// <summary>Where air can be let in.</summary>
    public ImmutableArray<AirPort> Ports => bench.Ports;

    /// <summary>What should happen at each of <see cref="Ports"/>.</summary>
    public ImmutableArray<AirOutcome> Right { get; }

    /// <summary>What happens at one port.</summary>
    /// <param name="faults">What is wrong; nothing for the assembly as it should be.</param>
    /// <param name="port">The port's number.</param>
    public AirOutcome At(ImmutableArray<Fault> faults, int port)
    {
        if (faults.IsEmpty) return Right[port];
        var key = FaultSets.KeyOf(faults);
        if (whole.TryGetValue(key, out var outcomes)) return outcomes[port];
        if (!known.TryGetValue((key, port), out var outcome)) known[(key, port)] = outcome = bench.Test(sound.With(faults), Ports[port]);
        return outcome;
    }

    /// <summary>What happens at every port.</summary>
    /// <param name="faults">What is wrong; nothing for the assembly as it should be.</param>
    public ImmutableArray<AirOutcome> Everywhere(ImmutableArray<Fault> faults)
    {
        if (faults.IsEmpty) return Right;
        var key = FaultSets.KeyOf(faults);
        if (!whole.TryGetValue(key, out var outcomes)) whole[key] = outcomes = bench.Test(sound.With(faults));
        return outcomes;
    }
}
