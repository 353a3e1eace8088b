using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>A valve that holds a pressure.</summary>
/// <param name="Name">Its name within the part.</param>
/// <param name="Spring">What its spring alone sets; the default is 0 for a reducing regulator, none for a spilling one.</param>
/// <param name="SetBy">Pressures that add to the spring.</param>
/// <param name="PortArea">Its port's full area, or null for the default.</param>
/// <param name="Place">Where it is written.</param>
public abstract record Regulator(
    string Name, Pressure? Spring, ImmutableArray<RegulatorSignal> SetBy, Area? PortArea, Place Place)
{
    /// <summary>Its spool, where it was measured.</summary>
    public RegulatorSpool? Spool { get; init; }

    /// <summary>How it has stuck, or null while it regulates.</summary>
    public RegulatorStuck? Stuck { get; init; }

    /// <summary>A regulator that holds a passage by spilling what is too much: the line regulator, a relief valve.</summary>
    /// <param name="Holds">The passage that it holds.</param>
    /// <param name="SpillsTo">Where it spills, first outlet first.</param>
    /// <param name="Name">Its name within the part.</param>
    /// <param name="Spring">What its spring alone sets.</param>
    /// <param name="SetBy">Boost pressures.</param>
    /// <param name="PortArea">Its port's full area.</param>
    /// <param name="Place">Where it is written.</param>
    public sealed record Spilling(
        string Name, PassageUse Holds, ImmutableArray<PassageUse> SpillsTo, Pressure? Spring,
        ImmutableArray<RegulatorSignal> SetBy, Area? PortArea, Place Place)
        : Regulator(Name, Spring, SetBy, PortArea, Place);

    /// <summary>A regulator that gives a lower pressure: min(supply, ratio x signal + spring), else opens its outlet to <c>to</c>.</summary>
    /// <param name="From">The passage that feeds it.</param>
    /// <param name="Out">The passage that it feeds.</param>
    /// <param name="To">Where the outlet drains when the pressure is too high.</param>
    /// <param name="Name">Its name within the part.</param>
    /// <param name="Spring">What its spring alone sets.</param>
    /// <param name="SetBy">Signal pressures.</param>
    /// <param name="PortArea">Its port's full area.</param>
    /// <param name="Place">Where it is written.</param>
    public sealed record Reducing(
        string Name, PassageUse From, PassageUse Out, PassageUse To, Pressure? Spring,
        ImmutableArray<RegulatorSignal> SetBy, Area? PortArea, Place Place)
        : Regulator(Name, Spring, SetBy, PortArea, Place);
}

/// <summary>A pressure that sets a regulator.</summary>
/// <param name="From">The passage that it comes from.</param>
/// <param name="Ratio">Kilopascals of set pressure per kilopascal of signal; the default is 1. May be negative.</param>
/// <param name="Place">Where it is written.</param>
public readonly record struct RegulatorSignal(PassageUse From, double Ratio, Place Place);

/// <summary>A regulator's spool as it was measured: what its droop follows from.</summary>
/// <param name="Land">Area on which the regulated pressure acts against the spring.</param>
/// <param name="Rate">Spring rate.</param>
/// <param name="Travel">From a port's edge to fully open.</param>
/// <param name="Overlap">Travel between shutting one port and opening the other, each way; less than nothing for an underlap.</param>
public sealed record RegulatorSpool(Area Land, SpringRate Rate, Length Travel, Length Overlap);

/// <summary>How a regulator has stuck.</summary>
public enum RegulatorStuck
{
    /// <summary>Fully open: a reducing one to its supply, one that holds a passage to where it spills.</summary>
    Open,

    /// <summary>Shut: oil passes no port of it.</summary>
    Shut,

    /// <summary>A reducing one whose outlet is open to its drain.</summary>
    Drained,
}

public sealed partial record Revision
{
    /// <summary>Regulators.</summary>
    public ImmutableArray<Regulator> Regulators { get; init; } = [];
}
