using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>A condition that makes rows control checks or fry batches, with its columns found.</summary>
internal sealed record SubjectRule(ReadingSubject Subject, RowCondition When, int Column, BoundSource Material)
{
    public static SubjectRule[] Of(Profile profile, IReadOnlyDictionary<string, int> columns) =>
    [
        .. profile.Controls.Select(rule => Of(ReadingSubject.Control, rule, columns)),
        .. profile.FryBatches.Select(rule => Of(ReadingSubject.FryBatch, rule, columns)),
    ];

    private static SubjectRule Of(ReadingSubject subject, RowRule rule, IReadOnlyDictionary<string, int> columns) =>
        new(subject, rule.When, columns[rule.When.Column], BoundSource.Of(rule.Material, columns));
}
