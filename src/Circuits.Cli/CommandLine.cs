using System.CommandLine;

namespace Circuits.Cli;

/// <summary>The command line: arguments in, exit code out.</summary>
internal static class CommandLine
{
    /// <summary>Names the environment variable that makes a fault of the program show where it happened.</summary>
    public const string TraceVariable = "CIRCUITS_TRACE";

    /// <summary>Runs one command.</summary>
    /// <param name="args">The arguments, without the program's name.</param>
    /// <param name="world">Everything outside.</param>
    /// <returns>The exit code.</returns>
    public static int Run(string[] args, Surroundings world)
    {
        try
        {
            return Dispatch(args, world);
        }
        catch (UserError error)
        {
            world.Tell(error.Text);
            return ExitCode.CouldNotRun;
        }
        catch (OperationCanceledException) when (world.Interrupted.IsCancellationRequested)
        {
            return world.InterruptedExit();
        }
        catch (Exception fault)
        {
            var detail = string.IsNullOrEmpty(world.Variable(TraceVariable))
                ? $"  help: This is a fault of the program, not of your files. {TraceVariable}=1 shows where it happened.\n"
                : fault + "\n";
            world.Tell($"circuits: fault {fault.GetType().Name}: {Rendering.Printable.Of(fault.Message)}\n{detail}");
            return ExitCode.CouldNotRun;
        }
        finally
        {
            world.Outputs.PutAway();
        }
    }

    private static int Dispatch(string[] args, Surroundings world)
    {
        if (args is [Suggestions.Directive, var line])
        {
            world.Print(string.Concat(Suggestions.For(line).Select(word => word + "\n")));
            return ExitCode.Fine;
        }

        var options = new CommonOptions();
        var verbs = Verbs.For(args, options);
        // Most command lines ask for neither, and making the options that do takes longer than reading the rest.
        var asks = Array.Exists(args, AsksAboutProgram);
        var root = asks ? Root(verbs) : Bare(verbs);
        var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (asks && HelpPages.AskedFor(parsed))
        {
            HelpPages.Write(parsed, verbs, world);
            return ExitCode.Fine;
        }

        if (asks && root.Options.OfType<VersionOption>().FirstOrDefault() is { } version && parsed.GetResult(version) is { Implicit: false })
        {
            world.Print($"circuits {ProgramVersion.Full}\n");
            return ExitCode.Fine;
        }

        UsageCheck.Throw(parsed, root);
        var session = new Session(world, options, parsed);
        var exit = Array.Find(verbs, verb => verb.Command == parsed.CommandResult.Command)!.Run(session);
        session.Commit();
        return exit;
    }

    private const string Name = "circuits";

    /// <summary>Options that stand beside any verb.</summary>
    public static IReadOnlyList<string> EverywhereOptions { get; } = ["--help", "--version"];

    /// <summary>The program as the parser knows it.</summary>
    public static RootCommand Root(Verb[] verbs)
    {
        var root = new RootCommand("Says which clutches of an automatic transmission's hydraulic control get oil in every gear, with the parts that are fitted, and why.")
        {
            HelpName = Name,
        };
        root.Directives.Clear();
        return With(root, verbs);
    }

    /// <summary>The same without help and version.</summary>
    private static Command Bare(Verb[] verbs) => With(new Command(Name), verbs);

    private static TCommand With<TCommand>(TCommand root, Verb[] verbs) where TCommand : Command
    {
        foreach (var verb in verbs) root.Subcommands.Add(verb.Command);
        return root;
    }

    private static bool AsksAboutProgram(string word) => word is "--help" or "-h" or "/h" or "-?" or "/?" or "--version";
}
