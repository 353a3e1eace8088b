using Circuits.Reading;

namespace Circuits.Cli;

/// <summary>
/// The one way to write files: every file of a command whole, and all of them or none. Contents are put beside their files first; only
/// when all of them stand are they put in their files' places. A file that the command has read is refused.
/// </summary>
/// <param name="inputs">What the command has read.</param>
internal sealed class OutputFiles(InputFiles inputs) : IDisposable
{
    private readonly Lock sync = new();
    private readonly List<Written> written = [];
    private readonly HashSet<string> temporaries = [];
    private bool ended;

    /// <summary>Contents that stand beside their file.</summary>
    private sealed record Written(string Path, string Target, string Temporary)
    {
        /// <summary>Where what stood in the file is kept until all files stand.</summary>
        public string Former => Temporary + ".old";
    }

    /// <summary>What the command has read.</summary>
    public InputFiles Inputs => inputs;

    /// <summary>Refuses a file that the command has read, by whatever name.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="UserError">It has.</exception>
    public void RefuseInput(string path)
    {
        if (inputs.NameOf(path) is not { } name) return;
        var which = name == path ? "this command reads it" : $"it is {name}, which this command reads";
        throw new UserError(UserError.Output, $"cannot write {path}: {which}", "Name another file.");
    }

    /// <summary>Has the contents of a file written beside it. A device or a pipe takes them at once.</summary>
    /// <param name="path">The file.</param>
    /// <param name="write">Writes the contents; when it throws, nothing is kept of them.</param>
    /// <exception cref="UserError">The file cannot be written, has been read, or is written already.</exception>
    /// <exception cref="OperationCanceledException">The command has been broken off.</exception>
    public void Add(string path, Action<Stream> write)
    {
        RefuseInput(path);
        if (path.Length == 0 || path.Contains('\0')) throw new UserError(UserError.Output, $"cannot write {path}: that is no path");
        try
        {
            switch (FileStatus.Of(path).Kind)
            {
                case FileKind.Folder:
                    throw new UserError(UserError.Output, $"cannot write {path}: it is a folder", "Name a file.");
                case FileKind.BlockDevice:
                    throw new UserError(UserError.Output, $"cannot write {path}: it is a disk", "Name a file.");
                case FileKind.Socket:
                    throw new UserError(UserError.Output, $"cannot write {path}: it is a socket", "Name a file or a pipe.");
                case FileKind.CharacterDevice or FileKind.Pipe:
                    Straight(path, FileMode.Open, write);
                    break;
                case FileKind.Regular when Descriptor.IsOne(path):
                    // The caller opened it, for others too perhaps: another file in its place would be lost to them, and so would what they wrote.
                    Straight(path, FileMode.Append, write);
                    break;
                default:
                    Beside(path, write);
                    break;
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw CannotWrite(path, fault);
        }
    }

    /// <summary>Puts all contents in their files' places. When one cannot be, the others are put back as they were.</summary>
    /// <exception cref="UserError">A file cannot be written.</exception>
    public void Commit()
    {
        // Whoever breaks the command off now waits until it is done: it takes no longer than renaming.
        lock (sync)
        {
            var done = new List<Written>();
            try
            {
                foreach (var file in written)
                {
                    Place(file, keepFormer: written.Count > 1);
                    done.Add(file);
                }

                foreach (var file in written) Discard(file.Former);
                written.Clear();
            }
            catch (Exception fault) when (FileFault.IsOne(fault))
            {
                Discard(written[done.Count].Former);
                Restore(done);
                throw CannotWrite(written[done.Count].Path, fault);
            }
        }
    }

    /// <summary>Removes whatever has not been put in its place.</summary>
    public void PutAway()
    {
        lock (sync)
        {
            foreach (var temporary in temporaries) Discard(temporary);
            temporaries.Clear();
            written.Clear();
        }
    }

    /// <summary>The same for the last time: nothing is written after that. May be called by any thread.</summary>
    public void Dispose()
    {
        lock (sync)
        {
            ended = true;
            PutAway();
        }
    }

    private static void Straight(string path, FileMode mode, Action<Stream> write)
    {
        // Shared with whoever has it open: a lock on a device would keep out every other program on the machine.
        using var stream = new FileStream(path, mode, FileAccess.Write, FileShare.ReadWrite);
        write(stream);
        stream.Flush();
    }

    private void Beside(string path, Action<Stream> write)
    {
        // A link keeps being a link: what it leads to is written.
        var target = RealPath.Of(path);
        if (File.Exists(target) && File.GetAttributes(target).HasFlag(FileAttributes.ReadOnly))
            throw new UserError(UserError.Output, $"cannot write {path}: it is read-only");
        var file = new Written(path, target, Path.Combine(Path.GetDirectoryName(target)!, $".{Guid.NewGuid():N}.tmp"));
        using (var stream = Open(file))
        {
            write(stream);
            stream.Flush(flushToDisk: true);
        }

        if (!OperatingSystem.IsWindows() && File.Exists(target)) File.SetUnixFileMode(file.Temporary, File.GetUnixFileMode(target));
        lock (sync) written.Add(file);
    }

    private FileStream Open(Written file)
    {
        lock (sync)
        {
            ThrowIfEnded();
            if (written.Exists(other => other.Target == file.Target))
                throw new UserError(UserError.Output, $"cannot write {file.Path}: this command writes it already", "Name another file.");
            temporaries.Add(file.Temporary);
            return new FileStream(file.Temporary, FileMode.CreateNew, FileAccess.Write);
        }
    }

    private void Place(Written file, bool keepFormer)
    {
        ThrowIfEnded();
        if (keepFormer && File.Exists(file.Target)) File.Replace(file.Temporary, file.Target, file.Former, ignoreMetadataErrors: true);
        else File.Move(file.Temporary, file.Target, overwrite: true);
        temporaries.Remove(file.Temporary);
    }

    private static void Restore(List<Written> done)
    {
        foreach (var file in done)
        {
            try
            {
                if (File.Exists(file.Former)) File.Move(file.Former, file.Target, overwrite: true);
                else File.Delete(file.Target);
            }
            catch (Exception fault) when (FileFault.IsOne(fault))
            {
                throw new UserError(UserError.Output, $"cannot put {file.Path} back as it was: {FileFault.WhyNotWritten(fault)}", $"What stood in it is in {file.Former}.");
            }
        }
    }

    private void ThrowIfEnded()
    {
        if (ended) throw new OperationCanceledException("The command has been broken off.");
    }

    private static UserError CannotWrite(string path, Exception fault) => new(UserError.Output, $"cannot write {path}: {FileFault.WhyNotWritten(fault)}");

    private static void Discard(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception fault) when (FileFault.IsOne(fault))
        {
            // The first fault is the one to report.
        }
    }
}
