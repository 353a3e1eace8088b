using System.Text;

namespace Circuits.Cli;

/// <summary>Writes a file whole or not at all: an existing file is kept when anything goes wrong.</summary>
internal static class OutputFile
{
    /// <summary>Writes the text beside the file, then puts it in the file's place.</summary>
    /// <exception cref="UserError">The file cannot be written.</exception>
    public static void Write(string path, string text) => Write(path, stream => stream.Write(Encoding.UTF8.GetBytes(text)));

    /// <summary>Has the contents written beside the file, then puts them in the file's place.</summary>
    /// <param name="path">The file.</param>
    /// <param name="write">Writes the contents; when it throws, the file stays as it was.</param>
    /// <exception cref="UserError">The file cannot be written.</exception>
    public static void Write(string path, Action<Stream> write)
    {
        Refuse(path);
        string? temporary = null;
        try
        {
            // A device is no file to put another in the place of.
            if (IsDevice(Path.GetFullPath(path)))
            {
                using var device = new FileStream(path, FileMode.Open, FileAccess.Write);
                write(device);
                device.Flush();
                return;
            }

            var target = Target(path);
            if (File.Exists(target) && File.GetAttributes(target).HasFlag(FileAttributes.ReadOnly))
                throw new UserError(UserError.Output, $"cannot write {path}: it is read-only");

            var folder = Path.GetDirectoryName(target)!;
            temporary = Path.Combine(folder, $".{Guid.NewGuid():N}.tmp");
            using (var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.Write))
            {
                write(stream);
                stream.Flush(flushToDisk: true);
            }

            if (!OperatingSystem.IsWindows() && File.Exists(target)) File.SetUnixFileMode(temporary, File.GetUnixFileMode(target));
            File.Move(temporary, target, overwrite: true);
            temporary = null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            throw new UserError(UserError.Output, $"cannot write {path}: {Reason(fault)}");
        }
        finally
        {
            if (temporary is not null) Discard(temporary);
        }
    }

    /// <summary>Finds out whether a file can be written, and leaves nothing behind.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="UserError">It cannot.</exception>
    public static void Check(string path)
    {
        Refuse(path);
        try
        {
            if (IsDevice(Path.GetFullPath(path))) return;
            var target = Target(path);
            if (File.Exists(target) && File.GetAttributes(target).HasFlag(FileAttributes.ReadOnly))
                throw new UserError(UserError.Output, $"cannot write {path}: it is read-only");
            var trial = Path.Combine(Path.GetDirectoryName(target)!, $".{Guid.NewGuid():N}.tmp");
            using (new FileStream(trial, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose))
            {
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            throw new UserError(UserError.Output, $"cannot write {path}: {Reason(fault)}");
        }
    }

    private static void Refuse(string path)
    {
        if (Directory.Exists(path)) throw new UserError(UserError.Output, $"cannot write {path}: it is a folder", "Name a file.");
    }

    // A link keeps being a link: what it leads to is written.
    private static string Target(string path)
    {
        var full = Path.GetFullPath(path);
        return new FileInfo(full).LinkTarget is null ? full : File.ResolveLinkTarget(full, returnFinalTarget: true)!.FullName;
    }

    private static bool IsDevice(string path) => !OperatingSystem.IsWindows() && path.StartsWith("/dev/", StringComparison.Ordinal);

    // The compiled program carries no texts for the runtime's own exceptions, so the common ones are named here.
    private static string Reason(Exception fault) => fault switch
    {
        DirectoryNotFoundException => "its folder does not exist",
        UnauthorizedAccessException => "no permission to write there",
        PathTooLongException => "the path is too long",
        ArgumentException or NotSupportedException => "that is no path",
        _ => fault.Message,
    };

    private static void Discard(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // The first fault is the one to report.
        }
    }
}
