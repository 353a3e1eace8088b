using Circuits.Reading;

namespace Circuits.Cli;

/// <summary>Circuit files as they were when a branch or commit was left.</summary>
/// <param name="changed">Knows what they held.</param>
internal sealed class FormerFiles(ChangedFiles changed) : ITextSource
{
    /// <inheritdoc/>
    public byte[]? Whole(string path, int most) => changed.Former(path, most);
}
