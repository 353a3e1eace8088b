using Circuits.Reading;

namespace Circuits.Cli;

/// <summary>
/// The files that changed since a branch or commit was left: committed since the common ancestor, staged, edited, deleted, or new and not
/// ignored. A renamed file counts under both its names. What is in doubt counts as changed.
/// </summary>
/// <param name="since">The branch, tag or commit.</param>
/// <param name="inputs">What is read goes through these.</param>
/// <remarks>
/// Git is asked for the tree of the ancestor alone; each file is compared with it here. To have git compare them would let it run what the
/// repository's configuration names: filters, monitors, external diffs.
/// </remarks>
internal sealed class ChangedFiles(string since, InputFiles inputs)
{
    private readonly Dictionary<string, Home?> homes = [];
    private readonly Dictionary<string, FormerTree> trees = [];

    /// <summary>Where a folder lies: the top of its work tree, and the folder's own path from there, empty or ending in a slash.</summary>
    private sealed record Home(string Top, string Prefix);

    /// <summary>Whether the file changed.</summary>
    /// <param name="file">The file; it need not exist any more.</param>
    /// <exception cref="UserError">There is no git, the file lies in no work tree, or nothing there goes by the name that was given.</exception>
    public bool Has(string file)
    {
        var (folder, rest) = Split(file);
        return Changed(HomeOf(folder) ?? throw NoWorkTree(folder), rest, file) || (LeadsTo(file) is { } target && HasBehindLink(target));
    }

    /// <summary>What a file held when the branch or commit was left; null when it was longer than allowed.</summary>
    /// <param name="file">The file; it need not exist any more.</param>
    /// <param name="most">The longest, in bytes.</param>
    /// <exception cref="FileReadException">There was no such file, or this clone does not have its contents.</exception>
    /// <exception cref="UserError">There is no git, or nothing there goes by the name that was given.</exception>
    public byte[]? Former(string file, int most)
    {
        var (folder, rest) = Split(file);
        return HomeOf(folder) is { } home ? TreeOf(home).Content(home.Prefix + rest, most) : throw new FileReadException("is in no git work tree", "");
    }

    /// <summary>Names that a base may go by.</summary>
    /// <param name="folder">A folder of the work tree.</param>
    public static IReadOnlyList<string> Branches(string folder) =>
        Git.Ask(folder, "for-each-ref", "--format=%(refname:short)", "refs/heads", "refs/remotes", "refs/tags").Out
            .Split('\n', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The nearest folder above a file that exists, and the file's path from there.</summary>
    private static (string Folder, string Below) Split(string file)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        var rest = Path.GetFileName(file);
        while (!Directory.Exists(folder))
        {
            rest = Path.GetFileName(folder) + "/" + rest;
            folder = Path.GetDirectoryName(folder)!;
        }

        return (folder, rest);
    }

    private static string? LeadsTo(string file)
    {
        try
        {
            return new FileInfo(file).LinkTarget is null ? null : RealPath.Of(file);
        }
        catch (IOException)
        {
            return null;
        }
    }

    // Of a link that leads out of every work tree nobody can say whether what it leads to has changed.
    private bool HasBehindLink(string target)
    {
        var (folder, rest) = Split(target);
        return HomeOf(folder) is not { } home || Changed(home, rest, target);
    }

    private bool Changed(Home home, string rest, string file) => TreeOf(home).DiffersFrom(home.Prefix + rest, file, inputs);

    private FormerTree TreeOf(Home home)
    {
        if (!trees.TryGetValue(home.Top, out var tree)) trees.Add(home.Top, tree = FormerTree.Of(home.Top, since));
        return tree;
    }

    private Home? HomeOf(string folder)
    {
        if (homes.TryGetValue(folder, out var known)) return known;
        var answer = Where(folder);
        var home = answer.Exit == 0 && answer.Out.Split('\n') is [var top, var prefix, ..] ? new Home(top, prefix) : null;
        homes.Add(folder, home);
        return home;
    }

    private static Git.Answer Where(string folder) => Git.Ask(folder, "rev-parse", "--show-toplevel", "--show-prefix");

    private static UserError NoWorkTree(string folder) => new(UserError.Usage, $"--changed-only: {folder} is in no git work tree", FormerTree.Said(Where(folder)));
}
