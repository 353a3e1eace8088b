using System.Globalization;
using Circuits.Cli;

namespace Circuits.Tests.Cli;

/// <summary>
/// A case: a folder with a <c>command</c>, the files that it reads, and what it must print (<c>out</c>, <c>err</c>), return
/// (<c>exit</c>) and leave behind (<c>after/</c>: every file that it makes or changes, and no other).
/// </summary>
/// <remarks>
/// The command is a line as one types it. Words <c>NAME=value</c> before the program's name set environment variables;
/// <c>TERMINAL=80</c> makes standard output a terminal of that width. A command that names <c>circuits/</c> finds the
/// demo library there, one that names <c>units</c> the small unit that cases share. CIRCUITS_ACCEPT=1 in the environment of the tests writes what came out as what must come out.
/// </remarks>
internal sealed class CommandCase
{
    private static readonly string[] Bookkeeping = ["command", "out", "err", "exit"];

    private CommandCase(string folder) => Folder = folder;

    public static string Root { get; } = Path.Combine(Repository.Root, "tests", "Circuits.Tests", "Cli", "cases");

    public string Folder { get; }

    public string Command => File.ReadAllText(Path.Combine(Folder, "command")).Trim();

    public static CommandCase Named(string name) => new(Path.Combine(Root, name));

    /// <summary>What the case says must come out.</summary>
    public Outcome Expected() => new(
        Read("out"), Read("err"), int.Parse(Read("exit").Trim(), CultureInfo.InvariantCulture), Files(Path.Combine(Folder, "after")));

    /// <summary>Writes what came out as what must come out.</summary>
    public void Accept(Outcome outcome)
    {
        Write("out", outcome.Out);
        Write("err", outcome.Error);
        Write("exit", outcome.Exit.ToString(CultureInfo.InvariantCulture) + "\n");
        var after = Path.Combine(Folder, "after");
        if (Directory.Exists(after)) Directory.Delete(after, recursive: true);
        foreach (var (name, text) in outcome.After)
        {
            var path = Path.Combine(after, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text);
        }
    }

    /// <summary>Runs the command in a fresh copy of the folder. Changes the process's working directory while it runs.</summary>
    public Outcome Run()
    {
        var work = Directory.CreateTempSubdirectory("circuits-case-").FullName;
        var before = Directory.GetCurrentDirectory();
        try
        {
            Copy(Folder, work, file => !Bookkeeping.Contains(file) && !file.StartsWith("after/", StringComparison.Ordinal));
            if (Command.Contains("circuits/", StringComparison.Ordinal))
                Copy(Path.Combine(Repository.Root, "circuits"), Path.Combine(work, "circuits"), _ => true);
            if (Command.Contains("units", StringComparison.Ordinal))
                Copy(Path.Combine(Root, "..", "units"), Path.Combine(work, "units"), _ => true);
            var at = Files(work);
            Directory.SetCurrentDirectory(work);
            var (variables, args) = Split(Command);
            using var output = new StringWriter();
            using var error = new StringWriter();
            var terminal = variables.TryGetValue("TERMINAL", out var width);
            var exit = CommandLine.Run([.. args], new Surroundings(output, error)
            {
                OutIsTerminal = terminal,
                TerminalWidth = terminal ? int.Parse(width!, CultureInfo.InvariantCulture) : 80,
                Variable = name => variables.GetValueOrDefault(name),
            });
            var after = Files(work).Where(file => !at.TryGetValue(file.Key, out var text) || text != file.Value);
            return new Outcome(output.ToString(), error.ToString(), exit, new SortedDictionary<string, string>(after.ToDictionary(), StringComparer.Ordinal));
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
            Directory.Delete(work, recursive: true);
        }
    }

    private static (Dictionary<string, string> Variables, List<string> Args) Split(string command)
    {
        var words = System.CommandLine.Parsing.CommandLineParser.SplitCommandLine(command).ToList();
        var program = words.IndexOf("circuits");
        if (program < 0) throw new InvalidDataException($"The command does not call circuits: {command}");
        var variables = words.Take(program).Select(word => word.Split('=', 2)).ToDictionary(pair => pair[0], pair => pair[1]);
        return (variables, words.Skip(program + 1).ToList());
    }

    private static void Copy(string from, string to, Predicate<string> wanted)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var name = Name(from, file);
            if (!wanted(name)) continue;
            var target = Path.Combine(to, name);
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }

    private static SortedDictionary<string, string> Files(string folder)
    {
        var files = new SortedDictionary<string, string>(StringComparer.Ordinal);
        if (!Directory.Exists(folder)) return files;
        foreach (var file in Directory.EnumerateFiles(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 }))
            files.Add(Name(folder, file), File.ReadAllText(file));
        return files;
    }

    private static string Name(string folder, string file) => Path.GetRelativePath(folder, file).Replace('\\', '/');

    private string Read(string name) => File.ReadAllText(Path.Combine(Folder, name));

    private void Write(string name, string text) => File.WriteAllText(Path.Combine(Folder, name), text);
}

/// <summary>What a command printed, returned and left behind.</summary>
internal sealed record Outcome(string Out, string Error, int Exit, SortedDictionary<string, string> After);
