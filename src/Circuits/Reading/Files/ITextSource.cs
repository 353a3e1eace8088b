namespace Circuits.Reading;

/// <summary>Where the bytes of circuit files come from: the disk, or another state of the same files.</summary>
public interface ITextSource
{
    /// <summary>A file's bytes; null when there are more than so many.</summary>
    /// <param name="path">The file.</param>
    /// <param name="most">How many.</param>
    /// <exception cref="FileReadException">It cannot be read.</exception>
    byte[]? Whole(string path, int most);
}
