using System.Globalization;
using System.Security.Cryptography;
using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Storing;
using LabPipeline.Intake.Tests.Storing;
using LabPipeline.Testing;

namespace LabPipeline.Intake.Tests.Archive;

/// <summary>kill -9 leaves what the system holds in memory; power loss does not. Whatever the ledger acknowledged must lie whole in the archive.</summary>
public sealed class PowerLossTests(ITestOutputHelper output)
{
    private const string Root = "data";
    private const int Batches = 4;
    private const int FilesPerBatch = 3;
    private const int ChancesPerOperation = 12;

    private static readonly string ArchiveFolder = Path.Combine(Root, "archive");
    private static readonly DateTimeOffset Start = new(2026, 1, 30, 22, 0, 0, TimeSpan.Zero);
    private static readonly DropFolder Drop = new("sugar", "drop");
    private static readonly Profile Profile = ProfileDocument.Parse(SugarProfile.RenamedIn, "profile.json").Profile!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(12)]
    public void Archive_WhenPowerIsLostAtAnyOperation_HoldsEveryAcknowledgedFileWhole()
    {
        using var source = new ScratchFolder();
        var files = Write(source);
        var crashes = 0;
        for (var operations = 0; ; operations++)
        {
            var passed = true;
            for (var chance = 0; chance < ChancesPerOperation; chance++)
            {
                var random = new Random((operations * ChancesPerOperation) + chance);
                var ledger = new List<ArchivedFile>();
                var disk = new ForgetfulDisk(Root, operations);
                passed &= Run(disk, files, ledger);
                var second = disk.AfterCrash(random, random.Next(operations + 1));
                Assert.Equal(0, Lost(second, ledger));

                // The next process goes on on what is left, and the power goes again.
                Run(second, files, ledger);
                Assert.Equal(0, Lost(second.AfterCrash(random), ledger));
                crashes++;
            }

            if (passed)
            {
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{operations} operations, {crashes} histories of two crashes"));
                Assert.True(operations > 50, "Every step of the archive was an operation of the disk.");
                return;
            }
        }
    }

    [Fact]
    public void Archive_OnADiskThatIgnoresFlushes_LosesFiles()
    {
        using var source = new ScratchFolder();
        var ledger = new List<ArchivedFile>();
        var disk = new ForgetfulDisk(Root, ignoresFlushes: true);
        Assert.True(Run(disk, Write(source), ledger));

        Assert.NotEqual(0, Lost(disk.AfterCrash(new Random(1)), ledger));
    }

    /// <summary>Takes the files in batches as intake does, the last two in the next month; what got that far stands in the ledger.</summary>
    /// <returns>False when the power went.</returns>
    private static bool Run(ForgetfulDisk disk, IReadOnlyList<SeenFile> files, List<ArchivedFile> ledger)
    {
        try
        {
            var archive = new FileArchive(ArchiveFolder, disk);
            foreach (var (batch, number) in files.Chunk(FilesPerBatch).Select((batch, number) => (batch, number)))
            {
                var now = Start.AddDays(number);
                var kept = archive.Keep([.. batch.Select(file => archive.Copy(file, now, Stop)!)]);
                var copies = batch.Zip(kept, (file, copy) => (new ReadyFile(file, Profile), copy)).ToList();
                archive.Note(Drop, copies, now);
                archive.Settle(now);
                ledger.AddRange(copies.Select(copy => copy.Item2));
            }

            return true;
        }
        catch (PowerLossException)
        {
            return false;
        }
    }

    /// <summary>Files of the ledger that are not whole in the archive, or that its journal and profiles could not bring back.</summary>
    private static int Lost(ForgetfulDisk disk, IReadOnlyCollection<ArchivedFile> ledger)
    {
        var archive = new FileArchive(ArchiveFolder, disk);
        var journal = new ArchiveJournal(ArchiveFolder, disk);
        var noted = journal.Read().ToLookup(entry => entry.Sha256);
        return ledger.Count(file => !noted[file.Sha256].Any(entry => IsReadable(journal, entry.Profile)) || !IsWhole(archive, file));
    }

    private static bool IsWhole(FileArchive archive, ArchivedFile file)
    {
        try
        {
            using var bytes = archive.Open(file.Path);
            return Convert.ToHexStringLower(SHA256.HashData(bytes)) == file.Sha256;
        }
        catch (FileNotFoundException)
        {
            return false;
        }
    }

    private static bool IsReadable(ArchiveJournal journal, string profile)
    {
        try
        {
            return journal.ProfileOf(profile).Name == Profile.Name;
        }
        catch (Exception exception) when (exception is FileNotFoundException or InvalidDataException)
        {
            return false;
        }
    }

    private static IReadOnlyList<SeenFile> Write(ScratchFolder source)
    {
        for (var file = 0; file < Batches * FilesPerBatch; file++)
        {
            File.WriteAllText(source.File(string.Create(CultureInfo.InvariantCulture, $"run{file:D2}.csv")), SugarProfile.Rows(("S26P01T03R2C", file, "0.052")));
        }

        return FolderScan.List(new DropFolder("sugar", source.Path));
    }
}
