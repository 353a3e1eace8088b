using Circuits.Findings;

namespace Circuits.Cli;

/// <summary>
/// The files that git says changed since a branch or commit was left: committed since the common ancestor, staged, edited,
/// deleted, or new and not ignored. A renamed file counts under both its names.
/// </summary>
/// <param name="since">The branch, tag or commit.</param>
internal sealed class ChangedFiles(string since)
{
    private readonly Dictionary<string, Home> homes = [];
    private readonly Dictionary<string, HashSet<string>> changed = [];

    /// <summary>Where a folder lies: the top of its work tree, and the folder's own path from there, empty or ending in a slash.</summary>
    private sealed record Home(string Top, string Prefix);

    /// <summary>Whether the file changed.</summary>
    /// <param name="file">The file; it need not exist any more.</param>
    /// <exception cref="UserError">There is no git, the file lies in no work tree, or nothing there goes by the name that was given.</exception>
    public bool Has(string file)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        var rest = Path.GetFileName(file);
        while (!Directory.Exists(folder))
        {
            rest = Path.GetFileName(folder) + "/" + rest;
            folder = Path.GetDirectoryName(folder)!;
        }

        if (!homes.TryGetValue(folder, out var home)) homes.Add(folder, home = HomeOf(folder));
        if (!changed.TryGetValue(home.Top, out var names)) changed.Add(home.Top, names = NamesIn(home.Top));
        return names.Contains(home.Prefix + rest);
    }

    /// <summary>Names that a base may go by.</summary>
    /// <param name="folder">A folder of the work tree.</param>
    public static IReadOnlyList<string> Branches(string folder) =>
        Git.Ask(folder, "for-each-ref", "--format=%(refname:short)", "refs/heads", "refs/remotes", "refs/tags").Out
            .Split('\n', StringSplitOptions.RemoveEmptyEntries);

    private static Home HomeOf(string folder)
    {
        var answer = Git.Ask(folder, "rev-parse", "--show-toplevel", "--show-prefix");
        if (answer.Exit != 0 || answer.Out.Split('\n') is not [var top, var prefix, ..])
            throw new UserError(UserError.Usage, $"--changed-only: {folder} is in no git work tree", Said(answer));
        return new Home(top, prefix);
    }

    private HashSet<string> NamesIn(string top)
    {
        // A word that begins with a dash would be an option to git.
        var start = since.Length == 0 || since[0] == '-' ? null : Git.Ask(top, "rev-parse", "--verify", "--quiet", since + "^{commit}");
        if (start is not { Exit: 0 }) throw Unknown(top);
        var ancestor = Git.Ask(top, "merge-base", start.Out.Trim(), "HEAD");
        if (ancestor.Exit != 0)
        {
            throw new UserError(
                UserError.Usage, $"--changed-only: {since} and what is checked out have no common ancestor in {top}",
                Said(ancestor) ?? "Was the history fetched only in part? Fetch all of it.");
        }

        var differ = Git.Ask(
            top, "diff", "--name-only", "-z", "--no-renames", "--no-ext-diff", "--no-relative", "--ignore-submodules=all", ancestor.Out.Trim(), "--");
        var untracked = Git.Ask(top, "ls-files", "--others", "--exclude-standard", "-z");
        foreach (var answer in (Git.Answer[])[differ, untracked])
        {
            if (answer.Exit != 0) throw new UserError(UserError.Usage, $"--changed-only: git cannot tell what changed in {top}", Said(answer));
        }

        return [.. differ.Items, .. untracked.Items];
    }

    private UserError Unknown(string top)
    {
        var known = Branches(top);
        return new UserError(
            UserError.Usage, $"--changed-only: '{since}' names no branch, tag or commit in {top}",
            DidYouMean.Find(since, known) is { } close ? $"Did you mean {close}?" : "git branch --all lists branches; one on a server must be fetched first.");
    }

    private static string? Said(Git.Answer answer) => answer.Error.Length == 0 ? null : $"git says: {answer.Error}";
}
