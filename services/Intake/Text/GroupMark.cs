namespace LabPipeline.Intake.Text;

/// <summary>What stands between groups of three digits, where an instrument writes groups at all.</summary>
public enum GroupMark
{
    None,
    Point,
    Comma,

    /// <summary>U+0020, the no-break space U+00A0 or the narrow no-break space U+202F.</summary>
    Space,

    /// <summary>U+0027 or the typographic apostrophe U+2019.</summary>
    Apostrophe,
}
