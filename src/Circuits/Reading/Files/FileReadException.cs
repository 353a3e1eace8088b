namespace Circuits.Reading;

/// <summary>A file cannot be read.</summary>
/// <param name="reason">What is wrong with it, as it goes on after the file's name: <c>does not exist</c>.</param>
/// <param name="help">What to do.</param>
public sealed class FileReadException(string reason, string help) : Exception(reason)
{
    /// <summary>What is wrong with the file, as it goes on after the file's name: <c>does not exist</c>.</summary>
    public string Reason { get; } = reason;

    /// <summary>What to do.</summary>
    public string Help { get; } = help;
}
