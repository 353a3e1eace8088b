using System.Runtime.InteropServices;

namespace Circuits.Reading;

/// <summary>What stands at a path.</summary>
public enum FileKind
{
    /// <summary>Nothing.</summary>
    Missing,

    /// <summary>An ordinary file.</summary>
    Regular,

    /// <summary>A folder.</summary>
    Folder,

    /// <summary>A device that takes or gives bytes one after another: a terminal, <c>/dev/null</c>.</summary>
    CharacterDevice,

    /// <summary>A device that holds a file system: a disk.</summary>
    BlockDevice,

    /// <summary>A pipe, with a name or without.</summary>
    Pipe,

    /// <summary>A socket.</summary>
    Socket,

    /// <summary>It cannot be told; opening it says why.</summary>
    Unknown,
}

/// <summary>Which file it is, by whatever name: the device that holds it, and its number there.</summary>
/// <param name="Device">The device.</param>
/// <param name="Number">The file's number (inode).</param>
public readonly record struct FileIdentity(ulong Device, ulong Number);

/// <summary>What stands at a path, every link followed. Asking opens nothing: opening a pipe waits for its other end.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Identity">Which one; null where it cannot be told.</param>
/// <remarks>
/// The base library tells folders from files and no more. Linux is asked by <c>statx</c>, whose answer is laid out alike on every
/// processor (manual page statx(2)). Elsewhere a pipe or device counts as an ordinary file.
/// </remarks>
public readonly partial record struct FileStatus(FileKind Kind, FileIdentity? Identity)
{
    private const int FromHere = -100;
    private const uint BasicFields = 0x7FF;
    private const int NoPermission = 1;
    private const int NoEntry = 2;
    private const int NoFolder = 20;
    private const int NoCall = 38;

    /// <summary>What stands at a path.</summary>
    /// <param name="path">The path, absolute or from the working directory.</param>
    public static FileStatus Of(string path)
    {
        if (path.Length == 0 || path.Contains('\0')) return new(FileKind.Unknown, null);
        if (!OperatingSystem.IsLinux()) return Plainly(path);
        try
        {
            if (Ask(FromHere, path, 0, BasicFields, out var answer) == 0)
                return new(KindOf(answer.Mode), new FileIdentity(((ulong)answer.Major << 32) | answer.Minor, answer.Number));
            return Marshal.GetLastPInvokeError() switch
            {
                NoEntry or NoFolder => new(FileKind.Missing, null),
                NoPermission or NoCall => Plainly(path),
                _ => new(FileKind.Unknown, null),
            };
        }
        catch (Exception fault) when (fault is DllNotFoundException or EntryPointNotFoundException)
        {
            return Plainly(path);
        }
    }

    private static FileStatus Plainly(string path) =>
        new(Directory.Exists(path) ? FileKind.Folder : File.Exists(path) ? FileKind.Regular : FileKind.Missing, null);

    private static FileKind KindOf(ushort mode) => (mode & 0xF000) switch
    {
        0x8000 => FileKind.Regular,
        0x4000 => FileKind.Folder,
        0x2000 => FileKind.CharacterDevice,
        0x6000 => FileKind.BlockDevice,
        0x1000 => FileKind.Pipe,
        0xC000 => FileKind.Socket,
        _ => FileKind.Unknown,
    };

    [LibraryImport("libc", EntryPoint = "statx", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Ask(int folder, string path, int flags, uint fields, out Answer answer);

    /// <summary>What is needed of <c>struct statx</c>.</summary>
    [StructLayout(LayoutKind.Explicit, Size = 256)]
    private readonly struct Answer
    {
        [field: FieldOffset(28)]
        public ushort Mode { get; }

        [field: FieldOffset(32)]
        public ulong Number { get; }

        [field: FieldOffset(136)]
        public uint Major { get; }

        [field: FieldOffset(140)]
        public uint Minor { get; }
    }
}
