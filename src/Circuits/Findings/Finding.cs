using System.Collections.Immutable;

namespace Circuits.Findings;

/// <summary>How grave a finding is. Only <see cref="Error"/> turns the exit code to 1.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing is wrong.</summary>
    Note,

    /// <summary>May be wrong, or limits what the answer is worth.</summary>
    Warning,

    /// <summary>The parts, or the file, are wrong.</summary>
    Error,
}

/// <summary>A second place that a finding speaks of.</summary>
/// <param name="Place">Where.</param>
/// <param name="Message">What stands there.</param>
public sealed record RelatedPlace(Place Place, Phrase Message)
{
    /// <summary>A second place that a finding speaks of.</summary>
    /// <param name="place">Where.</param>
    /// <param name="message">What stands there.</param>
    public RelatedPlace(Place place, PhraseBuilder message)
        : this(place, message.ToPhrase())
    {
    }
}

/// <summary>One thing found, in a file or in an assembly. Every output format is a rendering of it.</summary>
/// <param name="Rule">The stable rule name, in plain words.</param>
/// <param name="Severity">How grave it is.</param>
/// <param name="Message">One terse sentence that names the element, as data.</param>
/// <param name="Place">The most specific place to look at or edit.</param>
public sealed record Finding(string Rule, Severity Severity, Phrase Message, Place Place)
{
    /// <summary>The gear that it was found in, or null when it does not belong to one gear.</summary>
    public string? Gear { get; init; }

    /// <summary>The assembly that it was found in, part to revision, or empty when it belongs to the file alone.</summary>
    public ImmutableArray<KeyValuePair<string, string>> Assembly { get; init; } = [];

    /// <summary>The fact that it tells, where the report has it as data too: what is felt, say; else null.</summary>
    public IWorded? Tells { get; init; }

    /// <summary>What to do about it, or null.</summary>
    public string? Help { get; init; }

    /// <summary>Other places that explain it.</summary>
    public ImmutableArray<RelatedPlace> Related { get; init; } = [];
}
