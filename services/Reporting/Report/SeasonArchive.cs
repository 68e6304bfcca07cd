using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using LabPipeline.Reporting.Season.Data;

namespace LabPipeline.Reporting.Report;

/// <summary>A season's data as one text that can be kept and read back without loss.</summary>
internal static class SeasonArchive
{
    public static string ToJson(SeasonData data) => JsonSerializer.Serialize(data);

    public static string Sha256(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    public static string Pack(string json)
    {
        using var packed = new MemoryStream();
        using (var squeeze = new BrotliStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            squeeze.Write(Encoding.UTF8.GetBytes(json));
        }

        return Convert.ToBase64String(packed.ToArray());
    }

    /// <exception cref="InvalidDataException">The kept data are not those that were locked.</exception>
    public static SeasonData Unpack(LockedReportRow row)
    {
        using var packed = new MemoryStream(Convert.FromBase64String(row.Data));
        using var open = new BrotliStream(packed, CompressionMode.Decompress);
        using var reader = new StreamReader(open, Encoding.UTF8);
        var json = reader.ReadToEnd();
        var found = Sha256(json);
        return found == row.DataSha256
            ? JsonSerializer.Deserialize<SeasonData>(json)!
            : throw new InvalidDataException($"The data of report {row.TrialCode} version {row.Version} have SHA-256 {found}; {row.DataSha256} was locked. The row was changed outside the program: restore it from a backup.");
    }
}
