using System.Text;
using Circuits.Cli;
using Circuits.Reading;
using Xunit;

namespace Circuits.Tests.Cli;

public sealed class OutputFilesTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("circuits-output-").FullName;

    public void Dispose()
    {
        Rights(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void A_new_file_holds_the_text_and_nothing_is_left_beside_it()
    {
        Write(At("a.txt"), "text é\n");
        Assert.Equal("text é\n", File.ReadAllText(At("a.txt")));
        Assert.Equal([At("a.txt")], Directory.GetFiles(folder));
    }

    [Fact]
    public void What_a_link_leads_to_is_written_and_the_link_stays()
    {
        File.WriteAllText(At("real.txt"), "old");
        File.CreateSymbolicLink(At("link.txt"), At("real.txt"));
        Write(At("link.txt"), "new");
        Assert.Equal("new", File.ReadAllText(At("real.txt")));
        Assert.NotNull(new FileInfo(At("link.txt")).LinkTarget);
    }

    [Fact]
    public void An_existing_file_keeps_its_rights()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Rights are a matter of Unix.");
        File.WriteAllText(At("a.txt"), "old");
        Rights(At("a.txt"), UnixFileMode.UserRead | UnixFileMode.UserWrite);
        Write(At("a.txt"), "new");
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(At("a.txt")));
    }

    [Fact]
    public void A_device_is_written_to_and_not_replaced()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Devices are files on Unix.");
        Write("/dev/null", "gone");
        Assert.Equal(0, new FileInfo("/dev/null").Length);
        Assert.True(File.Exists("/dev/null"));
    }

    [Fact]
    public void A_folder_without_rights_is_one_clear_error()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess, "Rights do not bind this user.");
        File.WriteAllText(At("a.txt"), "old");
        Rights(folder, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        var error = Assert.Throws<UserError>(() => Write(At("a.txt"), "new"));
        Assert.Contains("no permission to write there", error.Message);
        Assert.Equal("old", File.ReadAllText(At("a.txt")));
    }

    [Fact]
    public void A_long_name_is_written_too()
    {
        Write(At(new string('x', 250)), "text");
        Assert.True(File.Exists(At(new string('x', 250))));
    }

    [Fact]
    public void A_read_only_file_is_kept()
    {
        File.WriteAllText(At("a.txt"), "old");
        File.SetAttributes(At("a.txt"), FileAttributes.ReadOnly);
        Assert.SkipUnless(File.GetAttributes(At("a.txt")).HasFlag(FileAttributes.ReadOnly), "Rights do not bind this user.");
        Assert.Contains("it is read-only", Assert.Throws<UserError>(() => Write(At("a.txt"), "new")).Message);
        Assert.Equal("old", File.ReadAllText(At("a.txt")));
    }

    [Theory]
    [InlineData("nowhere/a.txt", "its folder does not exist")]
    [InlineData("", "it is a folder")]
    [InlineData("circle", "its links lead in a circle")]
    [InlineData("plain/below", "its folder does not exist")]
    [InlineData("a\0b", "that is no path")]
    public void What_cannot_be_written_is_said_in_words(string name, string reason)
    {
        File.WriteAllText(At("plain"), "old");
        File.CreateSymbolicLink(At("circle"), "circle");
        Assert.EndsWith(": " + reason, Assert.Throws<UserError>(() => Write(folder + "/" + name, "text")).Message);
    }

    [Fact]
    public void A_new_file_below_dev_is_a_file_like_any_other()
    {
        Assert.SkipUnless(Directory.Exists("/dev/shm"), "There is no such folder here.");
        var path = $"/dev/shm/circuits-{Guid.NewGuid():N}";
        try
        {
            Write(path, "first, and longer");
            Write(path, "second");
            Assert.Equal("second", File.ReadAllText(path));
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public async Task A_pipe_is_written_to_and_not_replaced()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pipes are told from files on Linux.");
        Shell.Run($"mkfifo '{At("pipe")}'");
        var reader = Task.Run(() => File.ReadAllText(At("pipe")), TestContext.Current.CancellationToken);
        Write(At("pipe"), "through");
        Assert.Equal("through", await reader);
        Assert.Equal(FileKind.Pipe, FileStatus.Of(At("pipe")).Kind);
    }

    [Theory]
    [InlineData("input.yaml")]
    [InlineData("./sub/../input.yaml")]
    [InlineData("soft.yaml")]
    [InlineData("hard.yaml")]
    [InlineData("way/input.yaml")]
    public void A_file_that_was_read_is_refused_by_whatever_name(string name)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Hard links are told on Linux.");
        File.WriteAllText(At("input.yaml"), "old");
        Directory.CreateDirectory(At("sub"));
        File.CreateSymbolicLink(At("soft.yaml"), "input.yaml");
        Directory.CreateSymbolicLink(At("way"), ".");
        Shell.Run($"ln '{At("input.yaml")}' '{At("hard.yaml")}'");
        var inputs = new InputFiles();
        inputs.Head(At("input.yaml"), 10);
        using var outputs = new OutputFiles(inputs);
        var fault = Assert.Throws<UserError>(() => outputs.Add(folder + "/" + name, stream => stream.WriteByte(1)));
        Assert.EndsWith(name == "input.yaml" ? ": this command reads it" : $": it is {At("input.yaml")}, which this command reads", fault.Message);
        outputs.Commit();
        Assert.Equal("old", File.ReadAllText(At("input.yaml")));
    }

    [Fact]
    public void An_input_that_was_saved_anew_meanwhile_is_still_refused()
    {
        File.WriteAllText(At("input.yaml"), "old");
        var inputs = new InputFiles();
        inputs.Head(At("input.yaml"), 10);
        File.WriteAllText(At("saved"), "new");
        File.Move(At("saved"), At("input.yaml"), overwrite: true);
        using var outputs = new OutputFiles(inputs);
        Assert.Throws<UserError>(() => outputs.Add(At("input.yaml"), stream => stream.WriteByte(1)));
    }

    [Fact]
    public void Two_results_are_not_written_into_one_file()
    {
        File.WriteAllText(At("a.txt"), "old");
        File.CreateSymbolicLink(At("link.txt"), At("a.txt"));
        using var outputs = new OutputFiles(new InputFiles());
        outputs.Add(At("a.txt"), stream => stream.WriteByte(1));
        Assert.Contains("this command writes it already", Assert.Throws<UserError>(() => outputs.Add(At("link.txt"), stream => stream.WriteByte(2))).Message);
    }

    [Fact]
    public void Nothing_stands_in_its_place_before_all_are_committed()
    {
        File.WriteAllText(At("a.txt"), "old");
        using var outputs = new OutputFiles(new InputFiles());
        outputs.Add(At("a.txt"), Text("new"));
        outputs.Add(At("b.txt"), Text("new"));
        Assert.Equal("old", File.ReadAllText(At("a.txt")));
        Assert.False(File.Exists(At("b.txt")));
        outputs.Commit();
        Assert.Equal("new", File.ReadAllText(At("a.txt")));
        Assert.Equal([At("a.txt"), At("b.txt")], Directory.GetFiles(folder).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void When_one_cannot_be_put_in_its_place_the_others_are_put_back()
    {
        File.WriteAllText(At("a.txt"), "old");
        using (var outputs = new OutputFiles(new InputFiles()))
        {
            foreach (var name in (string[])["a.txt", "b.txt", "c.txt", "d.txt"]) outputs.Add(At(name), Text("new"));
            Directory.CreateDirectory(At("c.txt/full"));
            Assert.Contains("c.txt: ", Assert.Throws<UserError>(outputs.Commit).Message);
        }

        Assert.Equal("old", File.ReadAllText(At("a.txt")));
        Assert.Equal([At("a.txt")], Directory.GetFiles(folder));
    }

    [Fact]
    public void What_was_broken_off_leaves_all_as_it_was_and_writes_no_more()
    {
        File.WriteAllText(At("a.txt"), "old");
        var outputs = new OutputFiles(new InputFiles());
        outputs.Add(At("a.txt"), Text("new"));
        outputs.Dispose();
        outputs.Commit();
        Assert.Throws<OperationCanceledException>(() => outputs.Add(At("b.txt"), Text("new")));
        Assert.Equal("old", File.ReadAllText(At("a.txt")));
        Assert.Equal([At("a.txt")], Directory.GetFiles(folder));
    }

    private static Action<Stream> Text(string text) => stream => stream.Write(Encoding.UTF8.GetBytes(text));

    private static void Write(string path, string text)
    {
        using var outputs = new OutputFiles(new InputFiles());
        outputs.Add(path, Text(text));
        outputs.Commit();
    }

    private static void Rights(string path, UnixFileMode rights)
    {
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path, rights);
    }

    private string At(string name) => Path.Combine(folder, name);
}
