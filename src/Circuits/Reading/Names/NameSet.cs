using System.Collections.Immutable;

namespace Circuits.Reading;

/// <summary>The names of one kind of thing.</summary>
/// <param name="All">The names, in the order of the file.</param>
/// <param name="Complete">
/// Whether these are all. They are not when their section could not be read, or may hide under a misspelt key; then a
/// name that is not among them is no fault of its own.
/// </param>
internal readonly record struct NameSet(ImmutableArray<string> All, bool Complete)
{
    /// <summary>Whether the name may be used.</summary>
    public bool Admits(string name) => !Complete || All.Contains(name);
}
