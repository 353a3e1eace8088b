using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Rendering.Json;

namespace Circuits.Cli;

/// <summary>One run of a verb: what the user asked for, and where answers go.</summary>
internal sealed class Session(Surroundings world, CommonOptions options, ParseResult parsed)
{
    /// <summary>The command line.</summary>
    public ParseResult Parsed => parsed;

    /// <summary>The files named, each once.</summary>
    public ImmutableArray<string> Files { get; } =
        parsed.GetValue(options.Files) is { Length: > 0 } files ? OptionWords.EachOnce([.. files]) : parsed.GetValue(options.File) is { } file ? [file] : [];

    /// <summary>The items of <c>--fit</c>.</summary>
    public ImmutableArray<string> Fit => OptionWords.Items(parsed.GetValue(options.Fit));

    /// <summary>The items of <c>--gear</c>.</summary>
    public ImmutableArray<string> Gears => OptionWords.Items(parsed.GetValue(options.Gear));

    /// <summary>What verdicts rest on.</summary>
    public JudgeMode Mode => parsed.GetValue(options.Quick) ? JudgeMode.Quick : JudgeMode.Full;

    /// <summary>The format of the result.</summary>
    public OutputFormat Format { get; } = FormatOption.Of(parsed);

    /// <summary>Whether text is to be plain.</summary>
    public bool Plain { get; } = FormatOption.IsPlain(parsed);

    /// <summary>Whether that is one that carries findings and nothing else.</summary>
    public bool IsFindingsAlone => FindingForms.Has(Format);

    /// <summary>How text is laid out: to the terminal where it goes there, else in 80 columns without colour.</summary>
    public TextOptions Text
    {
        get
        {
            var text = new TextOptions { Units = OptionWords.Units(parsed.GetValue(options.Units)), Plain = Plain };
            return Plain || OutputPath is not null || !world.OutIsTerminal
                ? text
                : text with { Width = world.TerminalWidth, Color = world.Color, Unicode = world.Unicode };
        }
    }

    /// <summary>Whether the result goes into a file.</summary>
    public bool WritesFile => OutputPath is not null;

    private string? OutputPath => parsed.GetValue(options.Output);

    /// <summary>Stops here when the user has broken the command off; from now on that no longer ends the program at once.</summary>
    public void StopIfInterrupted() => world.Interrupted.ThrowIfCancellationRequested();

    /// <summary>The same between files, before any but the first: one alone is soon done, and has written nothing yet.</summary>
    /// <param name="done">How many files are done.</param>
    public void StopBetweenFiles(int done)
    {
        if (done > 0) StopIfInterrupted();
    }

    /// <summary>Says how much has been done, where a person may be watching; for a search whose end is not known.</summary>
    /// <param name="noun">What is counted, in the plural.</param>
    public SearchProgress SearchProgress(string noun) => new(world.ErrorIsTerminal && !Plain ? world.Tell : null, noun);

    /// <summary>Refuses, before any work, to write the result over a file that is named to be read.</summary>
    /// <exception cref="UserError">The output is one of the inputs.</exception>
    /// <param name="others">Other files that are read.</param>
    public void CheckOutput(params ReadOnlySpan<string> others)
    {
        foreach (var file in Files) world.Outputs.Inputs.Announce(file);
        foreach (var other in others) world.Outputs.Inputs.Announce(other);
        if (OutputPath is { } output) world.Outputs.RefuseInput(output);
    }

    /// <summary>Refuses, before any work, to write something beside the result over a file that is named to be read, or over the result.</summary>
    /// <param name="option">The option that names the file.</param>
    /// <param name="path">The file.</param>
    /// <exception cref="UserError">It is one of those.</exception>
    public void CheckOther(string option, string path)
    {
        world.Outputs.RefuseInput(path);
        if (OutputPath is { } output && InputFiles.AreOne(output, path))
            throw new UserError(UserError.Usage, $"{option} and -o name the same file, {path}", "Name another file.");
    }

    /// <summary>What is read goes through these.</summary>
    public InputFiles Inputs => world.Outputs.Inputs;

    /// <summary>Has a file written beside its place; it is put there with all others of the command, at its end.</summary>
    /// <param name="path">The file.</param>
    /// <param name="write">Writes the contents.</param>
    /// <exception cref="UserError">The file cannot be written, or it is one that is read.</exception>
    public void WriteFile(string path, Action<Stream> write)
    {
        // From here on a signal no longer ends the program at once, or it would leave what is half written.
        StopIfInterrupted();
        world.Outputs.Add(path, write);
    }

    /// <summary>The same with text.</summary>
    /// <param name="path">The file.</param>
    /// <param name="text">The contents.</param>
    /// <exception cref="UserError">The file cannot be written, or it is one that is read.</exception>
    public void WriteFile(string path, string text) => WriteFile(path, stream => stream.Write(Encoding.UTF8.GetBytes(text)));

