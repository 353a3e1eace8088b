using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Judging;

/// <summary>Where an element that moves stands.</summary>
public abstract record Stand : IWorded
{
    private Stand()
    {
    }

    /// <inheritdoc/>
    public abstract IEnumerable<string> About { get; }

    /// <summary>Whether it makes no difference to the oil which of the two it is: a spool that sticks where it stands, a pressure within what is told.</summary>
    /// <param name="other">The other, or null for none.</param>
    public virtual bool IsLike(Stand? other) => this == other;

    /// <summary>A spool.</summary>
    /// <param name="Moved">Whether it has moved; where it sticks, whether it sticks there.</param>
    /// <param name="Stuck">Where it has stuck, or null.</param>
    public sealed record Spool(bool Moved, StuckAt? Stuck) : Stand
    {
        /// <inheritdoc/>
        public override IEnumerable<string> About => [Stuck?.ToString() ?? (Moved ? nameof(StuckAt.Moved) : nameof(StuckAt.Rest))];

        /// <inheritdoc/>
        public override bool IsLike(Stand? other) => other is Spool spool && At == spool.At;

        private StuckAt At => Stuck ?? (Moved ? StuckAt.Moved : StuckAt.Rest);
    }

    /// <summary>A ball on a seat.</summary>
    /// <param name="Seat">The seat: <c>plate@11</c>.</param>
    public sealed record OnSeat(string Seat) : Stand
    {
        /// <inheritdoc/>
        public override IEnumerable<string> About => [Seat];
    }

    /// <summary>A regulator that holds.</summary>
    /// <param name="Set">What it holds.</param>
    public sealed record Holds(Pressure Set) : Stand
    {
        /// <inheritdoc/>
        public override IEnumerable<string> About => [nameof(Holds)];

        /// <summary>Pressures that are told alike are alike.</summary>
        /// <param name="other">The other.</param>
        public bool Equals(Holds? other) => other is not null && Set.Quantity.LooksLike(other.Set.Quantity);

        /// <inheritdoc/>
        public override int GetHashCode() => nameof(Holds).GetHashCode(StringComparison.Ordinal);
    }

    /// <summary>A regulator that has stuck.</summary>
    /// <param name="How">How.</param>
    public sealed record StuckRegulator(RegulatorStuck How) : Stand
    {
        /// <inheritdoc/>
        public override IEnumerable<string> About => [How.ToString()];
    }

    /// <summary>A screen's bypass that has stuck.</summary>
    /// <param name="How">How.</param>
    public sealed record StuckBypass(BypassStuck How) : Stand
    {
        /// <inheritdoc/>
        public override IEnumerable<string> About => [How.ToString()];
    }

    /// <summary>All else.</summary>
    /// <param name="Kind">Which.</param>
    public sealed record Simple(StandKind Kind) : Stand
    {
        /// <inheritdoc/>
        public override IEnumerable<string> About => [Kind.ToString()];
    }
}

/// <summary>Where things stand that there is no more to say of.</summary>
public enum StandKind
{
    /// <summary>A ball off its seats.</summary>
    Open,

    /// <summary>A ball that has nothing to close.</summary>
    SealsNothing,

    /// <summary>A regulator or solenoid that drains its outlet.</summary>
    Drains,

    /// <summary>A relief that is closed.</summary>
    Closed,

    /// <summary>A regulator that gives all that it gets.</summary>
    OpenToSupply,

    /// <summary>A solenoid that feeds its outlet.</summary>
    Feeds,

    /// <summary>A screen whose bypass is shut.</summary>
    BypassShut,

    /// <summary>A screen whose bypass is open.</summary>
    BypassOpen,

    /// <summary>A screen that has no bypass.</summary>
    WithoutBypass,

    /// <summary>A screen whose mesh is torn or left out.</summary>
    WithoutMesh,
}
