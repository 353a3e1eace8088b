using System.Diagnostics;
using Circuits.Cli;
using Xunit;

namespace Circuits.Tests.Cli;

/// <summary><c>check --changed-only</c> in real repositories. Alone, since a command runs in a working directory of its own.</summary>
[Collection(nameof(WorkingDirectory))]
public sealed class ChangedOnlyTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("circuits-changed-").FullName;

    /// <summary>On branch <c>main</c>: <c>lone.yaml</c>, and <c>units/bench.yaml</c> with a part of its own file.</summary>
    public ChangedOnlyTests()
    {
        var units = Path.Combine(CommandCase.Root, "..", "units");
        foreach (var file in (string[])["units/bench.yaml", "units/parts/plate.yaml"])
        {
            Directory.CreateDirectory(Path.GetDirectoryName(At(file))!);
            File.Copy(Path.Combine(units, "..", file), At(file));
        }

        File.Copy(Path.Combine(Repository.Root, "src", "Circuits.Cli", "starter.yaml"), At("lone.yaml"));
        Git("init", "-q", "-b", "main");
        Commit("start");
        Git("checkout", "-q", "-b", "work");
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Nothing_changed_is_said_and_fine()
    {
        Assert.Equal((0, "no circuit file changed since main\n", ""), Check(".", "--changed-only", "main"));
        Assert.Equal((0, "[]\n", ""), Check(".", "--changed-only", "main", "--format", "json"));
        Assert.Equal((0, "", ""), Check(".", "--changed-only", "main", "--format", "annotations"));
    }

    [Fact]
    public void A_part_file_selects_the_unit_that_uses_it()
    {
        Edit("units/parts/plate.yaml");
        Assert.Equal(["./units/bench.yaml"], Checked("main"));
        Commit("edit");
        Assert.Equal(["./units/bench.yaml"], Checked("main"));
        Assert.Empty(Checked("HEAD"));
    }

    [Fact]
    public void What_is_staged_or_new_counts_and_what_is_ignored_does_not()
    {
        Edit("lone.yaml");
        Git("add", "lone.yaml");
        File.Copy(At("units/bench.yaml"), At("units/new bench é.yaml"));
        Assert.Equal(["./lone.yaml", "./units/new bench é.yaml"], Checked("HEAD"));
        File.WriteAllText(At(".gitignore"), "new*\n");
        Assert.Equal(["./lone.yaml"], Checked("HEAD"));
    }

    [Fact]
    public void A_renamed_file_counts_under_its_new_name()
    {
        Git("mv", "lone.yaml", "alone.yaml");
        Commit("rename");
        Assert.Equal(["./alone.yaml"], Checked("main"));
    }

    [Fact]
    public void A_part_file_that_is_gone_selects_its_unit_and_the_check_says_so()
    {
        Directory.Delete(At("units/parts"), recursive: true);
        var (exit, output, _) = Check(".", "--changed-only", "main");
        Assert.Equal(2, exit);
        Assert.Contains("error unreadable-file", output);
        Assert.DoesNotContain("lone.yaml", output);
    }

    [Fact]
    public void What_others_did_on_the_base_meanwhile_does_not_count()
    {
        Edit("units/bench.yaml");
        Commit("mine");
        Git("checkout", "-q", "main");
        Edit("lone.yaml");
        Commit("theirs");
        Git("checkout", "-q", "work");
        Assert.Equal(["./units/bench.yaml"], Checked("main"));
    }

    [Fact]
    public void Findings_of_files_that_did_not_change_are_left_out()
    {
        File.AppendAllText(At("lone.yaml"), "nonsense: 1\n");
        Commit("a fault");
        Edit("units/bench.yaml");
        Assert.Equal(2, Check(".").Exit);
        var (exit, output, _) = Check(".", "--changed-only", "HEAD");
        Assert.DoesNotContain("lone.yaml", output);
        Assert.Equal(0, exit);
    }

    [Fact]
    public void A_named_file_that_is_not_there_is_an_error_whatever_git_says()
    {
        var (exit, output, _) = Check("gone.yaml", "--changed-only", "main");
        Assert.Equal(2, exit);
        Assert.Contains("gone.yaml does not exist", output);
    }

    [Theory]
    [InlineData("mian", "'mian' names no branch, tag or commit in ", "Did you mean main?")]
    [InlineData("--all", "'--all' names no branch, tag or commit in ", "git branch --all lists branches; one on a server must be fetched first.")]
    [InlineData("HEAD:lone.yaml", "'HEAD:lone.yaml' names no branch, tag or commit in ", null)]
    public void A_base_that_is_not_there_is_a_clear_error(string since, string message, string? help)
    {
        var (exit, output, error) = Check(".", $"--changed-only={since}");
        Assert.Equal((2, ""), (exit, output));
        Assert.StartsWith("circuits: error usage: --changed-only: " + message, error);
        Assert.Equal(2, error.Count(letter => letter == '\n'));
        if (help is not null) Assert.Contains("  help: " + help, error);
    }

    [Fact]
    public void A_history_without_a_common_ancestor_is_a_clear_error()
    {
        Git("checkout", "-q", "--orphan", "other");
        Commit("alone");
        var (exit, _, error) = Check(".", "--changed-only", "main");
        Assert.Equal(2, exit);
        Assert.Contains("main and what is checked out have no common ancestor", error);
        Assert.Contains("  help: Was the history fetched only in part?", error);
    }

    [Fact]
    public void Outside_a_work_tree_is_a_clear_error()
    {
        Directory.Delete(At(".git"), recursive: true);
        var (exit, _, error) = Check(".", "--changed-only", "main");
        Assert.Equal(2, exit);
        Assert.Contains("is in no git work tree", error);
        Assert.Contains("  help: git says: ", error);
    }

    [Fact]
    public void Without_git_is_a_clear_error()
    {
        var path = Environment.GetEnvironmentVariable("PATH");
        try
        {
            Environment.SetEnvironmentVariable("PATH", At("units"));
            var (exit, _, error) = Check(".", "--changed-only", "main");
            Assert.Equal(2, exit);
            Assert.StartsWith("circuits: error usage: --changed-only needs git, which cannot be run\n", error);
        }
        finally
        {
            Environment.SetEnvironmentVariable("PATH", path);
        }
    }

    // Without a way from line, reverse is lost in the matched set; of the mix it was lost before, as its plate is blank there.
    [Fact]
    public void Verdicts_that_an_edit_changed_are_told()
    {
        Replace("lone.yaml", "R: [[line, reverse], [drive, exhaust]]", "R: [[drive, exhaust]]");
        var (exit, output, _) = Check(".", "--changed-only", "main");
        Assert.Equal(1, exit);
        Assert.Equal(
            ["R: as-charted at main, now lost [first, gear R]"],
            Told(output, "verdict-changed").Where(line => !line.Contains(" at idle", StringComparison.Ordinal) && !line.Contains(" at cold", StringComparison.Ordinal)));
        Assert.Contains("N-R at idle-hot: good at main, now never-holds [first, gear R]", Told(output, "verdict-changed"));
        Assert.Contains(" verdicts changed since main, ", output.Split('\n')[0]);

        // With the gears' ways exchanged, so is what the mix has.
        Replace("lone.yaml", "R: [[drive, exhaust]]", "R: [[line, reverse], [drive, exhaust]]");
        Replace("lone.yaml", "openings: [{at: 2, hole: null}]", "openings: [{at: 1, hole: null}]");
        Assert.Contains("R: lost at main, now as-charted [plate=2, gear R]", Told(Check(".", "--changed-only", "main").Out, "verdict-changed"));
    }

    [Fact]
    public void An_edit_that_changes_no_verdict_is_said_to()
    {
        Edit("lone.yaml");
        Assert.Contains(", no verdict changed since main\n", Check(".", "--changed-only", "main").Out.Replace(", 1 note", "", StringComparison.Ordinal).Replace(", 2 notes", "", StringComparison.Ordinal));
        Assert.Contains("\"edit\": {\n      \"since\": \"main\",\n      \"verdictsChanged\": 0\n    }", Check(".", "--changed-only", "main", "--format", "json").Out);
        Assert.Contains("\"edit\": null", Check(".", "--format", "json").Out);
    }

    [Fact]
    public void A_part_is_compared_as_it_was_too()
    {
        Replace("units/parts/plate.yaml", "      - {at: 2, hole: 3.0 mm}\n", "");
        Assert.NotEmpty(Told(Check("units/bench.yaml", "--changed-only", "main").Out, "verdict-changed"));
    }

    [Theory]
    [InlineData("alone.yaml", "not compared with main: alone.yaml did not exist")]
    [InlineData("bad.yaml", "not compared with main: ")]
    public void What_cannot_be_compared_is_said_to(string file, string expected)
    {
        Git("checkout", "-q", "main");
        File.WriteAllText(At("bad.yaml"), "format: 1\nunit: [\n");
        Commit("bad");
        Git("checkout", "-q", "work");
        Git("merge", "-q", "main");
        File.Copy(At("lone.yaml"), At(file), overwrite: true);
        var (exit, output, _) = Check(file, "--changed-only", "main");
        Assert.Equal(0, exit);
        Assert.StartsWith(expected, Assert.Single(Told(output, "not-compared")));
        Assert.DoesNotContain("changed since", output);
    }

    // A hook is started with git's own settings for the repository that runs it.
    [Fact]
    public void In_a_hook_the_files_still_say_which_repository_is_meant()
    {
        Edit("lone.yaml");
        try
        {
            Environment.SetEnvironmentVariable("GIT_DIR", At("nowhere"));
            Environment.SetEnvironmentVariable("GIT_INDEX_FILE", At("nowhere/index"));
            Assert.Equal(["./lone.yaml"], Checked("main"));
        }
        finally
        {
            Environment.SetEnvironmentVariable("GIT_DIR", null);
            Environment.SetEnvironmentVariable("GIT_INDEX_FILE", null);
        }
    }

    private string At(string file) => Path.Combine(folder, file);

    private void Replace(string file, string old, string by)
    {
        var text = File.ReadAllText(At(file));
        Assert.Contains(old, text);
        File.WriteAllText(At(file), text.Replace(old, by, StringComparison.Ordinal));
    }

    /// <summary>What findings of a rule say.</summary>
    private static List<string> Told(string output, string rule) =>
        output.Split('\n').Where(line => line.Contains($" note {rule}: ", StringComparison.Ordinal)).Select(line => line.Split($" note {rule}: ")[1]).ToList();

    private void Edit(string file) => File.AppendAllText(At(file), "# edited\n");

    private void Commit(string message)
    {
        Git("add", "-A");
        Git("-c", "user.name=t", "-c", "user.email=t@localhost", "-c", "commit.gpgsign=false", "commit", "-q", "--no-verify", "-m", message);
    }

    private void Git(params string[] args)
    {
        using var git = Process.Start(new ProcessStartInfo("git", args) { WorkingDirectory = folder })!;
        git.WaitForExit();
        Assert.Equal(0, git.ExitCode);
    }

    /// <summary>The units that were checked.</summary>
    private List<string> Checked(string since)
    {
        var (exit, output, error) = Check(".", "--changed-only", since);
        Assert.Equal((0, ""), (exit, error));
        return output.Split('\n').Where(line => line.Contains(": ok: ", StringComparison.Ordinal)).Select(line => line.Split(": ok: ")[0]).ToList();
    }

    private (int Exit, string Out, string Error) Check(params string[] args)
    {
        var before = Directory.GetCurrentDirectory();
        using var output = new StringWriter();
        using var error = new StringWriter();
        try
        {
            Directory.SetCurrentDirectory(folder);
            return (CommandLine.Run(["check", .. args], new Surroundings(output, error)), output.ToString(), error.ToString());
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
        }
    }
}
