using System.Net.Sockets;
using Circuits.Reading;
using Circuits.Tests.Cli;
using Xunit;

namespace Circuits.Tests.Reading;

/// <summary>What is no ordinary file is refused at once: a pipe may never end, and opening it waits for its other end.</summary>
public sealed class SpecialFileTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("circuits-special-").FullName;

    public SpecialFileTests() => Assert.SkipUnless(OperatingSystem.IsLinux(), "Kinds of files are told on Linux.");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Kinds_are_told_without_opening()
    {
        Shell.Run("mkfifo pipe; touch file; ln -s pipe link; ln -s nowhere lost; ln -s circle circle", folder);
        using var socket = Listening();
        Assert.Equal(FileKind.Pipe, Kind("pipe"));
        Assert.Equal(FileKind.Pipe, Kind("link"));
        Assert.Equal(FileKind.Regular, Kind("file"));
        Assert.Equal(FileKind.Folder, Kind("."));
        Assert.Equal(FileKind.Socket, Kind("socket"));
        Assert.Equal(FileKind.Missing, Kind("lost"));
        Assert.Equal(FileKind.Missing, Kind("file/below"));
        Assert.Equal(FileKind.Unknown, Kind("circle"));
        Assert.Equal(FileKind.CharacterDevice, FileStatus.Of("/dev/null").Kind);
    }

    [Theory]
    [InlineData("pipe", "is a pipe, no ordinary file")]
    [InlineData("socket", "is a socket, no ordinary file")]
    [InlineData("folder.yaml", "is a folder")]
    [InlineData("lost", "does not exist")]
    [InlineData("circle", "cannot be read")]
    [InlineData("zero", "is a device, no ordinary file")]
    public void A_unit_and_a_part_that_are_no_file_are_refused(string name, string reason)
    {
        Shell.Run("mkfifo pipe; mkdir folder.yaml; ln -s nowhere lost; ln -s circle circle; ln -s /dev/zero zero", folder);
        using var socket = Listening();
        Assert.EndsWith($"{name} {reason}", Assert.Single(CircuitReader.ReadFile(At(name)).Findings).Words());
        Assert.EndsWith($"{name} {reason}", Assert.Single(ChangeSetReader.ReadFile(At(name)).Findings).Words());
        if (name is "zero" or "circle") return;
        File.WriteAllText(At("unit.yaml"), $"format: 1\nunit: Small\ndata: invented\nparts:\n  drum: {name}\ngears:\n  N: {{apply: []}}\n");
        Assert.EndsWith($"{name} {reason}", Assert.Single(CircuitReader.ReadFile(At("unit.yaml")).Findings).Words());
    }

    /// <summary>The file's length is asked once; what comes after that is not waited for.</summary>
    [Fact]
    public void A_file_is_read_up_to_the_limit()
    {
        File.WriteAllText(At("long"), new string('x', 1000));
        Assert.Equal(10, new InputFiles().Head(At("long"), 10).Length);
        Assert.Equal(1000, new InputFiles().Head(At("long"), 1000).Length);
        Assert.Equal(1000, new InputFiles().Head(At("long"), 5000).Length);
    }

    [Fact]
    public void All_files_of_a_unit_are_remembered()
    {
        var inputs = new InputFiles();
        var unit = Path.Combine(Repository.Root, "circuits", "weir", "weir.yaml");
        var read = CircuitReader.ReadFile(unit, files: inputs);
        Assert.True(read.Files.Length > 1);
        Assert.All(read.Files, file => Assert.Equal(file, inputs.NameOf(Path.GetRelativePath(Directory.GetCurrentDirectory(), file))));
        Assert.Null(inputs.NameOf(At("other")));
    }

    private Socket Listening()
    {
        var socket = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        socket.Bind(new UnixDomainSocketEndPoint(At("socket")));
        return socket;
    }

    private FileKind Kind(string name) => FileStatus.Of(At(name)).Kind;

    private string At(string name) => Path.Combine(folder, name);
}
