using System.ComponentModel;
using System.Diagnostics;
using System.Text;
using Circuits.Reading;

namespace Circuits.Cli;

/// <summary>
/// Asks the program git for names and objects, in a way that runs nothing which the repository's configuration names: whoever checks
/// the files of somebody else's repository has not agreed to run their programs.
/// </summary>
internal static class Git
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    // A hook's own settings name its repository; here the folder that is asked about does.
    private static readonly string[] OfTheCaller =
        ["GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_PREFIX", "GIT_COMMON_DIR", "GIT_OBJECT_DIRECTORY", "GIT_ALTERNATE_OBJECT_DIRECTORIES", "GIT_NAMESPACE"];

    // No command that is used here compares contents, refreshes the index or writes, so none calls filters, external diffs or most hooks.
    // What reading the index calls is switched off, and so is fetching what a partial clone lacks.
    private static readonly string[] Harmless = ["--no-pager", "-c", "core.fsmonitor=", "-c", "core.hooksPath=/dev/null"];
    private static readonly (string Name, string Value)[] Settings =
        [("GIT_OPTIONAL_LOCKS", "0"), ("GIT_NO_LAZY_FETCH", "1"), ("GIT_ALLOW_PROTOCOL", "none"), ("GIT_TERMINAL_PROMPT", "0"), ("LC_ALL", "C")];

    /// <summary>What a command printed and returned.</summary>
    /// <param name="Out">Its output.</param>
    /// <param name="Error">The first line of its complaint, or empty.</param>
    /// <param name="Exit">Its exit code.</param>
    internal sealed record Answer(string Out, string Error, int Exit)
    {
        /// <summary>The output of a command that ends each item with a null character.</summary>
        public IEnumerable<string> Items => Out.Split('\0', StringSplitOptions.RemoveEmptyEntries);
    }

    /// <summary>Runs one command. Nothing is written: not even the index is refreshed.</summary>
    /// <param name="folder">The folder to run in.</param>
    /// <param name="args">The command's words.</param>
    /// <exception cref="UserError">There is no git, or it does not answer.</exception>
    public static Answer Ask(string folder, params ReadOnlySpan<string> args)
    {
        var start = new ProcessStartInfo(Program() ?? throw Absent())
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        foreach (var word in (ReadOnlySpan<string>)[.. Harmless, .. args]) start.ArgumentList.Add(word);
        foreach (var name in OfTheCaller) start.Environment.Remove(name);
        foreach (var (name, value) in Settings) start.Environment[name] = value;
        try
        {
            using var git = Process.Start(start)!;
            git.StandardInput.Close();
            var complaint = git.StandardError.ReadToEndAsync();
            var printed = git.StandardOutput.ReadToEndAsync();
            if (!Task.WaitAll([complaint, printed], Patience))
            {
                // Its configuration may name a pipe as a file to read, for one.
                git.Kill(entireProcessTree: true);
                throw new UserError(UserError.Usage, FormattableString.Invariant($"--changed-only: git does not answer within {Patience.TotalSeconds} s in {folder}"), "Name the files to check.");
            }

            git.WaitForExit();
            return new Answer(printed.Result, complaint.Result.Split('\n')[0], git.ExitCode);
        }
        catch (Win32Exception)
        {
            throw Absent();
        }
    }

    // Looked up here, in whole paths only: the base library would first take a program of that name from the working directory, which is the
    // repository's.
    private static string? Program()
    {
        foreach (var folder in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator))
        {
            if (!Path.IsPathFullyQualified(folder)) continue;
            var program = Path.Combine(folder, OperatingSystem.IsWindows() ? "git.exe" : "git");
            if (FileStatus.Of(program).Kind == FileKind.Regular && MayRun(program)) return program;
        }

        return null;
    }

    private static bool MayRun(string program) =>
        OperatingSystem.IsWindows() || (File.GetUnixFileMode(program) & (UnixFileMode.UserExecute | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute)) != 0;

    private static UserError Absent() => new(UserError.Usage, "--changed-only needs git, which cannot be run", "Install git, or name the files to check.");
}
