using System.Diagnostics;
using Xunit;

namespace Circuits.Tests.Cli;

/// <summary>The program as a process: what it does with signals, closed streams and pipes.</summary>
public sealed class ProcessTests : IDisposable
{
    private const string Rill = "circuits/rill/rill.yaml";

    private readonly string folder = Directory.CreateTempSubdirectory("circuits-process-").FullName;

    public ProcessTests() => Assert.SkipUnless(OperatingSystem.IsLinux(), "Signals and pipes are those of Linux.");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("INT", 130)]
    [InlineData("TERM", 143)]
    [InlineData("HUP", 129)]
    public void A_signal_leaves_what_was_there_and_nothing_beside_it(string signal, int exit)
    {
        File.WriteAllText(At("rows.jsonl"), "old");

        // What starts the tests may have its programs ignore interrupts, as a shell does of those that it puts into the background.
        using var program = Shell.Start($"exec env --default-signal {Shell.Program} matrix '{Repository.Root}/circuits/firth/firth.yaml' --format jsonl -o rows.jsonl", folder);
        WaitFor(() => Directory.GetFiles(folder).Length > 1);
        Assert.Equal(0, Shell.Run($"kill -{signal} {program.Id}").Exit);
        Assert.True(program.WaitForExit(TimeSpan.FromSeconds(60)));
        Assert.Equal(exit, program.ExitCode);
        Assert.Equal([At("rows.jsonl")], Directory.GetFiles(folder));
        Assert.Equal("old", File.ReadAllText(At("rows.jsonl")));
    }

    /// <summary>A reader that never comes keeps the program from noticing the signal.</summary>
    [Fact]
    public void A_signal_ends_a_program_that_waits_for_a_reader()
    {
        Shell.Run("mkfifo pipe", folder);
        using var program = Shell.Start($"exec {Shell.Program} matrix '{Repository.Root}/{Rill}' --plot plot.svg --format json -o pipe", folder);
        var since = Stopwatch.StartNew();
        WaitFor(() => since.Elapsed > TimeSpan.FromSeconds(3));
        Shell.Run($"kill -TERM {program.Id}");
        Assert.True(program.WaitForExit(TimeSpan.FromSeconds(60)));
        Assert.Equal(143, program.ExitCode);
        Assert.Equal([At("pipe")], Directory.GetFiles(folder));
    }

    [Fact]
    public void What_was_started_to_outlive_its_terminal_does()
    {
        using var program = Shell.Start($"trap '' HUP; exec {Shell.Program} matrix '{Repository.Root}/circuits/firth/firth.yaml' --fit lower=1,balls=1 --format jsonl -o rows.jsonl", folder);
        WaitFor(() => Directory.GetFiles(folder).Length > 0);
        Shell.Run($"kill -HUP {program.Id}");
        Assert.True(program.WaitForExit(TimeSpan.FromSeconds(120)));
        Assert.Equal(0, program.ExitCode);
        Assert.Equal([At("rows.jsonl")], Directory.GetFiles(folder));
    }

    [Theory]
    [InlineData("schema >&-", 2, "", "circuits: error output: cannot write the result: standard output is closed\n")]
    [InlineData("schema >/dev/full", 2, "", "circuits: error output: cannot write the result: the disk is full\n")]
    [InlineData("no-such-verb 2>&-", 2, "", "")]
    [InlineData("no-such-verb >&- 2>&-", 2, "", "")]
    [InlineData("explain lost-supply <&- >&- 2>&- -o result; cat result | head -c 11", 0, "lost-supply", "")]
    [InlineData("explain lost-supply <&- | head -c 11", 0, "lost-supply", "")]
    [InlineData("check /dev/zero >/dev/null", 2, "", "")]
    [InlineData("gears /dev/stdin </dev/zero", 2, "", "/dev/stdin: error unreadable-file: /dev/stdin is a device, no ordinary file\n  help: Write what it gives into a file, and name that.\n")]
    public void Streams_that_are_closed_full_or_endless_are_told_in_one_sentence(string words, int exit, string output, string error) =>
        Assert.Equal((exit, output, error), Shell.Run($"{Shell.Program} {words}", folder));

    [Fact]
    public void A_result_is_added_to_what_the_caller_has_opened()
    {
        File.WriteAllText(At("log"), "before\n");
        Assert.Equal(0, Shell.Run($"{Shell.Program} explain lost-supply -o /dev/stdout >>log; {Shell.Program} explain lost-supply -o /dev/fd/3 3>>log", folder).Exit);
        var lines = File.ReadAllLines(At("log"));
        Assert.Equal("before", lines[0]);
        Assert.Equal(2, lines.Count(line => line.StartsWith("lost-supply", StringComparison.Ordinal)));
    }

    private static void WaitFor(Func<bool> what)
    {
        for (var since = Stopwatch.StartNew(); !what(); Thread.Sleep(2)) Assert.True(since.Elapsed < TimeSpan.FromSeconds(60), "nothing happened");
    }

    private string At(string name) => Path.Combine(folder, name);
}
