using System.Text;
using Circuits.Findings;

namespace Circuits.Reading.Yaml;

/// <summary>Reads a circuit file's bytes and makes text of them, or says why not.</summary>
internal static class TextFile
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The file's text, or null when it cannot be read as text.</summary>
    /// <param name="path">The path to open.</param>
    /// <param name="name">The path as findings name it.</param>
    /// <param name="files">What is read goes through these.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static string? Read(string path, string name, ITextSource files, FindingList findings)
    {
        var place = new Place(name, 0, 0);
        if (Bytes(path, place, files, findings) is not { } bytes) return null;
        if (bytes.StartsWith("\uFEFF"u8)) bytes = bytes.AsSpan(3).ToArray();
        if (Utf16(bytes) is { } utf16)
        {
            findings.Add(FileRules.NotUtf8.At(place, $"{name} is {utf16} text, not UTF-8", "Save it as UTF-8."));
            return null;
        }

        // A program or a picture also is no UTF-8; that it is no text at all says more.
        if (FirstControl(bytes) is { } control)
        {
            findings.Add(FileRules.BinaryFile.At(
                At(name, bytes, control), $"Not a text file: byte 0x{Convert.ToHexString([bytes[control]])}", "Give a circuit file (YAML text)."));
            return null;
        }

        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException fault)
        {
            var index = Math.Clamp(fault.Index, 0, bytes.Length - 1);
            findings.Add(FileRules.NotUtf8.At(
                At(name, bytes, index), $"Not UTF-8: byte 0x{Convert.ToHexString([bytes[index]])}", "Save the file as UTF-8."));
            return null;
        }
    }

    private static byte[]? Bytes(string path, Place place, ITextSource files, FindingList findings)
    {
        try
        {
            return files.Whole(path, YamlLimits.Bytes) ?? TooBig(place, findings);
        }
        catch (FileReadException fault)
        {
            findings.Add(FileRules.UnreadableFile.At(place, $"{place.File} {fault.Reason}", fault.Help));
            return null;
        }
    }

    private static byte[]? TooBig(Place place, FindingList findings)
    {
        findings.Add(FileRules.FileTooBig.At(
            place, $"{place.File} is larger than {YamlLimits.Bytes / (1024 * 1024)} MB", "Is this a circuit file? Split it into part files."));
        return null;
    }

    private static string? Utf16(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] => "UTF-16",
        [not 0, 0, not 0, 0, ..] or [0, not 0, 0, not 0, ..] => "UTF-16",
        _ => null,
    };

    private static int? FirstControl(ReadOnlySpan<byte> bytes)
    {
        for (var i = 0; i < bytes.Length; i++)
        {
            if (bytes[i] is < 0x20 and not ((byte)'\t' or (byte)'\n' or (byte)'\r') or 0x7F) return i;
        }

        return null;
    }

    private static Place At(string name, ReadOnlySpan<byte> bytes, int index)
    {
        var before = bytes[..index];
        return new(name, before.Count((byte)'\n') + 1, index - before.LastIndexOf((byte)'\n'));
    }
}