    /// <summary>Puts all that was written in its place, unless the user has broken the command off.</summary>
    /// <exception cref="UserError">A file cannot be written; then none is.</exception>
    public void Commit()
    {
        if (world.IsInterrupted) StopIfInterrupted();
        world.Outputs.Commit();
    }

    /// <summary>The unit of a file, or null with diagnostics when it cannot be read.</summary>
    public Unit? Read(string file)
    {
        var result = ReadQuietly(file);
        Diagnose(result.Findings);
        return result.Unit;
    }

    /// <summary>What reading a file gives, without diagnostics.</summary>
    public ReadResult ReadQuietly(string file) => Read(file, Inputs);

    /// <summary>What reading a file from somewhere gives, without diagnostics.</summary>
    public static ReadResult Read(string file, ITextSource files) => CircuitReader.ReadFile(file, static () => RuleCatalogue.All.Select(rule => rule.Name), files: files);

    /// <summary>Writes findings as diagnostics.</summary>
    public void Diagnose(IEnumerable<Finding> findings)
    {
        foreach (var finding in findings) world.Tell(FindingText.Of(finding));
    }

    /// <summary>Tells the user something that is no result.</summary>
    public void Tell(string line) => world.Tell(Printable.Of(line) + "\n");

    /// <summary>Writes the result where the user wants it.</summary>
    /// <exception cref="UserError">The file cannot be written.</exception>
    public void Finish(string result)
    {
        // What fits into one block is written whole or not at all in any case.
        if (OutputPath is not null || Encoding.UTF8.GetByteCount(result) > RowBlocks.Size || world.IsInterrupted) StopIfInterrupted();
        if (OutputPath is { } path) WriteFile(path, result);
        else world.Print(result);
    }

    /// <summary>Writes several results, each into a file of its own beside the one that the user named; all or none.</summary>
    /// <param name="results">What each is of, and the result.</param>
    /// <exception cref="UserError">No file is named, a file cannot be written, or it is one that is read.</exception>
    public void Finish(IReadOnlyList<(string Name, string Text)> results)
    {
        StopIfInterrupted();
        ImmutableArray<string> names = [.. results.Select(result => result.Name)];
        if (OutputPath is not { } path)
        {
            const string example = "circuit.svg";
            throw new UserError(UserError.Usage, "several drawings need -o: the file whose name theirs begin with", $"For example -o {example}, which makes {FileNames.Of(example, names)[0]} and so on.");
        }

        foreach (var (file, result) in FileNames.Of(path, names).Zip(results)) WriteFile(file, result.Text);
    }

    /// <summary>
    /// Writes a result piece by piece: into the output file, whole or not at all, or to standard output, whole pieces at a time.
    /// What stands in the way of writing shows before the work begins.
    /// </summary>
    /// <param name="produce">Does the work, and hands over the pieces.</param>
    /// <exception cref="UserError">The file cannot be written.</exception>
    public void Stream(Action<Action<string>> produce)
    {
        StopIfInterrupted();
        if (OutputPath is { } path)
        {
            WriteFile(path, stream =>
            {
                using var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), 1 << 16, leaveOpen: true);
                produce(writer.Write);
                StopIfInterrupted();
            });
            return;
        }

        var blocks = new RowBlocks(world.Print);
        produce(blocks.Add);
        blocks.Flush();
    }

    /// <summary>Shows how far the work is, where a person may be watching and the result does not go to the same terminal meanwhile.</summary>
    /// <param name="total">How much there is to do.</param>
    /// <param name="noun">What is counted, in the plural.</param>
    /// <param name="streams">Whether the result is written while the work goes on.</param>
    public Progress Progress(long total, string noun, bool streams) =>
        new(world.ErrorIsTerminal && !Plain && !(streams && world.OutIsTerminal && OutputPath is null) ? world.Tell : null, total, noun);

    /// <summary>Set when the user breaks the command off.</summary>
    public CancellationToken Interrupted => world.Interrupted;

    /// <summary>Writes findings in the form that the user wants, when it is one that carries nothing else.</summary>
    /// <param name="reports">What was found, file by file.</param>
    /// <exception cref="UserError">The file cannot be written.</exception>
    public void Finish(IReadOnlyList<FindingReport> reports)
    {
        var context = new FormContext(parsed.CommandResult.Command.Name, ProgramVersion.Number, Directory.GetCurrentDirectory()) { Units = Text.Units };
        Finish(FindingForms.Of(Format, reports, context));
    }

    /// <summary>Writes JSON documents: the one alone, or an array of several.</summary>
    /// <exception cref="UserError">The file cannot be written.</exception>
    public void Finish(IReadOnlyList<Document> documents, bool array) => Finish(array ? JsonText.Of(documents, Text.Units) : JsonText.Of(documents[0], Text.Units));
}
