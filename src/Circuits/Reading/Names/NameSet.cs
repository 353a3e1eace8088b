using System.Collections.Immutable;

namespace Circuits.Reading;

/// <summary>The names of one kind of thing.</summary>
/// <param name="all">The names, in the order of the file.</param>
/// <param name="complete">Whether these are all.</param>
internal sealed class NameSet(ImmutableArray<string> all, bool complete)
{
    private readonly HashSet<string> table = new(all, StringComparer.Ordinal);

    /// <summary>The names, in the order of the file.</summary>
    public ImmutableArray<string> All { get; } = all;

    /// <summary>
    /// Whether these are all. They are not when their section could not be read, or may hide under a misspelt key; then a
    /// name that is not among them is no fault of its own.
    /// </summary>
    public bool Complete { get; } = complete;

    /// <summary>Whether the name is one of them.</summary>
    public bool Has(string name) => table.Contains(name);

    /// <summary>Whether the name may be used.</summary>
    public bool Admits(string name) => !Complete || Has(name);
}
