namespace LabPipeline.Quality.Results;

/// <summary>Whether the extracts of one sample agree.</summary>
public enum AgreementOutcome
{
    /// <summary>One extract: nothing to compare.</summary>
    OneExtract = 1,

    /// <summary>They agree within the critical range.</summary>
    Agrees = 2,

    /// <summary>They disagree and the procedure asks for more results.</summary>
    Open = 3,

    /// <summary>They disagree at the end of the procedure; the median stands.</summary>
    Median = 4,

    /// <summary>No judgement was possible.</summary>
    NotJudged = 5,

    /// <summary>They disagree, no more can be had, and the procedure has no rule for so few.</summary>
    Unresolved = 6,
}
