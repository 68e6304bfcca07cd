namespace LabPipeline.Intake.Tests;

public sealed class IntakeOptionsValidatorTests
{
    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    [InlineData(1000, true)]
    [InlineData(1001, false)]
    public void FilesPerCommit_WhenOutsideItsBounds_IsRefusedWithThem(int files, bool isTaken)
    {
        var result = new IntakeOptionsValidator().Validate(null, new IntakeOptions { FilesPerCommit = files });

        Assert.Equal(isTaken ? [] : [$"Intake:FilesPerCommit is {files}; expected 1 to 1000."], result.Failures ?? []);
    }
}
