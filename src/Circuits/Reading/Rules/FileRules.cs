using Circuits.Findings;

namespace Circuits.Reading;

/// <summary>Rules about files as such: can it be read, and is it YAML.</summary>
internal static class FileRules
{
    public static Rule UnreadableFile { get; } = new(
        "unreadable-file", Severity.Error,
        "The file does not exist, is a folder, or may not be read.",
        "Nothing was checked.",
        "circuits check no-such-unit.yaml",
        "Correct the path, or the rights on the file.");

    public static Rule FileTooBig { get; } = new(
        "file-too-big", Severity.Error,
        "The file is larger than 8 MB, or holds more than 250,000 values, 500 parts, 500 matched sets or 200 revisions of a part. A large unit takes a few hundred kB.",
        "Nothing was checked.",
        "A log or a picture given in place of a circuit file.",
        "Give the circuit file. Split a very large unit into part files.");

    public static Rule EmptyFile { get; } = new(
        "empty-file", Severity.Error,
        "The file holds nothing, or remarks alone.",
        "Nothing was checked.",
        "A file of 0 bytes, left by a full disk or a broken copy.",
        "Restore the file, or write a new one that starts with format: 1.");

    public static Rule BinaryFile { get; } = new(
        "binary-file", Severity.Error,
        "The file holds control characters, so it is no text.",
        "Nothing was checked.",
        "A picture or a spreadsheet given in place of a circuit file.",
        "Give the circuit file. A spreadsheet must be exported and rewritten in the circuit language.");

    public static Rule NotUtf8 { get; } = new(
        "not-utf8", Severity.Error,
        "The file is text, but in another encoding than UTF-8, so names with accents would be read wrongly.",
        "Nothing was checked.",
        "A file saved as Latin-1 or UTF-16 by an old editor.",
        "Save it as UTF-8.");

    public static Rule NotYaml { get; } = new(
        "not-yaml", Severity.Error,
        "The file breaks YAML's own rules of punctuation or indentation. What follows cannot be trusted, so reading stops there.",
        "Nothing after this place was checked.",
        "openings: [{at: 1, hole: 6 mm}     # the closing ] is missing",
        "Mend the place named, or the line before it: a missing colon, quote, bracket or space after a colon.");

    public static Rule TabIndentation { get; } = new(
        "tab-indentation", Severity.Error,
        "A line is indented with a tab. YAML allows spaces alone, as a tab's width is anybody's guess.",
        "Nothing after this place was checked.",
        "parts:<newline><tab>body: ...",
        "Replace the tab by spaces; tell the editor to insert spaces in .yaml files.");

    public static Rule TooDeep { get; } = new(
        "too-deep", Severity.Error,
        "Lists and mappings, or revisions based on one another, nest deeper than any circuit file needs.",
        "Nothing after this place was checked.",
        "[[[[[[[[ ...",
        "Close brackets that are open by mistake.");

    public static Rule TooManyAliases { get; } = new(
        "too-many-aliases", Severity.Error,
        "Aliases (*name) repeat so much of the file that it would be enormous if written out.",
        "Nothing after this place was checked.",
        "a: &a [x, x], b: &b [*a, *a], c: &c [*b, *b] ...",
        "Write the values out, or let a revision build on another with based-on.");

    public static Rule UnsupportedYaml { get; } = new(
        "unsupported-yaml", Severity.Error,
        "YAML knows this, the circuit language has no use for it: several documents in a file, tags, keys that are lists.",
        "Read otherwise than meant, the unit would be another one.",
        "hole: !mm 2.1",
        "Write it plainly: hole: 2.1 mm.");

    public static Rule UnquotedDrill { get; } = new(
        "unquoted-drill", Severity.Error,
        "A number drill stands without quotes. YAML takes everything from a # on as a remark, so the size is not read at all.",
        "The hole would be sizeless, or removed, and nobody would notice.",
        "hole: #45",
        "Quote it: hole: \"#45\".");

    public static Rule TooManyFaults { get; } = new(
        "too-many-faults", Severity.Error,
        "The file has so many faults that reading stopped; some of the first ones are shown.",
        "The rest was not checked.",
        "A file of another program, or one whose indentation slipped.",
        "Mend the first faults, then read it again: others often go with them.");

    public static Rule PartFileOutside { get; } = new(
        "part-file-outside", Severity.Error,
        "A part's file does not lie below the unit file's folder: its path is absolute, has .. in it, or follows a link that leads out.",
        "The unit could not be copied or handed on whole, and a file from elsewhere could read what it should not.",
        "body: ../other-unit/body.yaml",
        "Copy the file into a folder below the unit file.");

    public static Rule PartFileAlone { get; } = new(
        "part-file-alone", Severity.Error,
        "The file holds a part, not a unit: it is read through the unit file that names it.",
        "A part alone has no gears to check.",
        "circuits check units/parts/body.yaml",
        "Give the unit file.");

    public static Rule UnsupportedFormat { get; } = new(
        "unsupported-format", Severity.Error,
        "The file is written for another version of the circuit language.",
        "Words may have changed their meaning, so nothing else was read.",
        "format: 2",
        "Use a program of that version, or rewrite the file and state format: 1.");
}
