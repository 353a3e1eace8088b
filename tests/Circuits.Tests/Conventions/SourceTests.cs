using Xunit;

namespace Circuits.Tests.Conventions;

/// <summary>What a reviewer would nag about, in the source files.</summary>
public class SourceTests
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
}
