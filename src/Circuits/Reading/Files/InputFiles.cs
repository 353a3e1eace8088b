namespace Circuits.Reading;

/// <summary>
/// The one way to read files: ordinary files only, since a pipe may never end and a device is no circuit. It remembers what was read, so that
/// nothing is written over it. Threads may share it.
/// </summary>
public sealed class InputFiles : ITextSource
{
    /// <summary>Longest circuit file, in bytes.</summary>
    public const int MostBytes = 8 * 1024 * 1024;

    private readonly Lock sync = new();
    private readonly HashSet<string> names = [];
    private readonly Dictionary<FileIdentity, string> identities = [];

    /// <summary>Opens a file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="FileReadException">It does not exist, may not be read, or is no ordinary file.</exception>
    public FileStream Open(string path)
    {
        var status = FileStatus.Of(path);
        if (Refusal(status.Kind) is { } refusal) throw refusal;
        Remember(path, status);
        try
        {
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 1);
        }
        catch (Exception fault) when (FileFault.IsOne(fault))
        {
            throw FileFault.Reading(fault);
        }
    }

    /// <inheritdoc/>
    /// <remarks>A file that grows meanwhile is not followed without end.</remarks>
    public byte[]? Whole(string path, int most)
    {
        using var stream = Open(path);
        return stream.Length <= most && First(stream, most + 1) is var bytes && bytes.Length <= most ? bytes : null;
    }

    /// <summary>A file's first bytes.</summary>
    /// <param name="path">The file.</param>
    /// <param name="most">How many, unless it is shorter.</param>
    /// <exception cref="FileReadException">It cannot be read.</exception>
    public byte[] Head(string path, int most)
    {
        using var stream = Open(path);
        return First(stream, most);
    }

    /// <summary>Remembers a file that is going to be read.</summary>
    /// <param name="path">The file; it need not exist.</param>
    public void Announce(string path) => Remember(path, FileStatus.Of(path));

    /// <summary>The name under which a file was read, or is going to be; null when it is none of those. Links count as what they lead to.</summary>
    /// <param name="path">The file.</param>
    public string? NameOf(string path)
    {
        lock (sync)
        {
            if (FileStatus.Of(path).Identity is { } identity && identities.TryGetValue(identity, out var name)) return name;

            // A file that was put in the place of the one that was read is another, and still no place for a result.
            return Real(path) is { } real ? names.FirstOrDefault(each => Real(each) == real) : null;
        }
    }

    /// <summary>Whether two paths lead to the same file.</summary>
    /// <param name="one">A path.</param>
    /// <param name="other">Another.</param>
    public static bool AreOne(string one, string other)
    {
        var files = new InputFiles();
        files.Announce(one);
        return files.NameOf(other) is not null;
    }

    private void Remember(string path, FileStatus status)
    {
        lock (sync)
        {
            names.Add(path);
            if (status.Identity is { } identity) identities.TryAdd(identity, path);
        }
    }

    private static byte[] First(FileStream stream, int most)
    {
        try
        {
            // Files that the system makes up as they are read say that they are empty.
            var length = stream.Length;
            var buffer = new byte[length > 0 && length < most ? (int)length + 1 : most];
            var count = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
            return count == buffer.Length ? buffer : buffer[..count];
        }
        catch (Exception fault) when (FileFault.IsOne(fault))
        {
            throw FileFault.Reading(fault);
        }
    }

    private static FileReadException? Refusal(FileKind kind) => kind switch
    {
        FileKind.Missing => FileFault.Missing(),
        FileKind.Folder => new FileReadException("is a folder", "Name a file in it."),
        FileKind.Pipe => Special("a pipe"),
        FileKind.CharacterDevice or FileKind.BlockDevice => Special("a device"),
        FileKind.Socket => Special("a socket"),
        _ => null,
    };

    private static FileReadException Special(string what) => new($"is {what}, no ordinary file", "Write what it gives into a file, and name that.");

    private static string? Real(string path)
    {
        try
        {
            return RealPath.Of(path);
        }
        catch (Exception fault) when (FileFault.IsOne(fault))
        {
            return null;
        }
    }
}
