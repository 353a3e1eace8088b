using Circuits.Cli;
using Circuits.Judging;
using Xunit;

namespace Circuits.Tests.Cli;

/// <summary>What a case folder cannot express.</summary>
public class CommandLineTests
{
    [Fact]
    public void A_fault_of_the_program_is_one_line_and_says_how_to_see_more()
    {
        using var error = new StringWriter();
        using var output = new FailingWriter(new InvalidOperationException("the writer broke"));
        Assert.Equal(2, CommandLine.Run(["--version"], new Surroundings(output, error)));
        Assert.Equal(
            "circuits: fault InvalidOperationException: the writer broke\n"
            + "  help: This is a fault of the program, not of your files. CIRCUITS_TRACE=1 shows where it happened.\n", error.ToString());
    }

    [Fact]
    public void With_the_trace_variable_a_fault_shows_where_it_happened()
    {
        using var error = new StringWriter();
        using var output = new FailingWriter(new InvalidOperationException("the writer broke"));
        CommandLine.Run(["--version"], new Surroundings(output, error) { Variable = name => name == CommandLine.TraceVariable ? "1" : null });
        Assert.Contains("at Circuits.Cli.CommandLine.", error.ToString());
    }

    [Fact]
    public void Output_that_cannot_be_written_is_no_fault_of_the_program()
    {
        using var error = new StringWriter();
        using var output = new FailingWriter(new IOException("IO_DiskFull", 28));
        Assert.Equal(2, CommandLine.Run(["--version"], new Surroundings(output, error)));
        Assert.Equal("circuits: error output: cannot write the result: the disk is full\n", error.ToString());
    }

    [Fact]
    public void A_closed_standard_output_is_no_fault_of_the_program()
    {
        using var error = new StringWriter();
        using var output = new FailingWriter(new UnauthorizedAccessException());
        Assert.Equal(2, CommandLine.Run(["explain"], new Surroundings(output, error)));
        Assert.Equal("circuits: error output: cannot write the result: standard output is closed\n", error.ToString());
    }

    [Fact]
    public void A_closed_standard_error_leaves_the_exit_code()
    {
        using var error = new FailingWriter(new UnauthorizedAccessException());
        Assert.Equal(2, CommandLine.Run(["gaers"], new Surroundings(TextWriter.Null, error)));
    }

    [Fact]
    public void An_interrupted_command_prints_nothing_writes_nothing_and_returns_130()
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        using var output = new StringWriter();
        using var error = new StringWriter();
        var world = new Surroundings(output, error) { Listen = () => new CancellationToken(canceled: true) };
        Assert.Equal(130, CommandLine.Run(["explain", "lost-supply", "-o", file], world));
        Assert.Equal(130, CommandLine.Run(["check", Path.Combine(Repository.Root, "circuits")], world));
        Assert.False(File.Exists(file));
        Assert.Equal("", output.ToString() + error);
    }

    /// <summary>Listening takes a thread, which costs a command that is soon done a noticeable part of its time.</summary>
    [Fact]
    public void One_small_file_is_checked_without_listening_for_interruption()
    {
        var listened = 0;
        using var output = new StringWriter();
        var world = new Surroundings(output, TextWriter.Null) { Listen = () => { listened++; return CancellationToken.None; } };
        var file = Path.Combine(Repository.Root, "circuits", "rill", "rill.yaml");
        Assert.Equal(0, CommandLine.Run(["check", file], world));
        Assert.Equal(0, listened);
        CommandLine.Run(["check", file, Path.Combine(Repository.Root, "circuits", "weir", "weir.yaml")], world);
        Assert.NotEqual(0, listened);
    }

    /// <summary>A result of more than one block could be cut where it is broken off.</summary>
    [Fact]
    public void A_large_result_listens_before_it_is_printed()
    {
        var listened = false;
        using var output = new StringWriter();
        var world = new Surroundings(output, TextWriter.Null) { Listen = () => { listened = true; return CancellationToken.None; } };
        Assert.Equal(0, CommandLine.Run(["explain"], world));
        Assert.True(output.ToString().Length > RowBlocks.Size);
        Assert.True(listened);
    }

    [Fact]
    public void Explain_lists_every_rule()
    {
        using var output = new StringWriter();
        Assert.Equal(0, CommandLine.Run(["explain"], new Surroundings(output, TextWriter.Null)));
        var lines = output.ToString().Split('\n');
        Assert.All(RuleCatalogue.All, rule => Assert.Contains(lines, line => line.StartsWith(rule.Name + " ", StringComparison.Ordinal)));
    }

    [Fact]
    public void Explain_tells_every_rule_within_the_width()
    {
        foreach (var rule in RuleCatalogue.All)
        {
            using var output = new StringWriter();
            Assert.Equal(0, CommandLine.Run(["explain", rule.Name], new Surroundings(output, TextWriter.Null)));
            Assert.StartsWith(rule.Name + " ", output.ToString());
        }
    }

    [Theory]
    [InlineData("xterm", null, true, true)]
    [InlineData("xterm", null, false, false)]
    [InlineData("xterm", "1", true, false)]
    [InlineData("xterm", "", true, true)]
    [InlineData("dumb", null, true, false)]
    public void Colour_is_for_terminals_that_want_it(string term, string? noColor, bool terminal, bool color)
    {
        var world = new Surroundings(TextWriter.Null, TextWriter.Null)
        {
            OutIsTerminal = terminal,
            Variable = name => name switch { "TERM" => term, "NO_COLOR" => noColor, _ => null },
        };
        Assert.Equal(color, world.Color);
    }

    [Theory]
    [InlineData("", "", "en_GB.UTF-8", true)]
    [InlineData("", "", "C.utf8", true)]
    [InlineData("", "", "", true)]
    [InlineData("", "", "en_GB.ISO-8859-1", false)]
    [InlineData("de_DE.ISO-8859-15", "", "en_GB.UTF-8", false)]
    [InlineData("", "en_GB.UTF-8", "en_GB.ISO-8859-1", true)]
    public void Box_characters_are_for_terminals_that_have_them(string all, string type, string lang, bool unicode)
    {
        var world = new Surroundings(TextWriter.Null, TextWriter.Null)
        {
            OutIsTerminal = true,
            Variable = name => name switch { "LC_ALL" => all, "LC_CTYPE" => type, "LANG" => lang, _ => null },
        };
        Assert.Equal(unicode, world.Unicode);
        Assert.True((world with { OutIsTerminal = false }).Unicode);
    }

    private sealed class FailingWriter(Exception fault) : StringWriter
    {
        public override void Write(string? value) => throw fault;
    }
}
