using Circuits.Findings;

namespace Circuits.Judging;

/// <summary>Something that foreign oil moves.</summary>
public abstract record Moved
{
    private Moved()
    {
    }

    /// <summary>What it moves, and how that stands in the matched set.</summary>
    public abstract Phrase Phrase { get; }

    /// <summary>A spool that stands elsewhere than in the matched set.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Stands">Where it stands.</param>
    /// <param name="Matched">Where it stands in the matched set.</param>
    public sealed record Valve(string Name, Stand Stands, Stand Matched) : Moved
    {
        /// <inheritdoc/>
        public override Phrase Phrase => Phrase.Of($"valve {Name}: {Stands} (matched: {Matched})");
    }

    /// <summary>A clutch with another pressure than in the matched set.</summary>
    /// <param name="Name">Its name.</param>
    public sealed record Clutch(string Name) : Moved
    {
        /// <inheritdoc/>
        public override Phrase Phrase => Phrase.Of($"clutch {Name}");
    }
}
