using System.ComponentModel;
using System.Diagnostics;
using System.Text;

namespace Circuits.Cli;

/// <summary>Asks the program git.</summary>
internal static class Git
{
    // A hook's own settings name its repository; here the folder that is asked about does.
    private static readonly string[] OfTheCaller = ["GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_PREFIX"];

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
    /// <exception cref="UserError">There is no git.</exception>
    public static Answer Ask(string folder, params ReadOnlySpan<string> args)
    {
        var start = new ProcessStartInfo("git")
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        foreach (var word in args) start.ArgumentList.Add(word);
        foreach (var name in OfTheCaller) start.Environment.Remove(name);
        start.Environment["GIT_OPTIONAL_LOCKS"] = "0";
        start.Environment["LC_ALL"] = "C";
        try
        {
            using var git = Process.Start(start)!;
            git.StandardInput.Close();
            var complaint = git.StandardError.ReadToEndAsync();
            var printed = git.StandardOutput.ReadToEnd();
            git.WaitForExit();
            return new Answer(printed, complaint.Result.Split('\n')[0], git.ExitCode);
        }
        catch (Win32Exception)
        {
            throw new UserError(UserError.Usage, "--changed-only needs git, which cannot be run", "Install git, or name the files to check.");
        }
    }
}
