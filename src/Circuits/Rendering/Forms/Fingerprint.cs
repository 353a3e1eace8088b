using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Circuits.Findings;

namespace Circuits.Rendering;

/// <summary>
/// Tells whether a finding of today is one of yesterday. It holds what the finding is about and not where it stands, so that a
/// line written above it changes nothing, nor does another wording; what was computed is left out, since a small edit elsewhere shifts it.
/// </summary>
internal static class Fingerprint
{
    /// <summary>The name of this way to make fingerprints; another way takes another number.</summary>
    public const string Name = "finding/v2";

    private const int Bytes = 16;

    /// <summary>The fingerprint.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="file">Its file, named so that it is the same on every machine.</param>
    /// <param name="seen">How often each was met; findings that are alike are counted.</param>
    public static string Of(Finding finding, string file, Dictionary<string, int> seen)
    {
        var parts = string.Join(',', finding.Assembly.Select(pair => $"{pair.Key}={pair.Value}"));
        var about = string.Join('\n', [finding.Rule, file, parts, finding.Gear ?? "", .. finding.Message.About]);
        var count = seen[about] = seen.GetValueOrDefault(about) + 1;
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{about}\n{count}")));
        return Convert.ToHexStringLower(hash.AsSpan(0, Bytes));
    }
}
