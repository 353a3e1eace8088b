using System.Text.Json;
using Circuits.Rendering.Json;
using Circuits.Tests.Rendering;
using Json.Schema;
using Xunit;

namespace Circuits.Tests.Cli;

/// <summary>Runs every case folder. Alone, since a case runs in a working directory of its own.</summary>
[Collection(nameof(WorkingDirectory))]
public class CommandCaseTests
{
    public static TheoryData<string> Names() => [.. Directory.EnumerateDirectories(CommandCase.Root).Select(folder => Path.GetFileName(folder)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_case_comes_out_as_it_says(string name)
    {
        var it = CommandCase.Named(name);
        var outcome = it.Run();
        if (Environment.GetEnvironmentVariable("CIRCUITS_ACCEPT") == "1") it.Accept(outcome);

        var expected = it.Expected();
        Assert.Equal(expected.Error, outcome.Error);
        Assert.Equal(expected.Out, outcome.Out);
        Assert.Equal(expected.Exit, outcome.Exit);
        Assert.Equal(expected.After, outcome.After);
        if (it.Command.Contains("--format json", StringComparison.Ordinal)) KeepsToItsSchema(it.Command, outcome);
        if (expected.Exit == 2 && outcome.Out.Length == 0) return;
        var text = outcome.After.Count == 1 ? outcome.After.Values.Single() : outcome.Out;
        if (it.Command.Contains("--format sarif", StringComparison.Ordinal)) Assert.True(SarifTests.IsValid(text));
        if (it.Command.Contains("--format junit", StringComparison.Ordinal)) Assert.Empty(JUnitTests.Faults(text));
    }

    /// <summary>A case that prints nothing and exits 0, say, would hold whatever the program does.</summary>
    [Fact]
    public void Every_verb_and_every_exit_code_has_a_case()
    {
        var cases = Names().Select(row => CommandCase.Named(row.Data)).ToList();
        foreach (var verb in Circuits.Cli.Verbs.Names)
            Assert.Contains(cases, it => it.Command.Contains($"circuits {verb}", StringComparison.Ordinal) && it.Expected().Exit == 0);
        foreach (var exit in (int[])[0, 1, 2])
            Assert.Contains(cases, it => it.Expected().Exit == exit);
    }

    private static void KeepsToItsSchema(string command, Outcome outcome)
    {
        var text = outcome.After.Count == 1 ? outcome.After.Values.Single() : outcome.Out;
        if (text.Length == 0) return;
        var verb = JsonSchemas.Names.Single(verb => command.Contains($"circuits {verb}", StringComparison.Ordinal));
        var schema = JsonSchema.FromText(JsonSchemas.Find(verb)!, new BuildOptions { SchemaRegistry = new SchemaRegistry() });
        foreach (var json in command.Contains("--format jsonl", StringComparison.Ordinal) ? text.Split('\n', StringSplitOptions.RemoveEmptyEntries) : [text])
        {
            using var document = JsonDocument.Parse(json);
            Assert.True(schema.Evaluate(document.RootElement).IsValid);
        }
    }
}

/// <summary>Tests that change the process's working directory; they run alone.</summary>
[CollectionDefinition(nameof(WorkingDirectory), DisableParallelization = true)]
public sealed class WorkingDirectory;
