using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using Xunit;

namespace Circuits.Tests.Conventions;

/// <summary>Folders are the pipeline: a namespace knows those named here and no other. Read from the compiled code, bodies included.</summary>
public class ArrowTests
{
    private static readonly Architecture Code =
        new ArchLoader().LoadAssemblies(typeof(Circuits.Model.Unit).Assembly, typeof(Circuits.Cli.CommandLine).Assembly).Build();

    private static readonly Dictionary<string, string[]> Knows = new()
    {
        ["Quantities"] = [],
        ["Findings"] = ["Quantities"],
        ["Laws"] = [],
        ["Model"] = ["Quantities", "Findings"],
        ["Reading"] = ["Model", "Quantities", "Findings"],
        ["Stacking"] = ["Model", "Quantities", "Findings"],
        ["Networks"] = ["Laws", "Stacking", "Model", "Quantities", "Findings"],
        ["Solving"] = ["Laws", "Networks", "Stacking", "Model", "Quantities", "Findings"],
        ["Driveline"] = ["Model", "Quantities", "Findings"],
        ["Judging"] = ["Laws", "Reading", "Driveline", "Solving", "Networks", "Stacking", "Model", "Quantities", "Findings"],
        ["Studies"] = ["Laws", "Judging", "Driveline", "Solving", "Networks", "Stacking", "Model", "Quantities", "Findings"],
        ["Rendering"] = ["Studies", "Judging", "Driveline", "Solving", "Networks", "Stacking", "Model", "Quantities", "Findings"],
        ["Cli"] = ["Rendering", "Studies", "Judging", "Reading", "Model", "Quantities", "Findings"],
    };

    /// <summary>Libraries that one folder keeps to itself.</summary>
    private static readonly Dictionary<string, string[]> Libraries = new()
    {
        ["YamlDotNet"] = ["Reading"],
        ["QuikGraph"] = ["Networks", "Solving", "Driveline", "Judging"],
        ["Spectre"] = ["Rendering"],
        ["OxyPlot"] = ["Rendering"],
        ["System.CommandLine"] = ["Cli"],
        ["System.Text.Json"] = ["Rendering", "Cli"],
    };

    [Fact]
    public void Arrows_run_downwards_only()
    {
        var wrong =
            from type in Code.Types
            let home = Folder(type)
            where home is not null
            from dependency in type.Dependencies
            let to = Folder(dependency.Target)
            where to is not null && to != home && !Knows[home].Contains(to)
            select $"{type.FullName} ({home}) knows {dependency.Target.FullName} ({to})";
        var all = wrong.Distinct().ToList();
        Assert.True(all.Count == 0, string.Join("\n", all));
    }

    [Fact]
    public void Every_folder_is_known_here()
    {
        var folders = Code.Types.Select(Folder).OfType<string>().Distinct();
        Assert.Empty(folders.Except(Knows.Keys));
    }

    [Fact]
    public void Libraries_stay_where_they_belong()
    {
        var wrong =
            from type in Code.Types
            let home = Folder(type)
            where home is not null
            from dependency in type.Dependencies
            from library in Libraries
            where Namespace(dependency.Target).StartsWith(library.Key, StringComparison.Ordinal) && !library.Value.Contains(home)
            select $"{type.FullName} knows {dependency.Target.FullName}";
        var all = wrong.Distinct().ToList();
        Assert.True(all.Count == 0, string.Join("\n", all));
    }

    private static string? Folder(IType type)
    {
        var names = Namespace(type).Split('.');
        return names is ["Circuits", var folder, ..] && folder != "Tests" ? folder : null;
    }

    private static string Namespace(IType type) => type.Namespace?.FullName ?? "";
}
