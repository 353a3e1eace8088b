using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Diagnosis;

/// <summary>A feeling that fits what was told, and how well.</summary>
/// <param name="Kind">The feeling.</param>
/// <param name="Instead">For a wrong gear: the gear that it must be like; null for any.</param>
/// <param name="Degree">How well it fits: 1 for the very thing, less for what a driver may call the same.</param>
public readonly record struct Fit(FeelKind Kind, string? Instead, double Degree);

/// <summary>What was told of one gear.</summary>
/// <param name="Gear">The gear's number.</param>
/// <param name="Fits">What fits it.</param>
public sealed record FeltIn(int Gear, ImmutableArray<Fit> Fits)
{
    /// <summary>How well an effect fits; 0 for not at all.</summary>
    /// <param name="effect">The gear's effect.</param>
    public double Of(GearEffect effect)
    {
        foreach (var fit in Fits)
        {
            if (fit.Kind == effect.Kind && (fit.Instead is null || fit.Instead == effect.Instead)) return fit.Degree;
        }

        return 0;
    }
}

/// <summary>Something that was observed of the unit that is to be diagnosed.</summary>
/// <param name="Text">In the words in which it was told.</param>
/// <param name="Meaning">What was understood.</param>
public abstract record Evidence(string Text, Phrase Meaning)
{
    /// <summary>The gears that it is about, by number; empty when it is about parts.</summary>
    public abstract ImmutableArray<int> Gears { get; }

    /// <summary>How well a candidate fits it: 0 contradicts, 1 is the very thing.</summary>
    /// <param name="faults">The candidate's faults; none for the assembly as it should be.</param>
    /// <param name="effects">What it does, gear by gear; only those of <see cref="Gears"/> are looked at.</param>
    public abstract double Degree(ImmutableArray<Fault> faults, IReadOnlyList<GearEffect?> effects);

    /// <summary>What the driver feels: a complaint, or that a gear is right.</summary>
    /// <param name="Text">In the words in which it was told.</param>
    /// <param name="Meaning">What was understood.</param>
    /// <param name="In">What was told, gear by gear; all of it must fit.</param>
    /// <param name="IsHealthy">Whether it says that nothing is wrong.</param>
    public sealed record Felt(string Text, Phrase Meaning, ImmutableArray<FeltIn> In, bool IsHealthy) : Evidence(Text, Meaning)
    {
        /// <inheritdoc/>
        public override ImmutableArray<int> Gears => [.. In.Select(felt => felt.Gear)];

        /// <inheritdoc/>
        public override double Degree(ImmutableArray<Fault> faults, IReadOnlyList<GearEffect?> effects) => In.Min(felt => felt.Of(effects[felt.Gear]!));
    }

    /// <summary>A gauge reading.</summary>
    /// <param name="Text">In the words in which it was told.</param>
    /// <param name="Meaning">What was understood.</param>
    /// <param name="Tap">The tap's number.</param>
    /// <param name="Gear">The gear's number.</param>
    /// <param name="Kilopascals">What was read.</param>
    public sealed record Reading(string Text, Phrase Meaning, int Tap, int Gear, double Kilopascals) : Evidence(Text, Meaning)
    {
        /// <summary>The condition that it was read under; null when none was told.</summary>
        public ReadingCondition? Condition { get; init; }

        /// <summary>What flow makes gauges read under the condition; null where static pressures have to do.</summary>
        internal FlowPredictions? Flow { get; init; }

        /// <summary>What a candidate makes the gauge read, kPa.</summary>
        /// <param name="faults">Its faults.</param>
        /// <param name="effects">What it does, gear by gear.</param>
        public double Predicted(ImmutableArray<Fault> faults, IReadOnlyList<GearEffect?> effects) => Flow?.Of(faults, this) ?? effects[Gear]!.Taps[Tap] ?? 0;

        /// <inheritdoc/>
        public override ImmutableArray<int> Gears => [Gear];

        /// <inheritdoc/>
        public override double Degree(ImmutableArray<Fault> faults, IReadOnlyList<GearEffect?> effects) => DegreeOf(Predicted(faults, effects));

        /// <summary>How well a pressure fits the reading.</summary>
        /// <param name="kilopascals">The pressure.</param>
        public double DegreeOf(double kilopascals)
        {
            var apart = Math.Abs(kilopascals - Kilopascals) / Gauge.Tolerance(kilopascals, Kilopascals);
            return apart > 1 ? 0 : Math.Exp(-2 * apart * apart);
        }
    }

    /// <summary>What was found of a part: the revisions that it may be.</summary>
    /// <param name="Text">In the words in which it was told.</param>
    /// <param name="Meaning">What was understood.</param>
    /// <param name="Part">The part.</param>
    /// <param name="Revisions">What it may be.</param>
    /// <param name="Fitted">What is fitted where no fault says otherwise.</param>
    public sealed record PartIs(string Text, Phrase Meaning, string Part, ImmutableArray<string> Revisions, string Fitted) : Evidence(Text, Meaning)
    {
        /// <inheritdoc/>
        public override ImmutableArray<int> Gears => [];

        /// <inheritdoc/>
        public override double Degree(ImmutableArray<Fault> faults, IReadOnlyList<GearEffect?> effects)
        {
            var fitted = faults.SelectMany(fault => fault.Changes).OfType<Changes.FitRevision>().FirstOrDefault(fit => fit.Part == Part)?.To.Name ?? Fitted;
            return Revisions.Contains(fitted) ? 1 : 0;
        }
    }

    /// <summary>Something that was checked and is right.</summary>
    /// <param name="Text">In the words in which it was told.</param>
    /// <param name="Meaning">What was understood.</param>
    /// <param name="Codes">The faults that it rules out.</param>
    public sealed record Cleared(string Text, Phrase Meaning, ImmutableHashSet<string> Codes) : Evidence(Text, Meaning)
    {
        /// <inheritdoc/>
        public override ImmutableArray<int> Gears => [];

        /// <inheritdoc/>
        public override double Degree(ImmutableArray<Fault> faults, IReadOnlyList<GearEffect?> effects) => faults.Any(fault => Codes.Contains(fault.Code)) ? 0 : 1;
    }
}
