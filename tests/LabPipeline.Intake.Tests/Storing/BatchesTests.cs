using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Storing;

namespace LabPipeline.Intake.Tests.Storing;

public class BatchesTests
{
    private const long Mebibyte = 1024 * 1024;

    private static readonly Profile Sugars = ProfileDocument.Parse(SugarProfile.RenamedIn, "bench").Profile!;

    [Fact]
    public void Split_WhenManySmallFilesWait_BeginsSmallAndDoublesUpToTheMost()
    {
        var files = Files(Enumerable.Repeat(100L, 1000));

        var batches = Batches.Split(files, 200, 8 * Mebibyte).ToList();

        Assert.Equal([25, 50, 100, 200, 200, 200, 200, 25], batches.Select(batch => batch.Count));
        Assert.Equal(files, batches.SelectMany(batch => batch));
    }

    [Fact]
    public void Split_WhenTheMostIsSmall_KeepsToIt() =>
        Assert.Equal([3, 3, 1], Batches.Split(Files(Enumerable.Repeat(100L, 7)), 3, Mebibyte).Select(batch => batch.Count));

    [Fact]
    public void Split_WhenFilesAreLarge_EndsABatchBeforeItsBytesAreTooMany_AndLeavesALargerFileAlone() =>
        Assert.Equal([2, 1, 1], Batches.Split(Files([Mebibyte / 2, Mebibyte / 2, 5 * Mebibyte, 1]), 200, Mebibyte).Select(batch => batch.Count));

    private static List<ReadyFile> Files(IEnumerable<long> sizes) =>
        [.. sizes.Select((bytes, index) => new ReadyFile(new SeenFile($"{index}.csv", $"/drop/{index}.csv", bytes, default, SeenKind.RegularFile), Sugars))];
}
