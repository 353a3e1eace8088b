using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Circuits.Findings;
using Circuits.Reading;

namespace Circuits.Cli;

/// <summary>The files of a work tree as they were when a branch or commit was left.</summary>
internal sealed class FormerTree
{
    private readonly string top;
    private readonly Dictionary<string, string> blobs = new(StringComparer.Ordinal);
    private readonly Lazy<(HashSet<string> Files, List<string> Folders)> ignored;

    private FormerTree(string top, IEnumerable<string> entries)
    {
        this.top = top;
        ignored = new(Ignored);
        foreach (var entry in entries)
        {
            // 100644 blob NAME<tab>path
            if (entry.Split('\t', 2) is [var about, var path] && about.Split(' ') is [_, "blob", var name]) blobs[path] = name;
        }
    }

    /// <summary>The tree at the common ancestor of a branch or commit and what is checked out.</summary>
    /// <param name="top">The top of the work tree.</param>
    /// <param name="since">The branch, tag or commit.</param>
    /// <exception cref="UserError">There is no such branch or commit, no common ancestor, or git cannot tell.</exception>
    public static FormerTree Of(string top, string since)
    {
        // A word that begins with a dash would be an option to git.
        var start = since.Length == 0 || since[0] == '-' ? null : Git.Ask(top, "rev-parse", "--verify", "--quiet", since + "^{commit}");
        if (start is not { Exit: 0 }) throw Unknown(top, since);
        var ancestor = Git.Ask(top, "merge-base", start.Out.Trim(), "HEAD");
        if (ancestor.Exit != 0)
        {
            throw new UserError(
                UserError.Usage, $"--changed-only: {since} and what is checked out have no common ancestor in {top}",
                Said(ancestor) ?? "Was the history fetched only in part? Fetch all of it.");
        }

        return new FormerTree(top, Told(top, "ls-tree", "-r", "-z", "--full-tree", ancestor.Out.Trim()).Items);
    }

    /// <summary>
    /// Whether a file is another than it was. Line ends apart: a checkout may write them as its system does. Where a filter rewrites
    /// files on checkout (large files kept elsewhere, encryption), every such file counts as changed.
    /// </summary>
    /// <param name="path">The file's path from the top.</param>
    /// <param name="file">The file; it need not exist.</param>
    /// <param name="inputs">What is read goes through these.</param>
    /// <exception cref="UserError">Git cannot tell.</exception>
    public bool DiffersFrom(string path, string file, InputFiles inputs)
    {
        var link = new FileInfo(file).LinkTarget;
        var stands = link is not null || FileStatus.Of(file).Kind != FileKind.Missing;
        if (!blobs.TryGetValue(path, out var name)) return stands && !IsIgnored(path);
        if (link is not null) return !IsNameOf(name, Encoding.UTF8.GetBytes(link));
        try
        {
            return !stands || inputs.Whole(file, InputFiles.MostBytes) is not { } content || !(IsNameOf(name, content) || IsNameOf(name, WithPlainLineEnds(content)));
        }
        catch (FileReadException)
        {
            return true;
        }
    }

    /// <summary>What a file held, as it was committed: no filter or conversion is asked for, and none is run. Null when it was longer than allowed.</summary>
    /// <param name="path">The file's path from the top.</param>
    /// <param name="most">The longest, in bytes.</param>
    /// <exception cref="FileReadException">There was no such file, or this clone does not have its contents.</exception>
    public byte[]? Content(string path, int most)
    {
        if (!blobs.TryGetValue(path, out var name)) throw new FileReadException("did not exist", "");
        var size = Git.Ask(top, "cat-file", "-s", name);
        if (size.Exit == 0 && long.TryParse(size.Out, NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var length) && length > most) return null;
        var content = size.Exit == 0 ? Git.Ask(top, "cat-file", "blob", name) : size;
        return content.Exit == 0 ? Encoding.UTF8.GetBytes(content.Out)
            : throw new FileReadException("is not in this clone as it was", "Fetch the whole history.");
    }

    /// <summary>What git complained of, or null.</summary>
    /// <param name="answer">Its answer.</param>
    public static string? Said(Git.Answer answer) => answer.Error.Length == 0 ? null : $"git says: {answer.Error}";

    private bool IsIgnored(string path) => ignored.Value.Files.Contains(path) || ignored.Value.Folders.Exists(folder => path.StartsWith(folder, StringComparison.Ordinal));

    private (HashSet<string> Files, List<string> Folders) Ignored()
    {
        var all = Told(top, "ls-files", "-z", "--others", "--ignored", "--exclude-standard", "--directory").Items.ToList();
        return ([.. all], all.FindAll(path => path.EndsWith('/')));
    }

    // An object's name is the hash of its kind, length and content (gitformat-pack, hash-function-transition in git's manual).
    private static bool IsNameOf(string name, byte[] content)
    {
        byte[] whole = [.. Encoding.ASCII.GetBytes(FormattableString.Invariant($"blob {content.Length}\0")), .. content];
#pragma warning disable CA5350 // Git's names, not a matter of trust.
        return name == Convert.ToHexStringLower(name.Length == 2 * SHA1.HashSizeInBytes ? SHA1.HashData(whole) : SHA256.HashData(whole));
#pragma warning restore CA5350
    }

    private static byte[] WithPlainLineEnds(byte[] content) =>
        [.. content.Where((letter, i) => letter != (byte)'\r' || i + 1 == content.Length || content[i + 1] != (byte)'\n')];

    private static Git.Answer Told(string top, params ReadOnlySpan<string> args)
    {
        var answer = Git.Ask(top, args);
        return answer.Exit == 0 ? answer : throw new UserError(UserError.Usage, $"--changed-only: git cannot tell what changed in {top}", Said(answer));
    }

    private static UserError Unknown(string top, string since)
    {
        var known = ChangedFiles.Branches(top);
        return new UserError(
            UserError.Usage, $"--changed-only: '{since}' names no branch, tag or commit in {top}",
            DidYouMean.Find(since, known) is { } close ? $"Did you mean {close}?" : "git branch --all lists branches; one on a server must be fetched first.");
    }
}
