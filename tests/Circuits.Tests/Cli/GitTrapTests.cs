using Circuits.Cli;
using Xunit;

namespace Circuits.Tests.Cli;

/// <summary>
/// <c>check --changed-only</c> in a repository that somebody else handed over: nothing that it names is run. Each trap is first sprung by an
/// ordinary git command, so that a trap which does not work is no proof. Alone, since a command runs in a working directory of its own.
/// </summary>
[Collection(nameof(WorkingDirectory))]
public sealed class GitTrapTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("circuits-traps-").FullName;

    public GitTrapTests()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Traps are shell scripts.");
        File.WriteAllText(At("trap"), "#!/bin/sh\necho fired >>'" + At("fired") + "'\n");
        File.Copy(Path.Combine(Repository.Root, "src", "Circuits.Cli", "starter.yaml"), At("lone.yaml"));
        Do("chmod +x trap; git init -q -b main; printf 'fired\\n' >.gitignore; git add -A; git -c user.name=t -c user.email=t@localhost commit -q -m start");
        Do("echo '# edited' >>lone.yaml");
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("core.fsmonitor", "git config core.fsmonitor \"$PWD/trap\"; git update-index --fsmonitor", "git status")]
    [InlineData("include.path", "printf '[core]\\n\\tfsmonitor = %s/trap\\n' \"$PWD\" >.git/more; git config include.path more; git update-index --fsmonitor", "git status")]
    [InlineData("filter.*.clean", "git config filter.t.clean \"$PWD/trap\"; echo '*.yaml filter=t' >.git/info/attributes", "git diff")]
    [InlineData("filter.*.process", "git config filter.t.process \"$PWD/trap\"; git config filter.t.required true; echo '*.yaml filter=t' >.git/info/attributes", "git diff")]
    [InlineData("diff.external", "git config diff.external \"$PWD/trap\"", "git diff")]
    [InlineData("diff.*.textconv", "git config diff.t.textconv \"$PWD/trap\"; echo '*.yaml diff=t' >.git/info/attributes", "git diff")]
    [InlineData("diff.*.command", "git config diff.t.command \"$PWD/trap\"; echo '*.yaml diff=t' >.git/info/attributes", "git diff")]
    [InlineData("post-index-change", "cp trap .git/hooks/post-index-change", "touch .gitignore; git update-index --refresh")]
    [InlineData("core.hooksPath", "mkdir .git/more; cp trap .git/more/post-index-change; git config core.hooksPath .git/more", "touch .gitignore; git update-index --refresh")]
    [InlineData("a partial clone", LacksItsTree, "git ls-tree -r main")]
    [InlineData("a partial clone without the file", LacksItsFile, "git cat-file -p main:lone.yaml")]
    [InlineData("git in the folder", "cp trap git", "./git --version")]
    public void Nothing_that_a_repository_names_is_run(string what, string plant, string spring)
    {
        Do(plant);
        Do(spring + " >/dev/null 2>&1 </dev/null; true");
        Assert.True(File.Exists(At("fired")), $"the trap does not work: {what}");
        File.Delete(At("fired"));
        Do("touch lone.yaml .gitignore");
        var (exit, output, error) = Check("lone.yaml", "--changed-only", "main");
        Assert.False(File.Exists(At("fired")), what);
        if (what == "a partial clone") Assert.StartsWith("circuits: error usage: --changed-only: git cannot tell what changed", error);
        else Assert.Equal((0, ""), (exit, error));
        if (error.Length == 0) Assert.StartsWith("lone.yaml: ok: ", output);
        Assert.Equal(what == "a partial clone without the file", output.Contains("note not-compared: not compared with main: lone.yaml is not in this clone as it was", StringComparison.Ordinal));
    }

    /// <summary>The tree of the commit is missing; whoever asks for it fetches it, with the program that the configuration names.</summary>
    private const string LacksItsTree =
        "tree=$(git rev-parse 'main^{tree}'); rm -f \".git/objects/${tree:0:2}/${tree:2}\"; git config core.repositoryformatversion 1; git config extensions.partialClone origin; "
        + "git config remote.origin.url \"$PWD\"; git config remote.origin.promisor true; git config remote.origin.uploadpack \"$PWD/trap\"";

    /// <summary>The same of the file as it was; what cannot be read is not compared.</summary>
    private const string LacksItsFile =
        "tree=$(git rev-parse main:lone.yaml); rm -f \".git/objects/${tree:0:2}/${tree:2}\"; git config core.repositoryformatversion 1; git config extensions.partialClone origin; "
        + "git config remote.origin.url \"$PWD\"; git config remote.origin.promisor true; git config remote.origin.uploadpack \"$PWD/trap\"";

    [Theory]
    [InlineData("true", "")]
    [InlineData("false", "*.yaml text eol=crlf\n")]
    public void Other_line_ends_in_the_checkout_are_no_change(string autocrlf, string attributes)
    {
        Do($"git checkout -q lone.yaml; git config core.autocrlf {autocrlf}; printf '{attributes.Replace("\n", "\\n", StringComparison.Ordinal)}' >.git/info/attributes; rm lone.yaml; git checkout -q lone.yaml");
        Assert.Contains("\r\n", File.ReadAllText(At("lone.yaml")));
        Assert.Equal((0, "no circuit file changed since main\n", ""), Check(".", "--changed-only", "main"));
        Do("printf '# edited\\r\\n' >>lone.yaml");
        Assert.StartsWith("./lone.yaml: ok: ", Check(".", "--changed-only", "main").Out);
    }

    [Fact]
    public void What_a_filter_rewrites_is_rather_checked_than_left_out()
    {
        Do("git config filter.t.clean 'sed s/a/b/g'; echo '*.yaml filter=t' >.git/info/attributes; git add -A; git -c user.name=t -c user.email=t@localhost commit -q -m filtered");
        Assert.StartsWith("./lone.yaml: ok: ", Check(".", "--changed-only", "main").Out);
    }

    [Fact]
    public void Names_of_the_longer_kind_are_compared_too()
    {
        Do("rm -rf .git; git init -q -b main --object-format=sha256; git add -A; git -c user.name=t -c user.email=t@localhost commit -q -m start");
        Assert.Equal((0, "no circuit file changed since main\n", ""), Check(".", "--changed-only", "main"));
        Do("echo '# edited' >>lone.yaml");
        Assert.StartsWith("./lone.yaml: ok: ", Check(".", "--changed-only", "main").Out);
    }

    [Fact]
    public void A_link_counts_as_changed_when_what_it_leads_to_has()
    {
        Do("git checkout -q lone.yaml; mkdir far; git mv lone.yaml far/real.yml; ln -s far/real.yml link.yaml; git add -A; git -c user.name=t -c user.email=t@localhost commit -q -m link");
        Assert.Equal("no circuit file changed since main\n", Check("link.yaml", "--changed-only", "main").Out);
        Do("echo '# edited' >>far/real.yml");
        Assert.StartsWith("link.yaml: ok: ", Check("link.yaml", "--changed-only", "main").Out);
    }

    [Fact]
    public void What_is_ignored_and_yet_staged_counts()
    {
        Do("git checkout -q lone.yaml; echo 'own*' >>.gitignore; cp lone.yaml own.yaml; mkdir ownfolder; cp lone.yaml ownfolder/a.yaml");
        Assert.Equal("no circuit file changed since main\n", Check(".", "--changed-only", "main").Out);
        Do("git add -f own.yaml");
        Assert.StartsWith("./own.yaml: ok: ", Check(".", "--changed-only", "main").Out);
    }

    private void Do(string command)
    {
        var (exit, _, error) = Shell.Run(command, folder);
        Assert.True(exit == 0, error);
    }

    private string At(string name) => Path.Combine(folder, name);

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
