using Circuits.Cli;
using Xunit;

namespace Circuits.Tests.Cli;

/// <summary>What the README shows is what the program prints.</summary>
[Collection(nameof(WorkingDirectory))]
public class ReadmeTests
{
    private const string Prompt = "$ circuits ";

    [Fact]
    public void The_readme_shows_what_the_program_prints()
    {
        var shown = Examples().ToList();
        Assert.NotEmpty(shown);
        Assert.All(shown, example => Assert.Equal(example.Printed, Print(example.Command)));
    }

    [Fact]
    public void The_revision_that_the_readme_adds_changes_how_a_clutch_is_controlled()
    {
        var readme = File.ReadAllText(Path.Combine(Repository.Root, "README.md"));
        var added = readme.Split("```yaml\n")[1].Split("```")[0];
        var unit = File.ReadAllText(Path.Combine(Repository.Root, "circuits", "rill", "rill.yaml"));
        const string after = "marks: [slot from 6 to 7]}\n";
        Assert.Contains(after, unit, StringComparison.Ordinal);
        var folder = Directory.CreateTempSubdirectory("circuits-readme-").FullName;
        try
        {
            var path = Path.Combine(folder, "rill.yaml");
            File.WriteAllText(path, unit.Replace(after, after + added, StringComparison.Ordinal));
            var printed = Print($"gears {path} --fit body=2,plate=3");
            Assert.Contains("as-charted in every gear", printed, StringComparison.Ordinal);
            Assert.Contains("1.2 mm plate@13", printed, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static IEnumerable<(string Command, string Printed)> Examples()
    {
        var lines = File.ReadAllLines(Path.Combine(Repository.Root, "README.md"));
        for (var i = 0; i < lines.Length; i++)
        {
            if (!lines[i].StartsWith(Prompt, StringComparison.Ordinal)) continue;
            var printed = lines.Skip(i + 1).TakeWhile(line => line != "```");
            yield return (lines[i][Prompt.Length..], string.Concat(printed.Select(line => line + "\n")));
        }
    }

    private static string Print(string command)
    {
        var before = Directory.GetCurrentDirectory();
        using var output = new StringWriter();
        using var error = new StringWriter();
        try
        {
            Directory.SetCurrentDirectory(Repository.Root);
            CommandLine.Run([.. System.CommandLine.Parsing.CommandLineParser.SplitCommandLine(command)], new Surroundings(output, error));
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
        }

        Assert.Equal("", error.ToString());
        return output.ToString();
    }
}
