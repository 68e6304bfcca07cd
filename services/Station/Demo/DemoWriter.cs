using System.Text;
using System.Text.Json;
using LabPipeline.Hosting;

namespace LabPipeline.Station.Demo;

/// <summary>Puts the demonstration into a data folder: plan, profiles, then instrument files.</summary>
/// <remarks>
/// Each file is written aside and renamed into its place, so that intake never meets half of one. The marker comes last: a set-up that was
/// interrupted starts over and writes the same bytes again, a finished one is kept.
/// </remarks>
public sealed class DemoWriter(LabOptions lab)
{
    public const string Marker = "demo-ready.json";

    private const string Aside = "demo-set-up";
    private const string CorrectionsFolder = "corrections";

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly string _root = Path.GetFullPath(lab.DataFolder);

    public bool IsReady => File.Exists(Path.Combine(_root, Marker));

    public DemoSetUp Write(DemoScenario scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        if (IsReady)
        {
            return File.ReadAllBytes(Path.Combine(_root, Marker)).AsSpan().SequenceEqual(MarkerOf(scenario))
                ? DemoSetUp.Kept
                : throw new InvalidOperationException($"{_root} holds another season than the one asked for; name another folder with --data.");
        }

        Directory.CreateDirectory(Path.Combine(_root, Aside));
        foreach (var document in scenario.Documents)
        {
            Put(Path.Combine(_root, document.Folder), document.Name, Utf8.GetBytes(document.Text), null);
        }

        foreach (var file in scenario.Files)
        {
            Put(Path.Combine(lab.DropFolder, file.Kind), file.Name, file.Bytes.Span, file.WrittenAt);
        }

        foreach (var file in scenario.Corrections)
        {
            Put(Path.Combine(_root, CorrectionsFolder, file.Kind), file.Name, file.Bytes.Span, file.WrittenAt);
        }

        Put(_root, Marker, MarkerOf(scenario), null);
        Directory.Delete(Path.Combine(_root, Aside), recursive: true);
        return DemoSetUp.Written;
    }

    private static byte[] MarkerOf(DemoScenario scenario) => JsonSerializer.SerializeToUtf8Bytes(
        new { schema = 1, trial = scenario.Plan.Code, files = scenario.Files.Count, corrections = scenario.Corrections.Count, clean = scenario.IsClean });

    private void Put(string folder, string name, ReadOnlySpan<byte> bytes, DateTimeOffset? writtenAt)
    {
        Directory.CreateDirectory(folder);
        var aside = Path.Combine(_root, Aside, name);
        using (var stream = new FileStream(aside, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            stream.Write(bytes);
            stream.Flush(flushToDisk: name == Marker);
        }

        if (writtenAt is { } instant)
        {
            File.SetLastWriteTimeUtc(aside, instant.UtcDateTime);
        }

        File.Move(aside, Path.Combine(folder, name), overwrite: true);
    }
}
