using System.Collections.Immutable;
using System.Reflection;
using System.Text.RegularExpressions;
using Circuits.Model;
using Xunit;

namespace Circuits.Tests.Conventions;

/// <summary>Every stage that treats element kinds treats all of them, and a reader finds each by its name. What the compiler does not hold is held here.</summary>
public partial class ElementKindTests
{
    private static readonly string[] Kinds = [.. typeof(IElementKinds<>).GetMethods().Select(method => method.Name)];

    [Fact]
    public void Every_list_of_elements_that_a_revision_has_is_a_kind()
    {
        var lists = typeof(Revision).GetProperties().Where(property => property.PropertyType.IsGenericType
            && property.PropertyType.GetGenericTypeDefinition() == typeof(ImmutableArray<>) && property.PropertyType != typeof(ImmutableArray<NameUse>));
        Assert.Equal(Kinds.Order(), lists.Select(property => property.Name).Order());
    }

    [Fact]
    public void Going_through_the_kinds_leaves_none_out()
    {
        var calls = new List<string>();
        DispatchProxy.Create<IElementKinds<List<string>>, Recorder>().Each(calls);
        Assert.Equal(Kinds, calls);
    }

    /// <summary>Notes which of its methods are called.</summary>
    public class Recorder : DispatchProxy
    {
        protected override object? Invoke(MethodInfo? targetMethod, object?[]? args)
        {
            ((List<string>)args![0]!).Add(targetMethod!.Name);
            return null;
        }
    }

    /// <summary>The classes that treat kinds: where they stand, and what they say.</summary>
    private static IEnumerable<(string Folder, string Name)> Stages() =>
        from file in Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories)
        where !file.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj")
        from Match match in StageClass().Matches(File.ReadAllText(file))
        select (Path.GetDirectoryName(file)!, match.Groups["name"].Value);

    [Fact]
    public void Stages_are_found() => Assert.Contains(Stages(), stage => stage.Name == "ElementDrafter");

    [Fact]
    public void What_a_stage_does_with_a_kind_stands_in_the_file_of_its_name()
    {
        var wrong =
            from stage in Stages()
            from kind in Kinds
            let member = new Regex($@"^    (public void |void IElementKinds<[^>]*>\.){kind}\((?:[^()]|\([^()]*\))*\)(?<rest>.*)$", RegexOptions.Multiline)
            let own = Path.Combine(stage.Folder, kind + ".cs")
            let inOwn = File.Exists(own) && BodiesOf(own, stage.Name).Any(member.IsMatch)
            let said = Directory.EnumerateFiles(stage.Folder, "*.cs").Where(file => file != own).SelectMany(file => BodiesOf(file, stage.Name))
                .Select(text => member.Match(text)).Where(match => match.Success).ToList()
            where !inOwn && !said.Exists(match => OneLine().IsMatch(match.Groups["rest"].Value))
            select $"{Path.GetFileName(stage.Folder)}: {stage.Name} treats {kind} elsewhere than in {kind}.cs, in more than one line";
        Assert.Empty(wrong);
    }

    /// <summary>The parts of a class that stand in a file.</summary>
    private static IEnumerable<string> BodiesOf(string file, string name)
    {
        var text = File.ReadAllText(file);
        foreach (Match match in Regex.Matches(text, $@"^[a-z ]*\bclass {name}\b[\s\S]*?^\}}", RegexOptions.Multiline)) yield return match.Value;
    }

    [GeneratedRegex(@"\bclass (?<name>\w+)[^\n{]*:[^\n{]*\bIElementKinds<")]
    private static partial Regex StageClass();

    // Nothing to do, with the reason; or one expression.
    [GeneratedRegex(@"^ (\{ \} // \w.*|=> .*;( // .*)?)$")]
    private static partial Regex OneLine();
}
