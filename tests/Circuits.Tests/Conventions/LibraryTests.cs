using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Runtime.CompilerServices;
using Xunit;

namespace Circuits.Tests.Conventions;

/// <summary>What a reviewer would nag about, in the library's compiled code.</summary>
public class LibraryTests
{
    private static readonly Assembly Library = typeof(Model.Unit).Assembly;

    /// <summary>The world outside: a study must give the same answer whenever and wherever it runs.</summary>
    private static readonly string[] Outside =
    [
        "System.Console.", "System.Environment.Get", "System.Environment.Exit", "System.Environment.get_CurrentDirectory",
        "System.Environment.get_NewLine", "System.Environment.get_TickCount", "System.Environment.get_ProcessorCount", "System.DateTime.get_Now", "System.DateTime.get_UtcNow",
        "System.DateTimeOffset.get_", "System.Diagnostics.Stopwatch.", "System.Random.", "System.Guid.NewGuid",
        "System.Threading.Thread.", "System.Globalization.CultureInfo.get_Current", "System.IO.Directory.GetCurrentDirectory",
        "System.TimeProvider.get_System", "Spectre.Console.AnsiConsole.get_",
    ];

    [Fact]
    public void The_library_looks_at_no_console_clock_culture_or_chance() =>
        Assert.DoesNotContain(MembersReferred(), member => Outside.Any(name => member.StartsWith(name, StringComparison.Ordinal)));

    // The test above can only fail if members are found at all.
    [Fact]
    public void Members_referred_to_are_found() => Assert.Contains("System.String.Concat", MembersReferred());

    [Fact]
    public void Nothing_static_changes()
    {
        var fields =
            from type in Library.GetTypes()
            where !IsGenerated(type)
            from field in type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly)
            where !field.IsLiteral && !field.Name.Contains("<>", StringComparison.Ordinal) && !field.Name.Contains("__", StringComparison.Ordinal)
            where !field.IsInitOnly || IsMutable(field.FieldType)
            select $"{type.FullName}.{field.Name}: {field.FieldType.Name}";
        Assert.Empty(fields);
    }

    [Fact]
    public void A_class_is_sealed_abstract_or_static() =>
        Assert.Empty(Library.GetTypes().Where(type => type.IsClass && !type.IsSealed && !type.IsAbstract && !IsGenerated(type)).Select(type => type.FullName));

    [Fact]
    public void Public_types_show_no_fields_and_no_setters()
    {
        var members =
            from type in Library.GetExportedTypes()
            from member in type.GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            where member is FieldInfo { IsInitOnly: false, IsSpecialName: false }
                || (member is PropertyInfo { SetMethod: { IsPublic: true } setter } && !IsInit(setter))
            select $"{type.FullName}.{member.Name}";
        Assert.Empty(members);
    }

    private static bool IsInit(MethodInfo setter) =>
        setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private static bool IsGenerated(Type type) =>
        type.GetCustomAttribute<CompilerGeneratedAttribute>() is not null || type.Name.Contains('<', StringComparison.Ordinal)
        || (type.DeclaringType is { } outer && IsGenerated(outer)) || type.Namespace?.StartsWith("Circuits", StringComparison.Ordinal) != true;

    private static bool IsMutable(Type type) => type.IsGenericType
        && type.GetGenericTypeDefinition() is var open
        && (open == typeof(List<>) || open == typeof(Dictionary<,>) || open == typeof(HashSet<>));

    private static HashSet<string> MembersReferred()
    {
        using var file = new PEReader(File.OpenRead(Library.Location));
        var metadata = file.GetMetadataReader();
        var members = new HashSet<string>();
        foreach (var handle in metadata.MemberReferences)
        {
            var member = metadata.GetMemberReference(handle);
            if (member.Parent.Kind != HandleKind.TypeReference) continue;
            var type = metadata.GetTypeReference((TypeReferenceHandle)member.Parent);
            members.Add($"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}.{metadata.GetString(member.Name)}");
        }

        return members;
    }
}
