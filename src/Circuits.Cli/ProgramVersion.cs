using System.Reflection;

namespace Circuits.Cli;

/// <summary>Which build this is.</summary>
internal static class ProgramVersion
{
    /// <summary>The version, and behind a plus sign the commit that it was built from where the build knew it.</summary>
    public static string Full { get; } =
        typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";

    /// <summary>The version alone.</summary>
    public static string Number { get; } = Full.Split('+')[0];
}
