using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>One revision as written, with what it inherits already merged in.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Where it is written.</param>
/// <param name="BasedOn">The revision it is based on, or null.</param>
/// <param name="Content">Its elements.</param>
internal sealed record RevisionSource(string Name, Place Place, string? BasedOn, YamlMapping Content);

/// <summary>A part, before its elements are read.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Where it is written.</param>
/// <param name="Kind">What it is; null when the file does not say so properly.</param>
/// <param name="Revisions">Its revisions, in the order of the file.</param>
internal sealed record PartSource(string Name, Place Place, PartKind? Kind, ImmutableArray<RevisionSource> Revisions)
{
    /// <summary>
    /// Whether the part could not be read whole. Then names in it are not checked: one fault should not make a hundred others.
    /// </summary>
    public bool Broken { get; init; }
}
