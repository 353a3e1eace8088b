using System.Text.RegularExpressions;
using Xunit;

namespace Circuits.Tests.Conventions;

/// <summary>What a reviewer would nag about, in the source files.</summary>
public partial class SourceTests
{
    private const int LongestFile = 500;

    private static IEnumerable<string> Sources() => new[] { "src", "tests" }
        .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), "*", SearchOption.AllDirectories))
        .Where(file => !file.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj" or "TestResults"));

    [Fact]
    public void No_source_file_is_longer_than_two_screens_ten_times_over()
    {
        var code = Sources().Where(file => Path.GetExtension(file) == ".cs").ToList();
        Assert.NotEmpty(code);
        Assert.DoesNotContain(code, file => File.ReadLines(file).Count() > LongestFile);
    }

    [Fact]
    public void A_file_of_code_lies_in_the_folder_of_its_namespace()
    {
        var wrong =
            from file in Sources()
            where Path.GetExtension(file) == ".cs"
            let name = File.ReadLines(file).FirstOrDefault(line => line.StartsWith("namespace ", StringComparison.Ordinal))
            where name is not null
            let folders = Path.GetRelativePath(Repository.Root, Path.GetDirectoryName(file)!).Split(Path.DirectorySeparatorChar)[1..]
            let here = string.Join('.', folders)
            let said = name["namespace ".Length..].TrimEnd(';').Trim()
            where here != said && !here.StartsWith(said + ".", StringComparison.Ordinal)
            select $"{file}: {said}";
        Assert.Empty(wrong);
    }

    /// <summary>Files go one way in, which remembers what was read, and one way out, which refuses that. What the caller opened is a third thing.</summary>
    [Fact]
    public void Files_are_opened_where_they_are_looked_after_only()
    {
        var elsewhere =
            from file in Sources()
            where Path.GetExtension(file) == ".cs" && file.StartsWith(Path.Combine(Repository.Root, "src"), StringComparison.Ordinal)
            where Path.GetFileName(file) is not ("InputFiles.cs" or "OutputFiles.cs" or "StandardStreams.cs")
            from line in File.ReadLines(file)
            where OpensFile().IsMatch(line)
            select $"{file}: {line.Trim()}";
        Assert.Empty(elsewhere);
    }

    /// <summary>Completion writes nothing, so it alone may read without remembering.</summary>
    [Fact]
    public void What_commands_read_is_remembered()
    {
        var forgetful =
            from file in Sources()
            where file.StartsWith(Path.Combine(Repository.Root, "src", "Circuits.Cli"), StringComparison.Ordinal) && Path.GetFileName(file) != "Completes.cs"
            let text = File.ReadAllText(file)
            where text.Split("Reader.ReadFile(").Length > text.Split("Inputs)").Length
            select file;
        Assert.Empty(forgetful);
    }

    [GeneratedRegex(@"\bFile\.(Open|Read|Write|Create|Append|Copy|Replace|Move|Delete)|new FileStream|new Stream(Reader|Writer)\(\s*(path|file|name|"")")]
    private static partial Regex OpensFile();
}
