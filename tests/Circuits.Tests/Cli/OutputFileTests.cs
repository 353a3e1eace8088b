using Circuits.Cli;
using Xunit;

namespace Circuits.Tests.Cli;

public sealed class OutputFileTests : IDisposable
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
        OutputFile.Write(At("a.txt"), "text é\n");
        Assert.Equal("text é\n", File.ReadAllText(At("a.txt")));
        Assert.Equal([At("a.txt")], Directory.GetFiles(folder));
    }

    [Fact]
    public void What_a_link_leads_to_is_written_and_the_link_stays()
    {
        File.WriteAllText(At("real.txt"), "old");
        File.CreateSymbolicLink(At("link.txt"), At("real.txt"));
        OutputFile.Write(At("link.txt"), "new");
        Assert.Equal("new", File.ReadAllText(At("real.txt")));
        Assert.NotNull(new FileInfo(At("link.txt")).LinkTarget);
    }

    [Fact]
    public void An_existing_file_keeps_its_rights()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Rights are a matter of Unix.");
        File.WriteAllText(At("a.txt"), "old");
        Rights(At("a.txt"), UnixFileMode.UserRead | UnixFileMode.UserWrite);
        OutputFile.Write(At("a.txt"), "new");
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(At("a.txt")));
    }

    [Fact]
    public void A_device_is_written_to_and_not_replaced()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Devices are files on Unix.");
        OutputFile.Write("/dev/null", "gone");
        Assert.Equal(0, new FileInfo("/dev/null").Length);
        Assert.True(File.Exists("/dev/null"));
    }

    [Fact]
    public void A_folder_without_rights_is_one_clear_error()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess, "Rights do not bind this user.");
        File.WriteAllText(At("a.txt"), "old");
        Rights(folder, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        var error = Assert.Throws<UserError>(() => OutputFile.Write(At("a.txt"), "new"));
        Assert.Contains("no permission to write there", error.Message);
        Assert.Equal("old", File.ReadAllText(At("a.txt")));
    }

    [Fact]
    public void A_long_name_is_written_too()
    {
        OutputFile.Write(At(new string('x', 250)), "text");
        Assert.True(File.Exists(At(new string('x', 250))));
    }

    [Fact]
    public void A_read_only_file_is_kept()
    {
        File.WriteAllText(At("a.txt"), "old");
        File.SetAttributes(At("a.txt"), FileAttributes.ReadOnly);
        Assert.SkipUnless(File.GetAttributes(At("a.txt")).HasFlag(FileAttributes.ReadOnly), "Rights do not bind this user.");
        Assert.Contains("it is read-only", Assert.Throws<UserError>(() => OutputFile.Write(At("a.txt"), "new")).Message);
        Assert.Equal("old", File.ReadAllText(At("a.txt")));
    }

    [Theory]
    [InlineData("nowhere/a.txt", "its folder does not exist")]
    [InlineData("", "it is a folder")]
    [InlineData("a\0b", "that is no path")]
    public void What_cannot_be_written_is_said_in_words(string name, string reason) =>
        Assert.Contains(reason, Assert.Throws<UserError>(() => OutputFile.Write(folder + "/" + name, "text")).Message);

    private static void Rights(string path, UnixFileMode rights)
    {
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path, rights);
    }

    private string At(string name) => Path.Combine(folder, name);
}
